import { expect, test } from "vitest";
import { EASE } from "../../../functions/body/EASE.ts";
import { WITH_EASE } from "../../../functions/body/WITH_EASE.ts";
import { run } from "../../../functions/run.ts";

test("a waistband is cut the waist and two and a half inches", () => {
  // Johnson, It's Fun to Sew Aprons and Skirts (Oregon State extension L-86, 1964), skirt band,
  // step 1: rule printed, answer worked: waist 24 → 26 1/2.
  expect(run(WITH_EASE, [24, 2.5], { unit: "in" })).toBe(26.5);
});

test("the ease that was put on is the ease that is found", () => {
  const garment = run(WITH_EASE, [88, -6], { unit: "cm" }) as number;
  expect(run(EASE, [88, garment], { unit: "cm" })).toBe(-6);
});

test("ease that leaves nothing is refused", () => {
  expect(run(WITH_EASE, [12, -20], { unit: "cm" })).toMatchObject({
    refusal: "amount must leave a length above 0: -20 cm of ease on 12 cm comes to -8 cm",
  });
});
