import { expect, test } from "vitest";
import { HEM_EXCESS } from "../../../functions/curves/HEM_EXCESS.ts";
import { explain, run } from "../../../functions/run.ts";

test("a hem of 3 cm on a full circle is 18.85 cm longer at its edge", () => {
  // HE-09, computed in 50 digits.
  expect(run(HEM_EXCESS, [3], { unit: "cm" })).toBeCloseTo(18.8495559215, 10);
});

test("whatever the radius: the arc at the edge less the arc at the fold, and twice that to ease in", () => {
  for (const radius of [20, 75, 300]) {
    const arc = (r: number) => 2 * Math.PI * 0.75 * r;
    const { answer, steps } = explain(HEM_EXCESS, [2.5, 0.75], { unit: "cm" });
    expect(answer).toBeCloseTo(arc(radius + 2.5) - arc(radius), 9);
    expect(steps[0]?.value).toBeCloseTo(arc(radius + 2.5) - arc(radius - 2.5), 9);
  }
});
