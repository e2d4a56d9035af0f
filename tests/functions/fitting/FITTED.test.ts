import { expect, test } from "vitest";
import { FITTED } from "../../../functions/fitting/FITTED.ts";
import { SEAM_CHANGE } from "../../../functions/fitting/SEAM_CHANGE.ts";
import { run } from "../../../functions/run.ts";

test("the log's change put to the pattern, then undone by the next fitting, is the pattern again", () => {
  const log = (amounts: number[]) =>
    run(SEAM_CHANGE, [amounts.map(() => "bodice"), amounts.map(() => "side"), amounts, "bodice", "side"], {
      unit: "in",
    }) as number;
  expect(run(FITTED, [32, log([-0.5, -0.25])], { unit: "in" })).toBe(31.25);
  expect(run(FITTED, [32, log([-0.5, -0.25, 0.75])], { unit: "in" })).toBe(32);
});

test("taking in more than there is is refused", () => {
  expect(run(FITTED, [2, -2.5], { unit: "in" })).toMatchObject({
    refusal: "change must take in less than 2 in, not 2 1/2 in",
  });
});
