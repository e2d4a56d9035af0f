import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { findPlace } from "../../../src/book/address.ts";
import { type } from "../../../src/book/edit.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf, panelSkirt } from "../engine/whatif-books.ts";
import { run } from "./io.ts";

const solve = (...args: string[]) => run(panelSkirt(), "solve", "book.json", ...args);

test("the deepest skirt from two and a half yards is given as data", async () => {
  const { status, out } = await solve("--cell", "depth", "--make", "buy", "--atmost", "2 1/2 yd", "--json");
  expect(status).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ depth: 27, buy: 90 });
});

test("with --least the smallest figure that does is given, in the steps asked for", async () => {
  const least = ["--cell", "depth", "--make", "buy", "--atleast", "90", "--least", "--json"];
  // 3 (depth + 3) must be more than 85 1/2, the shop's cut before: 25 1/2 + a step.
  expect(JSON.parse((await solve(...least)).out)).toMatchObject({ depth: 25.625, buy: 90 });
  expect(JSON.parse((await solve(...least, "--from", "20", "--step", "0.25")).out)).toMatchObject({
    depth: 25.75,
  });
});

test("the least cloth over two cells is found", async () => {
  const { out } = await solve(
    ...["--cell", "depth", "--from", "9", "--to", "12", "--cell", "fullness", "--from", "2", "--to", "3"],
    ...["--make", "cloth", "--minimise", "--json"],
  );
  // 2 panels as long as fullness is at most 2.25; 2 (9 + 3).
  expect(JSON.parse(out)).toMatchObject({ depth: 9, fullness: 2.2, cloth: 24 });
});

test("a sentence for people says what was found and what lies beyond", async () => {
  const { out } = await solve(
    "--cell",
    "depth",
    "--make",
    "buy",
    "--atmost",
    "90",
    "--from",
    "8",
    "--to",
    "40",
  );
  expect(out).toBe("depth 27 makes buy 90; no larger step up to depth 40 keeps it at most 90");
});

test("each wrong request is one sentence, and exits 2", async () => {
  const wrong = async (...args: string[]) => {
    const { status, err } = await solve(...args);
    expect(status).toBe(2);
    expect(err.split("\n")).toHaveLength(1);
    return err;
  };
  const depth = ["--cell", "depth", "--make", "buy"];
  expect(await wrong(...depth)).toMatch(
    /^solve needs one of --atmost, --atleast, --equal, --minimise, --maximise$/,
  );
  expect(await wrong(...depth, "--atmost", "9", "--equal", "8")).toMatch(/, not 2$/);
  expect(await wrong(...depth, "--atmost", "deep")).toBe(
    '--atmost must be a length such as 2 yd, not "deep"',
  );
  expect(await wrong("--cell", "cut", "--make", "buy", "--atmost", "90")).toMatch(/^cut is worked out by/);
  expect(await wrong("--cell", "depth", "--atmost", "90")).toMatch(/^solve needs --make/);
  expect(await wrong("--cell", "depth", "--make", "note", "--atmost", "90")).toMatch(/^note is a text/);
  expect(await wrong("--cell", "depth", "--make", "buys", "--atmost", "90")).toMatch(/is buy meant\?/);
  expect(await wrong(...depth, "--atmost", "5", "--from", "8", "--to", "14")).toMatch(
    /^no depth from 8 to 14 keeps buy at most 5; nearest is depth 9/,
  );
  expect(await wrong(...depth, "--atmost", "90", "--step", "0")).toMatch(
    /^the step of depth must be more than 0/,
  );
  expect(await wrong("--cell", "depth", "--make", "panels", "--equal", "4")).toMatch(
    /^panels does not rest on depth/,
  );
});

test("a target that can't be reached is an error in JSON too", async () => {
  const book = bookOf({ waist: "28 in", radius: "=waist/(2*PI())" });
  const { status, out } = await run(
    book,
    "solve",
    "book.json",
    "--cell",
    "waist",
    "--make",
    "radius",
    "--equal",
    "40",
    "--to",
    "60",
    "--json",
  );
  expect(status).toBe(2);
  expect(JSON.parse(out).error).toMatch(/nearest is waist 60/);
});

/** Every step worked by setting the cell and calculating the book anew, as a patient maker would. */
function byHand(book: Book, cell: string, steps: readonly number[], watch: readonly string[]) {
  const engine = new Engine(book, layDesk);
  const place = findPlace(book, book.names[cell]!)!;
  const rows = steps.map((figure) => {
    engine.become(type(book, [{ ...place, typed: String(figure) }]));
    const answers = watch.map((name) => engine.value(findPlace(book, book.names[name]!)!) as number);
    return { figure, answers };
  });
  engine.destroy();
  return rows;
}

describe.each(["peplum-bodice", "peplum-bodice-cm"])("of the ready book %s", (name) => {
  const reading = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const { book } = reading;
  const inch = book.unit === "in" ? 1 : 2.5;
  // The hem grows smoothly, cloth jumps and now and then falls, what is bought goes by the shop's cut.
  const watch = ["hem", "curved_hem", "cloth_length_a", "cloth_buy_a"];

  const length = inch === 1 || process.env.WHOLE ? 9 : 4;
  const depths = ["depth", Array.from({ length }, (_, i) => (7 + i) * inch)] as const;
  // A count is the same in either unit: one book is enough for it.
  const varied = book.unit === "in" ? [depths, ["pleats", [0, 1, 2, 3, 4, 5]] as const] : [depths];

  test.each(varied)(
    "what vary and solve say of %s agrees with every step worked by hand",
    async (cell, steps) => {
      const rows = byHand(book, cell, steps, watch);
      const [from, to] = [steps[0]!, steps.at(-1)!];
      const range = ["--cell", cell, "--from", `${from}`, "--to", `${to}`, "--step", `${steps[1]! - from}`];
      const told = await run(book, "vary", "book.json", ...range, "--watch", watch.join(), "--json");
      for (const [i, row] of JSON.parse(told.out).rows.entries()) {
        expect(row[cell]).toBeCloseTo(steps[i]!, 9);
        watch.forEach((one, k) => {
          expect(row[one], `${one} at ${steps[i]}`).toBeCloseTo(rows[i]!.answers[k]!, 6);
        });
      }
      for (const [k, make] of watch.entries()) {
        const answers = rows.map((row) => row.answers[k]!);
        const [low, high] = [Math.min(...answers), Math.max(...answers)];
        if (high - low < 1e-9) continue;
        for (const share of k < 2 ? [0.45] : [-0.1, 0.45, 0.8]) {
          const aim = Number((low + share * (high - low)).toFixed(6));
          for (const side of ["atmost", "atleast"]) {
            const does = rows.filter((_, i) => (side === "atmost" ? answers[i]! <= aim : answers[i]! >= aim));
            for (const least of [false, true]) {
              const asked = [make, side, aim, least].join(" ");
              const told = await run(
                book,
                "solve",
                "book.json",
                ...range,
                "--make",
                make,
                `--${side}`,
                `${aim}`,
                "--json",
                ...(least ? ["--least"] : []),
              );
              const wanted = least ? does[0] : does.at(-1);
              expect(told.status, asked).toBe(wanted ? 0 : 2);
              const answer = JSON.parse(told.out);
              if (!wanted) expect(answer.error, asked).toMatch(/^no .* nearest is/);
              else expect(answer[cell], asked).toBeCloseTo(wanted.figure, 9);
            }
          }
        }
      }
    },
  );
});
