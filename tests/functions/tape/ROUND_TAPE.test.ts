import fc from "fast-check";
import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { ROUND_TAPE } from "../../../functions/tape/ROUND_TAPE.ts";

const round = (length: number, mark: string | null = null, direction: string | null = null) =>
  run(ROUND_TAPE, [length, mark, direction], { unit: "in", mark: "1/8" }) as number;

test("it is the nearest of all marks, or the nearest on the wanted side", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -40, max: 40, noNaN: true }),
      fc.constantFrom(2, 4, 8, 16),
      (length, parts) => {
        const marks = Array.from({ length: 81 * parts + 1 }, (_, i) => i / parts - 40.5);
        const nearest = (list: number[]) =>
          list.reduce((a, b) => (Math.abs(b - length) <= Math.abs(a - length) ? b : a));
        const mark = `1/${parts}`;
        expect(round(length, mark)).toBeCloseTo(nearest(marks), 9);
        expect(round(length, mark, "up")).toBeCloseTo(
          nearest(marks.filter((one) => one >= length - 1e-9)),
          9,
        );
        expect(round(length, mark, "down")).toBeCloseTo(
          nearest(marks.filter((one) => one <= length + 1e-9)),
          9,
        );
      },
    ),
    { seed: 11 },
  );
});

test("a length that is on a mark but for the last bits of the sum is not pushed to the next", () => {
  expect(round(0.1 + 0.2, "1/10", "up")).toBeCloseTo(0.3, 12);
});

test("it rounds as the printed sources round", () => {
  // NIMI, Dress Making Trade Practical, p. 203: 92 cm over 18 pleats, 5.11..., told as 5.1.
  expect(run(ROUND_TAPE, [92 / 18, "1 mm"], { unit: "cm" })).toBeCloseTo(5.1, 12);
  // Conover, Complete Course in Dressmaking vol. 5, 1921-22, p. 69: 16 1/2 in over 8 is 2 1/8.
  expect(round(16.5 / 8)).toBe(2.125);
});
