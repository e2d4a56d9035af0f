import { expect, test } from "vitest";
import { BUTTON_LOOP } from "../../../functions/notions/BUTTON_LOOP.ts";
import { BUTTONHOLE } from "../../../functions/notions/BUTTONHOLE.ts";
import { run } from "../../../functions/run.ts";

test("a loop is out and back the buttonhole of its button", () => {
  const hole = run(BUTTONHOLE, [1.2, 0.4], { unit: "cm" }) as number;
  expect(run(BUTTON_LOOP, [1.2, 0.4], { unit: "cm" })).toBeCloseTo(2 * hole, 12);
});

test("a loop's opening is as long as the button's girth, and twelve loops take twelve times one", () => {
  const one = run(BUTTON_LOOP, [0.5, 0.25, 0.5], { unit: "in" }) as number;
  expect(one - 1).toBeCloseTo(2 * (0.5 + 0.25), 12);
  expect(run(BUTTON_LOOP, [0.5, 0.25, 0.5, 12], { unit: "in" })).toBeCloseTo(12 * one, 12);
});
