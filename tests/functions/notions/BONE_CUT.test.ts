import { expect, test } from "vitest";
import { BONE_CUT } from "../../../functions/notions/BONE_CUT.ts";
import { isRefused, run } from "../../../functions/run.ts";

test("an eleven-inch channel takes a bone of ten and a half", () => {
  // Common practice: 1/4 in clear at each end.
  expect(run(BONE_CUT, [11], { unit: "in" })).toBeCloseTo(10.5, 12);
});

test("bone and what is kept clear fill the channel", () => {
  expect((run(BONE_CUT, [32.5, 0.8], { unit: "cm" }) as number) + 1.6).toBeCloseTo(32.5, 12);
});

test("a channel with no room for any bone is refused", () => {
  const answer = run(BONE_CUT, [3, 2], { unit: "in" });
  expect(isRefused(answer) && answer.refusal).toBe(
    "clear must be less than half of the channel of 3 in, not 2 in",
  );
});

test("it warns of bones that press", () => {
  expect(BONE_CUT.cautions).toMatch(/breathing.*pain or numbness/);
});
