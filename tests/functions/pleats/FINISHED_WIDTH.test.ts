import fc from "fast-check";
import { expect, test } from "vitest";
import { FINISHED_WIDTH } from "../../../functions/pleats/FINISHED_WIDTH.ts";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(FINISHED_WIDTH, "cm");

test("236 cm with 18 pleats 4 cm deep finish 92 cm wide", () => {
  // PL-03 backwards, printed: Dress Making, Trade Practical, p. 203 ex. 1b.
  expect(figure(236, 18, 4)).toBe(92);
  // PL-06 backwards, printed: p. 204 b.
  expect(figure(152, 20, 2.5, "knife", 2)).toBe(50);
});

test("it undoes FLAT_WIDTH", () => {
  const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      length(5, 500), fc.integer({ min: 0, max: 60 }), length(0, 10), fc.constantFrom("knife", "box", "inverted"), length(0, 5),
      (finished, count, depth, style, seam) => {
        const flat = calls(FLAT_WIDTH, "cm").figure(finished, count, depth, style, seam);
        expect(figure(flat, count, depth, style, seam)).toBeCloseTo(finished, 8);
      },
    ),
    { seed: 4, numRuns: 100 },
  );
}); // biome-ignore format: one row of arbitraries

test("pleats that take more than there is are refused", () => {
  expect(refusal(40, 10, 2)).toBe("flat must be more than 40 cm, which the pleats and seams take, not 40 cm");
});
