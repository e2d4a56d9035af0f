import { expect, test } from "vitest";
import { HEM_STITCH } from "../../../functions/curves/HEM_STITCH.ts";
import { HEM_TURN } from "../../../functions/curves/HEM_TURN.ts";
import { explain, run } from "../../../functions/run.ts";

test("for a 1 1/2 in hem turn 2 in, then 1/2 in under", () => {
  // HE-02, printed: It's Fun to Sew a Cotton School Dress, Oregon State extension L-87, 1961.
  expect(run(HEM_TURN, [1.5, 0.5], { unit: "in" })).toBe(2);
});

test("it is sewn down where HEM_STITCH says", () => {
  const { steps } = explain(HEM_TURN, [4, 1], { unit: "cm" });
  const line = steps.find(({ name }) => name === "stitch_from_edge")?.value;
  expect(line).toBe(run(HEM_STITCH, [4, 1], { unit: "cm" }));
});
