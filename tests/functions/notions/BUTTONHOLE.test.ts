import { expect, test } from "vitest";
import { BUTTON_LOOP } from "../../../functions/notions/BUTTON_LOOP.ts";
import { BUTTONHOLE } from "../../../functions/notions/BUTTONHOLE.ts";
import { run } from "../../../functions/run.ts";

const hole = (...args: number[]) => run(BUTTONHOLE, args, { unit: "in" }) as number;

test("a one-inch button a quarter thick needs an inch and a quarter", () => {
  // Common practice: diameter and thickness.
  expect(hole(1, 0.25)).toBe(1.25);
});

test("the slit opens as far as the button's girth, its section's diagonals lying inside", () => {
  for (const [d, t] of [
    [1, 0.25],
    [0.5, 0.5],
    [2, 0.1],
  ] as const) {
    const slit = hole(d, t);
    expect(2 * slit).toBeCloseTo(2 * d + 2 * t, 12);
    expect(slit).toBeGreaterThanOrEqual(Math.hypot(d, t));
  }
});

test("a ball's slit is half its girth, as its loop is, and its thickness is refused", () => {
  expect(run(BUTTONHOLE, [0.5, null, null, "ball"], { unit: "in" })).toBeCloseTo((Math.PI * 0.5) / 2, 12);
  expect(run(BUTTON_LOOP, [0.5, null, null, null, "ball"], { unit: "in" })).toBeCloseTo(Math.PI * 0.5, 12);
  expect(run(BUTTONHOLE, [0.5, 0.5, null, "ball"], { unit: "in" })).toMatchObject({
    refusal: "thickness must be left out for a ball, which needs only its diameter",
  });
});
