import { expect, test } from "vitest";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { FULLNESS } from "../../../functions/pleats/FULLNESS.ts";
import { GATHER_WIDTH } from "../../../functions/pleats/GATHER_WIDTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(FULLNESS, "cm");

test("a frill of 1.80 m cut 5.4 m long is three times as full", () => {
  // GA-01, printed: NIMI, Dress Making Trade Practical, p. 212 a, a density of 1/3.
  expect(figure(540, 180)).toBeCloseTo(3, 12);
});

test("three and three quarter yards on two and a half is half as full again", () => {
  // GA-05, rule printed: Kinne & Cooley, Clothing and Health, 1916, pt II lessons 12-13.
  expect(calls(FULLNESS, "in").figure(3.75 * 36, 2.5 * 36)).toBeCloseTo(1.5, 12);
});

test("fullness and the width to cut undo one another", () => {
  for (const ratio of [1, 4 / 3, 1.5, 7 / 3, 3, 4.2]) {
    expect(figure(calls(GATHER_WIDTH, "cm").figure(87, ratio), 87)).toBeCloseTo(ratio, 12);
  }
});

test("knife pleats that lie edge to edge are three times as full, box pleats that do so too", () => {
  // A knife pleat shows its depth and hides two; a box shows two depths and hides four.
  const flat = calls(FLAT_WIDTH, "cm").figure;
  expect(figure(flat(60, 20, 3), 60)).toBeCloseTo(3, 12);
  expect(figure(flat(60, 10, 3, "box"), 60)).toBeCloseTo(3, 12);
});

test("what is taken away and what is left are the whole strip; a stretched strip is less than once as full", () => {
  expect(step("taken", 540, 180)).toBe(360);
  expect(figure(45, 60)).toBeCloseTo(0.75, 12);
});

test("nothing to gather onto is refused", () => {
  expect(refusal(100, 0)).toBe("finished must be at least 0.1 cm, not 0");
  expect(refusal(100, "waist")).toBe('finished must be a length, not "waist"');
});
