import { expect, test } from "vitest";
import { BUTTON_COUNT } from "../../../functions/notions/BUTTON_COUNT.ts";
import { BUTTON_MARK } from "../../../functions/notions/BUTTON_MARK.ts";
import { run } from "../../../functions/run.ts";

const count = (...args: number[]) => run(BUTTON_COUNT, args, { unit: "cm" }) as number;

test("rings every six inches, one at each end, are a sixth of the length and one", () => {
  // Stephenson, Cutting and Draping, 1905, awnings (printed rule n = L/6 + 1).
  for (const length of [12, 36, 60, 120]) expect(count(length, 6)).toBe(length / 6 + 1);
});

test("the textbook that counts tucks says buttons are counted alike: 39 cm, 1.2 cm gaps, 1.5 cm edges are 31", () => {
  // NIMI, Dress Making Trade Practical, p. 209 ex. 1 (printed); p. 209 exercise 1a (rule printed, worked): 21.
  expect(count(39, 1.2, 1.5, 1.5)).toBe(31);
  expect(count(44, 2, 2, 2)).toBe(21);
});

test("as many buttons as counted, marked evenly, stand no farther apart than wanted", () => {
  for (const [edge, spacing, top, bottom] of [
    [40, 7, 1.5, 8],
    [55.5, 4.1, 2, 2],
    [10, 30, 0, 0],
  ] as const) {
    const n = count(edge, spacing, top, bottom);
    const mark = (i: number) => run(BUTTON_MARK, [i, edge, n, top, bottom], { unit: "cm" }) as number;
    expect(mark(2) - mark(1)).toBeLessThanOrEqual(spacing);
    expect(edge - mark(n)).toBeCloseTo(bottom, 9);
  }
});
