import fc from "fast-check";
import { expect, test } from "vitest";
import type { Book } from "../../../src/book/shape.ts";
import { finish, stepsOf, sweep } from "../../../src/engine/sweep.ts";
import { clearer, thresholds } from "../../../src/engine/thresholds.ts";
import { questionEngineOf, variedCell, watch } from "./ask.ts";
import { bookOf, laidPeplum, panelSkirt } from "./whatif-books.ts";

function found(book: Book, name: string, watched: string, from: number, to: number, step: number) {
  const engine = questionEngineOf(book, [name], [watched]);
  const steps = stepsOf(book, variedCell(book, name), { from, to, step }) as number[];
  const rows = [
    ...sweep(
      engine,
      steps.map((one) => [one]),
    ),
  ];
  return finish(thresholds(engine, rows, 0, watch(book, watched)));
}
const places = (...args: Parameters<typeof found>) => found(...args).jumps.map(({ at }) => at);

test("a third panel is named with the first mark of the tape from which it is needed", () => {
  // Cloth 7 in wide: a third breadth as soon as the strip is more than 14 in.
  const book = bookOf({ depth: "12 in", panels: "=PANELS(depth;IN(7))" });
  const { jumps } = found(book, "depth", "panels", 10, 16, 1);
  expect(jumps.map(({ sentence }) => sentence)).toEqual(["from depth 14 1/8 a third panel is needed"]);
});

test("a jump that begins on a mark of the tape is named with that mark, one between marks with the next", () => {
  const at = (limit: string) => bookOf({ depth: "12 in", cloth: `=depth+IF(depth>=${limit};20;0)` });
  expect(places(at("13"), "depth", "cloth", 8, 16, 0.5)).toEqual([13]);
  expect(places(at("13.3"), "depth", "cloth", 8, 16, 0.5)).toEqual([13.375]);
  expect(places(at("13.375"), "depth", "cloth", 8, 16, 0.5)).toEqual([13.375]);
  const over = bookOf({ depth: "12 in", cloth: "=depth+IF(depth>13.375;20;0)" });
  expect(places(over, "depth", "cloth", 8, 16, 0.5)).toEqual([13.5]);
});

test("every jump of a staircase is found even when one step of the sweep passes several", () => {
  fc.assert(
    fc.property(fc.integer({ min: 9, max: 40 }), fc.constantFrom(0.5, 1, 2), (eighths, step) => {
      const rise = eighths / 8;
      const book = bookOf({ depth: "12 in", cloth: `=CEILING(depth;${rise})` });
      // The shop cuts up to the next `rise`: the new length begins one mark past each.
      const all = Array.from({ length: 200 }, (_, k) => k * rise).filter((one) => one >= 8 && one < 16);
      expect(places(book, "depth", "cloth", 8, 16, step)).toEqual(all.map((one) => one + 0.125));
    }),
    { seed: 3, numRuns: 25 },
  );
});

test("smooth answers have no thresholds, however curved or kinked", () => {
  const smooth = [
    "=depth*depth*3",
    "=SQRT(depth-7)",
    "=MAX(depth;12)*2",
    "=20-ABS(depth-11.3)",
    "=300/depth",
  ];
  for (const formula of smooth) {
    expect(places(bookOf({ depth: "12 in", cloth: formula }), "depth", "cloth", 8, 16, 0.5)).toEqual([]);
  }
});

test("where the answer stops or begins is a threshold too, with its sentence", () => {
  const book = bookOf({ waist: "28 in", hem: "40 in", spread: "=SPREAD_PER_GAP(waist;hem;5)" });
  const { jumps } = found(book, "hem", "spread", 24, 34, 2);
  expect(jumps.map(({ at, sentence }) => [at, sentence])).toEqual([[28, "from hem 28 spread is 0"]]);
});

test("a verdict that turns is told in its own words", () => {
  const { jumps } = found(panelSkirt(), "depth", "verdict", 60, 70, 1);
  // 3 panels of depth + 3 in pass 200 in when the depth passes 63 2/3.
  expect(jumps.map(({ at }) => at)).toEqual([63.75]);
  expect(jumps[0]!.sentence).toBe(
    "from depth 63 3/4 verdict changes from “ok” to “check: more than the 200 in at hand”",
  );
});

test("whole cells jump at whole numbers, and a length that only grows with them does not jump", () => {
  const book = bookOf({
    pleats: "6",
    width: '=PLEAT_ALLOWANCE(pleats;IN(1);"knife")',
    cloths: "=ROUNDUP((28+width)/20;0)",
  });
  expect(places(book, "pleats", "width", 1, 20, 1)).toEqual([]);
  // 28 + 2n over 20: 3 cloths from n = 7 (42), 4 from n = 17 (62).
  expect(places(book, "pleats", "cloths", 1, 20, 1)).toEqual([7, 17]);
});

test("a laid length that jumps everywhere is said to, not listed", () => {
  const { jumps, tooMany } = found(
    bookOf({ depth: "9 in", cloth: "=depth+MOD(depth*7;1)*5" }),
    "depth",
    "cloth",
    8,
    16,
    0.5,
  );
  expect(tooMany).toBe(true);
  expect(jumps).toEqual([]);
  expect(found(laidPeplum(), "depth", "hem_edge", 8, 12, 0.5).tooMany).toBe(false);
});

test("in an answer that is uncertain by a share, only jumps beyond it are named, as about so long", () => {
  const book = bookOf({ depth: "12 in", cloth: "=100+IF(depth>10;3;0)+IF(depth>14;40;0)" });
  const engine = questionEngineOf(book, ["depth"], ["cloth"]);
  const sweepWith = (last: number) =>
    [8, 10, 12, 14, 16].map((figure) => ({
      figures: [figure],
      readings: figure < 16 ? engine.read([figure]) : [{ value: last }],
    }));
  const told = finish(thresholds(engine, sweepWith(143), 0, watch(book, "cloth"), 0.08));
  expect(told.jumps.map(({ sentence }) => sentence)).toEqual([
    "from depth 14 1/8 cloth is about 143, not about 103",
  ]);
  // A longer search that brings the far side near takes the jump away, another leaves it.
  const after = (last: number, blur: number) =>
    clearer(engine, told, sweepWith(last), 0, blur).jumps.map(({ sentence }) => sentence);
  expect(after(140, 0.05)).toEqual(["from depth 14 1/8 cloth is about 140, not about 103"]);
  expect(after(106, 0.05)).toEqual([]);
  // In an answer that stands still between its jumps a smaller jump comes to light with a smaller blur.
  expect(after(143, 0.02)).toEqual([
    "from depth 12 cloth is about 103, not about 100",
    "from depth 14 1/8 cloth is about 143, not about 103",
  ]);
});
