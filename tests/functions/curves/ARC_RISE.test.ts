import { expect, test } from "vitest";
import { ARC_RISE } from "../../../functions/curves/ARC_RISE.ts";
import { GORE } from "../../../functions/flare/GORE.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(ARC_RISE, "cm");

test("a gore's hem curves as far as the rise of its arc over the line from corner to corner", () => {
  const [hem] = calls(GORE, "cm").piece(12, 30, 75).edges[2]!;
  if (hem?.kind !== "arc") throw new Error("an arc");
  expect(figure(hem.radius, hem.from[0] - hem.to[0])).toBeCloseTo(75 - hem.from[1], 9);
});

test("a small rise keeps its figures", () => {
  // chord²/8r and the next term of the series, chord⁴/128r³.
  expect(figure(5000, 1)).toBeCloseTo(1 / 40000 + 1 / (128 * 5000 ** 3), 18);
});

test("a chord wider than the circle is refused", () => {
  expect(refusal(10, 21)).toBe(
    "chord must be at most 20 cm, the diameter of a circle of radius 10 cm, not 21 cm",
  );
});
