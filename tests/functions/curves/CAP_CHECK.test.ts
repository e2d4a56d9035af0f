import { expect, test } from "vitest";
import { CAP_CHECK } from "../../../functions/curves/CAP_CHECK.ts";
import { run } from "../../../functions/run.ts";

const check = (...args: (number | null)[]) => run(CAP_CHECK, args, { unit: "in" });

test("an inch to an inch and a half passes, less and more are looked at", () => {
  // Common practice for set-in sleeves of woven cloth.
  expect(check(18, 17)).toBe("ok");
  expect(check(18.5, 17)).toBe("ok");
  expect(check(17.5, 17)).toBe("check: the cap has 1/2 in of ease, less than 1 in: raise or widen it");
  expect(check(19, 17)).toBe("check: the cap has 2 in of ease, more than 1 1/2 in: lower it, or gather it");
  expect(check(16.5, 17)).toBe(
    "check: the cap is 1/2 in shorter than the armhole; it should be 1 in to 1 1/2 in longer",
  );
});

test("most below least is refused", () => {
  expect(check(18, 17, 2, 1)).toMatchObject({
    refusal: "most must be at least 2 in, the smallest ease, not 1 in",
  });
});
