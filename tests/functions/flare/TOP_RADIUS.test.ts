import { expect, test } from "vitest";
import { TOP_RADIUS } from "../../../functions/flare/TOP_RADIUS.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(TOP_RADIUS, "cm");

test("the printed flounce is drawn at 21.6, and its hem at 33.6", () => {
  // CI-02, rule printed: Baldt, Clothing for Women, 1916: AB is the radius and the depth.
  expect(figure(72, 112, 12)).toBeCloseTo(21.6, 9);
  expect(step("hem_radius", 72, 112, 12)).toBeCloseTo(33.6, 9);
});

test("waist 72, hem 200, length 60 is drawn at 33.75 and 93.75", () => {
  // CI-11, computed.
  expect(figure(72, 200, 60)).toBeCloseTo(33.75, 9);
  expect(step("hem_radius", 72, 200, 60)).toBeCloseTo(93.75, 9);
});

test("the two radii are to one another as the two edges", () => {
  const [top, hem, depth] = [31.7, 58.2, 19.3];
  expect(step("hem_radius", top, hem, depth) / figure(top, hem, depth)).toBeCloseTo(hem / top, 12);
});

test("a hem no longer than the top has no centre above it", () => {
  expect(refusal(20, 20, 5)).toMatch(/^hem must be longer than top .* not 20 cm against 20 cm/);
});
