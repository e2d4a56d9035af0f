import { expect, test } from "vitest";
import { CASING_DEPTH } from "../../../functions/notions/CASING_DEPTH.ts";
import { run } from "../../../functions/run.ts";

test("turned down and under, the tunnel left is the elastic's width and the ease", () => {
  const depth = run(CASING_DEPTH, [2, 0.4, 0.6], { unit: "cm" }) as number;
  expect(depth - 0.6 - 0.4).toBeCloseTo(2, 12);
});

test("a hem of an inch and a half with half an inch turned under is turned 2 in", () => {
  // Oregon State extension L-87, 1961, swimming robe step 3 (printed): turn 2 in, then 1/2 in; no ease there.
  expect(run(CASING_DEPTH, [1.5, 0, 0.5], { unit: "in" })).toBe(2);
});
