import { expect, test } from "vitest";
import { CIRCLE_HEM } from "../../../functions/flare/CIRCLE_HEM.ts";
import { CIRCLE_RADIUS } from "../../../functions/flare/CIRCLE_RADIUS.ts";
import { calls } from "../calls.ts";

const { figure, step } = calls(CIRCLE_HEM, "cm");

test("a full circle for a waist of 72, 60 long, has its hem at 71.4591559026", () => {
  // CI-04 and CI-05, computed.
  const radius = calls(CIRCLE_RADIUS, "cm");
  expect(step("hem_radius", radius.figure(72), 60)).toBeCloseTo(71.4591559026, 9);
  expect(step("hem_radius", radius.figure(72, 0.5), 60)).toBeCloseTo(82.9183118052, 9);
});

test("half a circle gains 188.4955592154 in 60, whatever the waist", () => {
  // CI-09, computed.
  for (const radius of [5, 12, 30]) {
    expect(figure(radius, 60, 0.5) - Math.PI * radius).toBeCloseTo(188.4955592154, 9);
    expect(step("gained", radius, 60, 0.5)).toBeCloseTo(188.4955592154, 9);
  }
});
