import fc from "fast-check";
import { expect, test } from "vitest";
import { YARDAGE } from "../../../functions/cloth/YARDAGE.ts";
import type { Lay, LayQuestion, Planner } from "../../../functions/lay.ts";
import { type Argument, isRefused, run } from "../../../functions/run.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const box = (width: number, length: number) => `M 0 0 L ${width} 0 L ${width} ${length} L 0 ${length} Z`;
const gore = "M 30 0 L 40 0 L 40 60 L 0 60 Z";

/** Pieces and quantities, then the other arguments in their order; the question and lay are kept. */
function yardage(...args: Argument[]) {
  const asked: { question: LayQuestion; lay: ReturnType<Planner> }[] = [];
  const plan: Planner = (question) => {
    const lay = quickLay(question);
    asked.push({ question, lay });
    return lay;
  };
  const answer = run(YARDAGE, args, { unit: "in", plan });
  return { answer, ...asked[0] };
}
const refused = (...args: Argument[]) => {
  const { answer } = yardage(...args);
  return isRefused(answer) ? answer.refusal : answer;
};

test("on nap the second gore can not be turned end for end and lies behind the first", () => {
  expect(yardage([gore], [2], 54).answer).toBe(60);
  expect(yardage([gore], [2], 54, true).answer).toBeGreaterThan(90);
});

test("a piece that may lie across the cloth does where that is shorter; on the bias it lies slantwise", () => {
  const grains = (grain: string | null, oneWay = false) =>
    ["", 0, 0, null, null, null, [grain]].map((rest, i) => (i === 0 ? oneWay : rest)) as Argument[];
  expect(yardage([box(10, 50)], [1], 54, ...grains(null)).answer).toBe(50);
  expect(yardage([box(10, 50)], [1], 54, ...grains("cross")).answer).toBeCloseTo(10, 9);
  expect(yardage([box(10, 50)], [1], 54, ...grains("cross", true)).answer).toBeCloseTo(10, 9);
  // A square of 20 stands on its corner: its diagonal is 20 √2.
  for (const oneWay of [false, true])
    expect(yardage([box(20, 20)], [1], 54, ...grains("bias", oneWay)).answer).toBeCloseTo(20 * Math.SQRT2, 9);
  expect(refused([box(20, 20)], [1], 54, ...grains("slanting"))).toBe(
    'grains must be "straight", "cross" or "bias", not "slanting"',
  );
  expect(refused([box(50, 50)], [1], 54, ...grains("bias"))).toMatch(/wide/);
});

test("the squares of a squared rectangle never lie shorter than its 32 by 33", () => {
  // Moroń 1925: nine squares that fill 33 × 32, so on 33 in no lay can be below 32 in.
  const sides = [18, 15, 14, 10, 9, 8, 7, 4, 1];
  const { answer } = yardage(
    sides.map((side) => box(side, side)),
    sides.map(() => 1),
    33,
  );
  expect(answer).toBeGreaterThanOrEqual(32 - 1e-9);
  expect(answer).toBeLessThan(45);
});

test("whatever it answers has a lay behind it that passes the independent checker and is as long", () => {
  const piece = fc.constantFrom(
    gore,
    box(12, 30),
    "M 0 5 C 4 0 8 0 12 5 L 14 22 L -2 22 Z",
    "M 0 0 A 20 20 0 0 0 20 20 L 20 40 A 40 40 0 0 1 -20 0 Z",
  );
  const line = fc.tuple(piece, fc.integer({ min: 1, max: 3 }), fc.boolean());
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 4 }), fc.boolean(), (lines, oneWay) => {
      const { answer, question, lay } = yardage(
        lines.map(([path]) => path),
        lines.map(([, count]) => 2 * count),
        60,
        oneWay,
        0.25,
        null,
        lines.map(([, , paired]) => paired),
      );
      expect(checkLay(question!, lay as Lay)).toEqual([]);
      expect(answer).toBe((lay as Lay).lengths[0]);
      expect((lay as Lay).placements).toHaveLength(lines.reduce((sum, [, count]) => sum + 2 * count, 0));
    }),
    { seed: 20_261_125, numRuns: 12 },
  );
});

test("a gap for the scissors lies between pieces, not outside them", () => {
  const { answer } = yardage([box(10, 20)], [3], 10, false, 0.5);
  expect(answer).toBeGreaterThanOrEqual(61);
  expect(answer).toBeLessThan(61.05);
});

test("with a repeat the same point of every copy falls on the same place of the pattern", () => {
  const { question, lay } = yardage([box(40, 30)], [3], 54, true, 0, 8);
  const places = (lay as Lay).placements.map(({ x }) => x + question!.pieces[0]!.match![0]);
  for (const place of places) expect(((place - places[0]!) / 8) % 1).toBeCloseTo(0, 9);
});

test("a line of the list with no figures is skipped, one with half its figures is refused by its number", () => {
  expect(yardage([box(5, 9), null, ""], [1, null, ""], 54).answer).toBe(9);
  expect(refused([box(5, 9), box(5, 8)], [1, null], 54)).toBe(
    "quantities, number 2, is empty: say how many of piece 2 to cut",
  );
  expect(refused([box(5, 9), null], [1, 3], 54)).toBe(
    "pieces, number 2, is empty, but its quantity is 3: give an outline",
  );
  expect(refused([null], [null], 54)).toMatch(/^pieces is empty/);
  expect(refused([box(5, 9)], [1, 2], 54)).toBe(
    "quantities must have the same number of cells as pieces, not 2 against 1",
  );
});

test("an odd count of pairs and a fold that can not be are refused by name", () => {
  const more = (pairs: Argument, folds: Argument): Argument[] => [false, 0, 0, pairs, folds, ["gore"]];
  expect(refused([gore], [3], 54, ...more(["yes"], null))).toBe(
    "quantities, number 1, must be even for pairs of gore, not 3: a pair is 2",
  );
  expect(refused(["M 5 0 L 9 9 L 0 9 Z"], [1], 54, ...more(null, ["yes"]))).toMatch(
    /^gore can not be cut on the fold: it has no straight edge along the grain/,
  );
});

test("a piece wider than the cloth is refused in the planner's words, a broken outline in the reader's", () => {
  expect(refused([box(60, 10)], [1], 54, false, 0, 0, null, null, ["cape"])).toMatch(
    /^cape is 6 in wider than the cloth/,
  );
  expect(refused(["M 0 0 L 9 9 L 9 0 L 0 5 Z"], [1], 54)).toMatch(
    /^pieces is not a valid piece: .*crosses itself/,
  );
});

test("a piece wider than the cloth is refused in lengths of the book's tape", () => {
  const panel = "M 0 0 H 62.63 V 40 H 0 Z";
  for (const [unit, words] of [
    ["in", "8 5/8 in wider than the cloth: it needs 62 5/8 in across, and the cloth is 54 in wide"],
    ["cm", "8.6 cm wider than the cloth: it needs 62.6 cm across, and the cloth is 54 cm wide"],
  ] as const)
    expect(run(YARDAGE, [[panel], [1], 54], { unit, plan: quickLay })).toEqual({
      refusal: expect.stringContaining(`is ${words}; turn it`),
      at: { position: 0, cell: 0 },
    });
});
