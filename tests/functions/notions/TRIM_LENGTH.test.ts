import { expect, test } from "vitest";
import { TRIM_LENGTH } from "../../../functions/notions/TRIM_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const trim = (...args: number[]) => run(TRIM_LENGTH, args, { unit: "in" }) as number;

test("plain lace takes two of its widths round a corner, gathered by half it takes two and a half", () => {
  // McGlauflin, Handicraft for Girls, 1910, Sewing on Lace A (printed: 2 w; 1 in and 1/2: 2.5 widths).
  expect(trim(0, 1, 1, 0.75)).toBe(1.5);
  expect(trim(0, 1.5, 1, 1)).toBe(2.5);
});

test("lace put on full takes one and a half times the distance, fringe a tenth more than its edge", () => {
  // Fryer, Mary Frances Sewing Book, 1913, no. 25; Stephenson, Cutting and Draping, 1905 (rules printed).
  expect(trim(24, 1.5)).toBe(36);
  expect(trim(100, 1, 0, 0, 0, 0.1)).toBeCloseTo(110, 9);
});

test("two edges trimmed apart take what they take together, but for the ends", () => {
  expect(trim(20, 2, 1, 1, 1) + trim(30, 2, 3, 1, 1)).toBeCloseTo(trim(50, 2, 4, 1, 2), 12);
});
