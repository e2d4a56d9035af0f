import { describe, expect, it } from "vitest";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { Touch } from "../../../src/lay/touch.ts";

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const span = { left: 0, right: 90, low: 0, high: 20 };
const all = { left: 0, right: 90, low: 0, high: 20 };
const touch = new Touch(square, [{ outline: square, x: 20, y: 5 }], span, 1e-6);

describe("places where a square touches another", () => {
  it("beside, above and below it are free, on it and off the cloth are not", () => {
    expect([touch.isFree(10, 5), touch.isFree(30, 5), touch.isFree(20, 15)]).toEqual([true, true, true]);
    expect([touch.isFree(11, 5), touch.isFree(20, 5), touch.isFree(-1, 0), touch.isFree(0, 21)]).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it("are the corners of their no-fit polygon, its crossings with the selvedges and the foot from a point", () => {
    const places = touch.places(all, [5, 8]).map(([x, y]) => `${x} ${y}`);
    // The no-fit polygon of two squares of 10 is a square of 20 about the one that lies there.
    for (const corner of ["10 15", "30 15", "10 0", "30 0", "10 8", "0 0", "0 20", "90 20"])
      expect(places).toContain(corner);
    expect(places).not.toContain("10 -5");
  });

  it("keep to the columns of a repeat where one is given", () => {
    const places = touch.places(all, [0, 0], [12, 24, 36]);
    expect(places.length).toBeGreaterThan(0);
    expect(places.every(([x]) => [12, 24, 36].includes(x))).toBe(true);
    expect(places.filter(([x, y]) => touch.isFree(x, y)).map(([x]) => x)).toContain(36);
  });

  it("find the one crossing of two no-fit polygons between two squares", () => {
    const pair = new Touch(
      square,
      [
        { outline: square, x: 20, y: 0 },
        { outline: square, x: 32, y: 10 },
      ],
      span,
      1e-6,
    );
    const free = pair.places(all, [0, 0]).filter(([x, y]) => pair.isFree(x, y));
    expect(free).toContainEqual([22, 10]);
  });
});
