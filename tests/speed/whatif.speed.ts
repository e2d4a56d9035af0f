/**
 * What-if questions on the ready book, each beside working the whole book anew for every step, in
 * one run on one machine: the ratio is worth more than the milliseconds. Goals: a sweep of 200 steps
 * under 150 ms, a solution under 300 ms, one move of the slider under 16 ms. Laid cloth is apart: of a
 * step there about two fifths are drafting its pieces anew and three fifths laying them, half of that
 * in the orders that a quick lay tries; its goals are 500 ms for the sweep, not reached, and 300 ms for
 * a solution.
 */
import { readFileSync } from "node:fs";
import { it } from "vitest";
import type { Place } from "../../src/book/address.ts";
import { type } from "../../src/book/edit.ts";
import { lookUp } from "../../src/book/names.ts";
import { readBook } from "../../src/book/read.ts";
import type { Book } from "../../src/book/shape.ts";
import { Engine } from "../../src/engine/engine.ts";
import { explain } from "../../src/engine/explain.ts";
import { QuestionEngine } from "../../src/engine/question-engine.ts";
import { solve } from "../../src/engine/solve.ts";
import { finish, sweep, watchAt } from "../../src/engine/sweep.ts";
import { thresholds } from "../../src/engine/thresholds.ts";
import { isProblem, type VariedCell, variedCellAt } from "../../src/engine/varied-cell.ts";
import { layDesk } from "../../src/lay/desk.ts";

const reading = readBook(
  readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8"),
);
if ("reason" in reading) throw new Error(reading.reason);
const book: Book = reading.book;
const at = (name: string): Place => lookUp(book, name)!;
const depth = variedCellAt(book, at("depth")) as VariedCell;

/** Each time a range of its own, so that no lay is known beforehand. */
let shift = 0;
const steps = (count: number): number[][] => {
  shift += 1 / 1024;
  return Array.from({ length: count }, (_, i) => [7 + shift + i / 32]);
};

function median(times: number, work: () => void): number {
  const took = Array.from({ length: times }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  });
  return took.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}

function table(title: string, rows: readonly (readonly (string | number)[])[]): void {
  const lines = rows.map((row) =>
    row.map((one) => (typeof one === "number" ? one.toFixed(2) : one).padStart(18)).join(""),
  );
  process.stdout.write(`\n${title}\n${lines.join("\n")}\n`);
}

const anew = (figure: number, name: string): void => {
  const engine = new Engine(type(book, [{ ...depth.place, typed: String(figure) }]), layDesk);
  engine.value(at(name));
  engine.destroy();
};

const WATCHED = ["hem", "curved_hem", "skirt_piece", "cloth_length_a"];

it("sweeps 200 steps", () => {
  const rows = WATCHED.map((name) => {
    const swept = median(5, () => {
      const engine = new QuestionEngine(book, layDesk, [depth], [at(name)]);
      for (const _ of sweep(engine, steps(200)));
      engine.destroy();
    });
    const rebuilt =
      20 *
      median(3, () => {
        for (const [figure] of steps(10)) anew(figure!, name);
      });
    return [name, swept, rebuilt, rebuilt / swept];
  });
  table("200 steps of depth, ms", [["watched", "swept", "book anew", "times as fast"], ...rows]);
});

it("solves", () => {
  const wanted: [string, number][] = [["hem", 63], ["curved_hem", 63], ["cloth_length_a", 45], ["cloth_buy_a", 45]]; // biome-ignore format: a table
  const rows = wanted.map(([name, value]) => {
    const make = watchAt(new Engine(book, layDesk), at(name));
    if (isProblem(make)) throw new Error(make.problem);
    const ask = (is: "atmost" | "equal") => () => {
      shift += 1 / 1024;
      const engine = new QuestionEngine(book, layDesk, [depth], [at(name)]);
      finish(solve(engine, { spans: [{ from: 7 + shift, to: 14 }], make, aim: { is, value }, least: false }));
      engine.destroy();
    };
    return [`${name} ${value}`, median(3, ask("atmost")), median(3, ask("equal"))];
  });
  table("solving for depth from 7 to 14 in eighths, ms", [["wanted", "at most", "just"], ...rows]);
});

it("names thresholds", () => {
  const rows = ["hem", "cloth_buy_a", "cloth_length_a"].map((name) => {
    const watched = watchAt(new Engine(book, layDesk), at(name));
    if (isProblem(watched)) throw new Error(watched.problem);
    const engine = new QuestionEngine(book, layDesk, [depth], [watched.place]);
    const swept = [
      ...sweep(
        engine,
        Array.from({ length: 57 }, (_, i) => [7 + i / 8]),
      ),
    ];
    return [name, median(1, () => finish(thresholds(engine, swept, 0, watched)))];
  });
  table("thresholds of depth from 7 to 14 in eighths, ms", [["watched", "named in"], ...rows]);
});

it("slides", () => {
  const engine = new Engine(book, layDesk);
  const slide = (count: number, drawn: string | null) => {
    const took = steps(count).map(([figure]) => {
      const began = performance.now();
      engine.become(type(book, [{ ...depth.place, typed: String(figure) }]));
      if (drawn) explain(engine, at(drawn));
      return performance.now() - began;
    });
    took.sort((a, b) => a - b);
    return [took[Math.floor(count / 2)]!, took[Math.floor(count * 0.95)]!];
  };
  slide(20, null);
  const rows = [
    ["nothing", ...slide(100, null)],
    ["skirt_cut", ...slide(100, "skirt_cut")],
    ["cloth_length_a", ...slide(60, "cloth_length_a")],
  ];
  table("one move of the slider, the whole book following, no lay known, ms", [
    ["drawn", "median", "p95"],
    ...rows,
  ]);
});
