import { expect, test } from "vitest";
import { BUTTON_INSET } from "../../../functions/notions/BUTTON_INSET.ts";
import { run } from "../../../functions/run.ts";

test("a button of 3/4 in is sewn 5/8 in from the edge of the band", () => {
  // Johnson, Oregon / Utah State extension L-86, 1964: half the button and 1/4 in (rule printed).
  expect(run(BUTTON_INSET, [0.75], { unit: "in" })).toBeCloseTo(0.625, 12);
});

test("two bands with the same inset overlap by twice the inset when buttoned middle on middle", () => {
  // The button's far rim then lies a margin inside the under band's edge too.
  const inset = run(BUTTON_INSET, [2, 0.5], { unit: "cm" }) as number;
  expect(2 * inset - (inset + 1)).toBeCloseTo(0.5, 12);
});
