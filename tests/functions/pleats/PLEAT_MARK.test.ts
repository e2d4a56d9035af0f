import fc from "fast-check";
import { expect, test } from "vitest";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { calls } from "../calls.ts";

const { answer, refusal } = calls(PLEAT_MARK, "cm");

/** All marks down the cell, until it stays empty. */
function marks(finished: number, count: number, depth: number, style: string, which = "all"): number[] {
  const found: number[] = [];
  for (let number = 1; ; number += 1) {
    const mark = answer(number, finished, count, depth, style, which);
    if (mark === "") return found;
    found.push(mark as number);
  }
}

/** Stretches of the flat cloth that a pleat hides, from its marks in order. */
function hidden(style: string, all: readonly number[]): [number, number][] {
  const pairs = (list: readonly number[]) =>
    list.flatMap((from, i): [number, number][] => (i % 2 === 0 ? [[from, list[i + 1]!]] : []));
  // Knife: fold to placement. Box: placement to fold, fold to placement. Inverted: fold to fold.
  return pairs(style === "inverted" ? all.filter((_, i) => i % 3 !== 1) : all);
}

const pleats = fc.record({
  finished: fc.double({ min: 20, max: 300, noNaN: true }),
  count: fc.integer({ min: 1, max: 30 }),
  depth: fc.double({ min: 0.2, max: 12, noNaN: true }),
  style: fc.constantFrom("knife", "box", "inverted"),
});

test("what shows between the marks is the finished width, and with what is hidden the flat width", () => {
  fc.assert(
    fc.property(pleats, ({ finished, count, depth, style }) => {
      const all = marks(finished, count, depth, style);
      for (let i = 1; i < all.length; i += 1) expect(all[i]).toBeGreaterThan(all[i - 1]! - 1e-9);
      const away = hidden(style, all).reduce((sum, [from, to]) => sum + to - from, 0);
      const flat = calls(FLAT_WIDTH, "cm").figure(finished, count, depth, style);
      expect(flat - away).toBeCloseTo(finished, 8);
    }),
    { seed: 58 },
  );
});

test("folded up, every pleat has its middle where even spacing puts it", () => {
  fc.assert(
    fc.property(pleats, ({ finished, count, depth, style }) => {
      const away = hidden(style, marks(finished, count, depth, style));
      const each = away.length / count;
      let gone = 0;
      const lines = away.map(([from, to]) => {
        const at = from - gone;
        gone += to - from;
        return at;
      });
      for (let i = 0; i < count; i += 1) {
        const middle = lines.slice(i * each, (i + 1) * each).reduce((sum, at) => sum + at, 0) / each;
        expect(middle).toBeCloseTo(((i + 0.5) * finished) / count, 8);
      }
    }),
    { seed: 59 },
  );
});

test("fold lines and placement lines asked for apart are together all the marks", () => {
  for (const style of ["knife", "box", "inverted"]) {
    const apart = ["fold", "placement"].flatMap((which) => marks(84, 7, 2, style, which));
    const all = marks(84, 7, 2, style);
    expect(apart).toHaveLength(all.length);
    apart.sort((a, b) => a - b);
    for (const [i, mark] of apart.entries()) expect(mark).toBeCloseTo(all[i]!, 10);
  }
});

test("marks lie the same from either end of the cloth when the pleats look both ways alike", () => {
  for (const style of ["box", "inverted"]) {
    const all = marks(84, 5, 3, style);
    for (const [i, mark] of all.entries()) expect(mark + all.at(-1 - i)!).toBeCloseTo(84 + 5 * 12, 9);
  }
});

test("a box is two depths wide, or as wide as the spacing when that is less: then boxes touch", () => {
  const [, first, second] = marks(60, 3, 4, "box");
  expect(second! - first!).toBeCloseTo(8, 12);
  const close = marks(60, 10, 4, "box");
  expect(close[2]! - close[1]!).toBeCloseTo(6, 12);
  expect(close[4]! - close[3]!).toBeCloseTo(0, 12);
});

test("a mark before the first and an unknown kind of line are refused", () => {
  expect(refusal(0, 60, 3, 4)).toBe("number must be at least 1, not 0");
  expect(refusal(1, 60, 3, 4, "knife", "inner")).toBe(
    'which must be "all", "fold" or "placement", not "inner"',
  );
});

test("box pleats as wide as the spaces between them, their folds as deep, are three thicknesses all along", () => {
  // The pleated valance of Stephenson, Cutting and Draping, 1905: 3 ft to the foot. 12 in, three boxes.
  const inches = calls(PLEAT_MARK, "in");
  const all = Array.from({ length: 12 }, (_, i) => inches.figure(i + 1, 12, 3, 2, "box", "all", 2));
  // Worked by hand: spaces of 1, 2, 2, 1 in show, boxes of 2 in, four layers of 2 in to each box.
  expect(all).toEqual([1, 5, 7, 11, 13, 17, 19, 23, 25, 29, 31, 35]);
  expect(inches.answer(13, 12, 3, 2, "box", "all", 2)).toBe("");
  expect(inches.answer(2, 12, 3, 2, "box")).toBe(inches.answer(2, 12, 3, 2, "box", "all", 4));
});

test("a width of box for other pleats, or wider than there is room for, is refused", () => {
  expect(refusal(1, 84, 7, 2, "knife", "all", 3)).toBe(
    "box_width must be left out for knife pleats, not 3 cm",
  );
  expect(refusal(1, 84, 7, 2, "box", "all", 13)).toBe(
    "box_width must be at most 12 cm, where the boxes touch, not 13 cm",
  );
});
