import { expect, test } from "vitest";
import { DART_ANGLE } from "../../../functions/curves/DART_ANGLE.ts";
import { DART_LEG } from "../../../functions/curves/DART_LEG.ts";
import { run } from "../../../functions/run.ts";

const ask = (what: typeof DART_ANGLE, intake: number, length: number) =>
  run(what, [intake, length], { unit: "cm" }) as number;

test("by the law of cosines the angle between two legs spans the intake", () => {
  for (const [intake, length] of [[2, 9], [3.5, 12], [20, 8]] as const) {
    const leg = ask(DART_LEG, intake, length);
    const angle = (ask(DART_ANGLE, intake, length) * Math.PI) / 180;
    expect(Math.sqrt(2 * leg * leg * (1 - Math.cos(angle)))).toBeCloseTo(intake, 9);
  }
}); // biome-ignore format: a table

test("a dart of no intake has no angle", () => {
  expect(ask(DART_ANGLE, 0, 10)).toBe(0);
});
