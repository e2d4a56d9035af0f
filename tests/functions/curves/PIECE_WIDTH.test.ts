import { expect, test } from "vitest";
import { PIECE_WIDTH } from "../../../functions/curves/PIECE_WIDTH.ts";
import { TURN } from "../../../functions/curves/TURN.ts";
import { run } from "../../../functions/run.ts";

const width = (piece: string) => run(PIECE_WIDTH, [piece], { unit: "in" }) as number;

test("an ellipse of semi-axes a and b, turned by any angle, is 2·√(a²cos² + b²sin²) wide", () => {
  const ellipse = "M -15 0 A 15 10 0 0 1 15 0 A 15 10 0 0 1 -15 0 Z";
  for (const degrees of [0, 20, 45, 77, 90, 200]) {
    const turn = (degrees * Math.PI) / 180;
    const turned = String(run(TURN, [ellipse, degrees], { unit: "in" }));
    // The outline holds the ellipse in cubic curves of 15°, within a millionth.
    expect(width(turned)).toBeCloseTo(2 * Math.hypot(15 * Math.cos(turn), 10 * Math.sin(turn)), 4);
  }
});

test("marks outside the outline make it no wider", () => {
  expect(width("M 0 0 L 5 0 L 5 9 L 0 9 Z M -3 4 L 9 4")).toBe(5);
});
