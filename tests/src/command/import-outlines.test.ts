import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { main } from "../../../src/command/main.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const YOKE = readFileSync("tests/src/exchange/outlines/yoke.svg", "utf8");
const UNSIZED = YOKE.replace(/ width="240mm" height="160mm"/, "");

/** Runs `import` on a file's text. */
async function importing(text: string, ...options: string[]) {
  const files: Record<string, string> = {};
  const said: string[] = [];
  const status = await main(["import", "yoke.svg", ...options], {
    read: () => text,
    bytes: () => new TextEncoder().encode(text),
    write: (path, content) => {
      files[path] = String(content);
    },
    out: (line) => said.push(line),
    pass: (line) => said.push(line),
    err: (line) => said.push(line),
  });
  return { status, said: said.join("\n"), files };
}

test("a drawing becomes a book with a page of its pieces, each with its width, length and area", async () => {
  const { status, said, files } = await importing(YOKE, "--unit", "cm", "--out", "yoke.json");
  expect([status, said]).toEqual([
    0,
    [
      "The file says how large it is: 240 mm × 160 mm.",
      "yoke: 20 × 12 cm, 212.13 sq cm, 6 edges, 2 marks. A closed line inside it is a mark, not a hole. An open line inside it is a mark.",
      "A text is ignored: a text has no outline.",
    ].join("\n"),
  ]);
  const reading = readBook(files["yoke.json"]!);
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  const at = (column: number) => engine.view({ page: 0, row: 0, column });
  expect([0, 2, 3].map((column) => at(column).shown)).toEqual(["yoke", "20", "12"]);
  // 20 × 12 less what the two curves cut off, 15.27 and 12.6: trapezoids under 400,000 chords of each.
  expect(at(4).value).toBeCloseTo(212.13, 6);
  expect(engine.evaluate("=EDGE_LENGTH(yoke; 2)")).toMatchObject({ value: 7 });
});

test("a known edge, the whole width or one unit sizes a drawing that does not say how large it is", async () => {
  const refused = await importing(UNSIZED);
  expect(refused.status).toBe(2);
  expect(refused.said).toBe(
    'yoke.svg: it does not say how large it is; give a length that you know, such as --known "yoke/1=40 cm", --known "width=84 cm" or --known "unit=1 mm"',
  );
  for (const known of ["yoke/2=7", "width=20 cm", "height=120 mm", "unit=1 mm"]) {
    const { said } = await importing(UNSIZED, "--unit", "cm", "--known", known);
    expect(said.split("\n")[1], known).toMatch(/^yoke: 20 × 12 cm/);
  }
  const four = await importing(YOKE, "--unit", "cm", "--scale", "4", "--json");
  expect(JSON.parse(four.said)).toMatchObject({ unit: "cm", pieces: [{ name: "yoke", edges: 6, marks: 2 }] });
  expect(JSON.parse(four.said).pieces[0].width).toBeCloseTo(80, 9);
});

test("a wrong size is refused in a sentence", async () => {
  const sentences = {
    "yoke/9=7": /yoke has edges 1 to 6/,
    "collar/1=7": /its pieces are yoke/,
    "width=0": /needs what is known and its length/,
    width: /needs what is known and its length/,
  };
  for (const [known, sentence] of Object.entries(sentences)) {
    const { status, said } = await importing(YOKE, "--known", known);
    expect([status, said]).toEqual([2, expect.stringMatching(sentence)]);
  }
  expect((await importing(YOKE, "--scale", "-3")).said).toMatch(/--scale must be a number above 0/);
  expect((await importing(YOKE, "--scale", "1,250")).said).toMatch(/--scale must be .*, not "1,250"/);
  expect((await importing(YOKE, "--scale", "2", "--known", "width=3")).said).toMatch(/give one of them/);
  expect((await importing(YOKE, "--inner", "holes")).said).toMatch(/--inner must be one of marks, pieces/);
});
