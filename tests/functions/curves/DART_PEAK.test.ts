import { expect, test } from "vitest";
import { DART_PEAK } from "../../../functions/curves/DART_PEAK.ts";
import { run } from "../../../functions/run.ts";

type Point = readonly [number, number];

/** A point mirrored about the line through `a` and `b`. */
function fold([x, y]: Point, a: Point, b: Point): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy);
  return [2 * (a[0] + t * dx) - x, 2 * (a[1] + t * dy) - y];
}

test("cut with the peak and folded to one side, the dart's edge lies on the seam line beside it", () => {
  for (const [intake, length] of [[2, 9], [3, 12], [8, 10]] as const) {
    const peak = run(DART_PEAK, [intake, length], { unit: "cm" }) as number;
    const [left, point, top]: Point[] = [[-intake / 2, 0], [0, length], [0, -peak]];
    // The cloth between the left leg and the fold, turned over about the left leg, lies under the left side,
    // whose edge is the line y = 0 to the left of the leg.
    const under = fold(top!, left!, point!);
    expect(under[1]).toBeCloseTo(0, 9);
    expect(under[0]).toBeLessThan(-intake / 2);
  }
}); // biome-ignore format: points in rows

test("a dart too wide for its length is refused with the widest that can be", () => {
  expect(run(DART_PEAK, [20, 5], { unit: "cm" })).toMatchObject({
    refusal: "intake must be at most 7.3 cm for a dart 5 cm long, not 20 cm: make two darts instead",
  });
});
