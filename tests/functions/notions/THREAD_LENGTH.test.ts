import { expect, test } from "vitest";
import { measureShape } from "../../../functions/drawing/shapes.ts";
import { THREAD_LENGTH } from "../../../functions/notions/THREAD_LENGTH.ts";
import { explain, run } from "../../../functions/run.ts";

const thread = (...args: number[]) => run(THREAD_LENGTH, args, { unit: "cm" }) as number;

test("as long as the way of both threads drawn through three stitches, those between stitches shared", () => {
  const [stitch, thickness] = [0.25, 0.12];
  const { shapes } = explain(THREAD_LENGTH, [3 * stitch, stitch, thickness], { unit: "cm" });
  const drawn = shapes
    .filter(({ kind }) => kind === "edge")
    .reduce((sum, shape) => sum + measureShape(shape)!, 0);
  expect(thread(3 * stitch, stitch, thickness)).toBeCloseTo(drawn, 9);
});

test("ordinary stitches through two layers take two and a half to three times the seam", () => {
  // Common practice for the lockstitch, no source to name: about 2.5 times.
  expect(thread(100, 0.25, 0.08) / 100).toBeGreaterThan(2.5);
  expect(thread(100, 0.25, 0.08) / 100).toBeLessThan(3);
});

test("thin cloth comes down to the two threads themselves", () => {
  expect(thread(100, 0.25, 0)).toBe(200);
});
