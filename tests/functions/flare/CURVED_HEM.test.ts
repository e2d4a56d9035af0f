import { expect, test } from "vitest";
import { CURVED_HEM } from "../../../functions/flare/CURVED_HEM.ts";
import { FLARE_ANGLE } from "../../../functions/flare/FLARE_ANGLE.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(CURVED_HEM, "cm");

test("half a circle adds 188.4955592154 to a hem 60 below, whatever the waist", () => {
  // CI-09, computed.
  for (const waist of [50, 72, 140]) {
    expect(Math.abs(figure(waist, 60, 180) - waist - 188.4955592154)).toBeLessThan(1e-9);
  }
});

test("it undoes FLARE_ANGLE", () => {
  expect(figure(33, 18, calls(FLARE_ANGLE, "cm").figure(33, 61.5, 18))).toBeCloseTo(61.5, 9);
});

test("it is longer than the straight gaps of a slashed paper added up, by the bulge of each", () => {
  // A fan of 8 straight chords under the same angle: each 2 R sin(half its angle).
  const [top, depth, angle] = [40, 20, 60];
  const radius = (top * 180) / (Math.PI * angle) + depth;
  const chords = 8 * 2 * radius * Math.sin(((angle / 8 / 2) * Math.PI) / 180);
  const hem = figure(top, depth, angle);
  expect(hem).toBeGreaterThan(chords);
  expect(hem - chords).toBeLessThan(0.02 * hem);
});

test("an angle that eats up the hem is refused", () => {
  expect(refusal(20, 30, -60)).toMatch(
    /^angle must leave a hem above 0: at -60 degrees the hem loses 31.4 cm, more than top 20 cm/,
  );
});
