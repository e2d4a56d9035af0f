import { describe, expect, it } from "vitest";
import { measureShape, outline } from "../../../../functions/drawing/shapes.ts";
import type { Point } from "../../../../functions/geometry/strokes.ts";
import { polygon } from "../../../../functions/pieces/piece.ts";
import { differences } from "../../../../src/app/drawing/differences.ts";

const panel = (left: number, right: number, long: number) => {
  const corners: Point[] = [
    [left, 0],
    [right, 0],
    [right, long],
    [left, long],
  ];
  return outline(polygon(corners));
};

describe("what is tried out beside what was", () => {
  it("a panel an inch longer and half an inch narrower on the right says so on those two sides", () => {
    const found = differences(panel(0, 20, 30), panel(0, 19.5, 31), 1 / 16);
    expect(found.map((shape) => ("label" in shape ? [shape.label, measureShape(shape)] : []))).toEqual([
      ["−", 0.5],
      ["+", 1],
    ]);
  });

  it("nothing is said of less than a tape can show, nor of the same piece", () => {
    expect(differences(panel(0, 20, 30), panel(0, 20, 30.01), 1 / 16)).toEqual([]);
    expect(differences(panel(0, 20, 30), panel(0, 20, 30), 1 / 16)).toEqual([]);
  });
});
