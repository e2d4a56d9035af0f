import { expect, test } from "vitest";
import { BUTTON_COVER } from "../../../functions/notions/BUTTON_COVER.ts";
import { run } from "../../../functions/run.ts";

test("across the middle the cloth goes over the face, down both sides and under from both", () => {
  const [d, t, u] = [0.875, 0.125, 0.375];
  expect(run(BUTTON_COVER, [d, t, u], { unit: "in" })).toBeCloseTo(u + t + d + t + u, 12);
});

test("its area is never less than the face, the rim and the ring beneath that it covers", () => {
  for (const [d, t, u] of [
    [2, 0.3, 0.5],
    [1, 0.1, 0.4],
    [3, 0, 1],
  ] as const) {
    const round = run(BUTTON_COVER, [d, t, u], { unit: "cm" }) as number;
    const face = (Math.PI * d * d) / 4;
    const rim = Math.PI * d * t;
    const under = face - (Math.PI * (d - 2 * u) ** 2) / 4;
    expect((Math.PI * round * round) / 4).toBeGreaterThanOrEqual(face + rim + under - 1e-9);
  }
});
