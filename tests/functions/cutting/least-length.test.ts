import { describe, expect, it } from "vitest";
import { leastLength, shareOfCloth } from "../../../functions/cutting/least-length.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { quickLay } from "../../../src/lay/quick.ts";
import { garmentList } from "../../src/lay/garments.ts";
import { publishedLay } from "../../src/lay/published.ts";

const box = (long: number, wide: number): Point[] => [
  [0, 0],
  [long, 0],
  [long, wide],
  [0, wide],
];

function strip(
  outline: Point[],
  quantity: number,
  more: Partial<LayQuestion> = {},
  turns = [0, 180],
): LayQuestion {
  const pieces = [{ name: "panel", outline, quantity, turns }];
  return { pieces, cloths: [{ name: "the cloth", width: 54, length: null }], gap: 0, repeat: 0, ...more };
}

describe("the length that no lay can undercut", () => {
  it("is by area the area over the width, more with a gap", () => {
    expect(leastLength(strip(box(40, 27), 4))).toBeCloseTo(80, 6);
    expect(leastLength(strip(box(40, 27), 4, { gap: 1 }))).toBeGreaterThan(80);
  });

  it("is the longest piece in its shortest turn", () => {
    expect(leastLength(strip(box(40, 5), 1))).toBeCloseTo(40, 6);
    expect(leastLength(strip(box(40, 5), 1, {}, [0, 90]))).toBeCloseTo(5, 6);
  });

  it("is all lengths together for panels wider than half the cloth, with the gaps between them", () => {
    expect(leastLength(strip(box(40, 28), 3))).toBeCloseTo(120, 6);
    expect(leastLength(strip(box(40, 28), 3, { gap: 0.5 }))).toBeCloseTo(121, 6);
    // A panel turned along the cloth is narrow enough for two: then only the area counts.
    expect(leastLength(strip(box(28, 20), 3, {}, [0, 90]))).toBeCloseTo((3 * 28 * 20) / 54, 6);
  });

  it("counts of a pointed gore only what must cross the middle of the cloth", () => {
    // 40 long at its straight edge, a point 36 across: at 18 to 27 from either end it is 10 to 20 long.
    const gore: Point[] = [
      [0, 0],
      [40, 0],
      [0, 36],
    ];
    const least = leastLength(strip(gore, 2));
    expect(least).toBeCloseTo(40, 6);
    expect(leastLength(strip(gore, 6))).toBeCloseTo(Math.max((6 * 720) / 54, 6 * 10), 6);
  });

  it("is below every lay that was ever found, and of several cloths nothing", () => {
    for (const name of ["fu", "albano", "dagli", "mao", "shirts", "jakobs1"]) {
      const { question, length } = publishedLay(name);
      expect(leastLength(question), name).toBeLessThan(length);
    }
    for (let seed = 1; seed <= 6; seed += 1) {
      const question = garmentList(seed, 3, 12);
      expect(leastLength(question)).toBeLessThanOrEqual((quickLay(question) as Lay).lengths[0]!);
    }
    const two = strip(box(40, 28), 3);
    expect(leastLength({ ...two, cloths: [...two.cloths, ...two.cloths] })).toBe(0);
  });
});

it("three panels of 27 by 40 cover 90 in of 54 in cloth for two thirds", () => {
  const inHand = { cloths: [{ name: "c", width: 54, length: 90 }] };
  expect(shareOfCloth(strip(box(40, 27), 3, inHand))).toBeCloseTo(2 / 3, 9);
  expect(shareOfCloth(strip(box(40, 27), 3))).toBe(0);
});
