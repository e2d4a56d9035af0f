import { expect, test } from "vitest";
import { FRONT_GAP } from "../../../functions/fitting/FRONT_GAP.ts";
import { run } from "../../../functions/run.ts";

const gap = (...args: number[]) => run(FRONT_GAP, args, { unit: "in" }) as number;

test("a garment made wider by the gap closes as wanted", () => {
  const missing = gap(38, 34.5, 1.25);
  expect(gap(38, 34.5 + missing, 1.25)).toBeCloseTo(0, 12);
});

test("girth, gap and garment go once round the body", () => {
  // Without a lap the garment and what is open between its edges are the girth.
  expect(34.5 + gap(38, 34.5)).toBe(38);
  expect(gap(38, 40)).toBe(-2);
});
