import { expect, test } from "vitest";
import { CIRCLE_RADIUS } from "../../../functions/flare/CIRCLE_RADIUS.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(CIRCLE_RADIUS, "cm");

// CI-04 to CI-07, computed in 50 digits: a waist of 72 cm.
test.each([
  [1, 11.4591559026],
  [0.5, 22.9183118052],
  [0.75, 15.2788745368],
  [0.25, 45.8366236105],
])("a waist of 72 cm on %d of a circle is cut at %d", (circle, radius) => {
  expect(Math.abs(figure(72, circle) - radius)).toBeLessThan(1e-9);
});

test("a thread laid round the arc comes to waist and ease", () => {
  const radius = figure(70, 0.6, 4);
  let round = 0;
  const steps = 20_000;
  for (let i = 0; i < steps; i += 1) round += 2 * radius * Math.sin((0.6 * Math.PI) / steps);
  expect(round).toBeCloseTo(74, 6);
});

test("ease that leaves no waist is refused", () => {
  expect(refusal(20, 1, -30)).toBe("ease must leave an edge above 0: more than -20 cm, not -30 cm");
});
