import { expect, test } from "vitest";
import { BINDING_LENGTH } from "../../../functions/notions/BINDING_LENGTH.ts";
import { TRIM_LENGTH } from "../../../functions/notions/TRIM_LENGTH.ts";
import { type Argument, explain, isRefused, run } from "../../../functions/run.ts";

const binding = (...args: Argument[]) => run(BINDING_LENGTH, args, { unit: "in" });

test("round a plain corner go two widths", () => {
  // McGlauflin, Handicraft for Girls, 1910, Sewing on Lace A: 2 w round a corner, plain (printed).
  const sides = [10, 10, 10, 10];
  expect((binding(sides, 0, 4, 0.75) as number) - (binding(sides, 0) as number)).toBe(4 * 2 * 0.75);
});

test("a mitred frame is as long as the rectangle round its outside", () => {
  // Bound edge 20 × 30 with 1 in showing outside it: the outer border is 4 × 2 in longer than the edge.
  expect(binding([20, 30, 20, 30], 0, 4, 1)).toBe(2 * (22 + 32));
});

test("edges not yet drafted may be blank, words may not stand among them", () => {
  expect(binding([12, null, ""], 0)).toBe(12);
  const answer = binding([12, "hem"], 0);
  expect(isRefused(answer) && answer.refusal).toBe('edges, number 2, must be a length, not "hem"');
});

test("corners without the width of the binding or the trimming are pointed out", () => {
  const said = (declaration: typeof BINDING_LENGTH, ...args: Argument[]) =>
    explain(declaration, args, { unit: "in" }).unusual;
  expect(said(BINDING_LENGTH, [20, 30, 20, 30], 0, 4)).toEqual([
    "the width of the binding is not given, so its corners take no length",
  ]);
  expect(said(TRIM_LENGTH, 100, 1, 4)).toEqual([
    "the width of the trimming is not given, so its corners take no length",
  ]);
  expect(said(BINDING_LENGTH, [20, 30, 20, 30], 0, 4, 1)).toEqual([]);
});
