import { expect, test } from "vitest";
import { GATHER_WIDTH } from "../../../functions/pleats/GATHER_WIDTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(GATHER_WIDTH, "in");

test("a frill of 1.80 m at a density of one third takes 5.4 m", () => {
  // GA-01, printed: NIMI, Dress Making Trade Practical, p. 212 a.
  expect(calls(GATHER_WIDTH, "cm").figure(180, 3)).toBeCloseTo(540, 9);
});

test("a ruffle is cut half as long again as its edge, and lace put on full the same", () => {
  // GA-05: Kinne & Cooley, Clothing and Health, 1916; GA-06: Fryer, Mary Frances Sewing Book, 1913, no. 25. Rules printed.
  expect(figure(2.5 * 36, 1.5) / 36).toBeCloseTo(3.75, 12);
  expect(figure(24, 1.5)).toBe(36);
});

test("a French ruffle takes two and a third times its length", () => {
  // PL-20, rule printed: Stephenson, Cutting and Draping, 1905, Pleated Valances; 36 in is ours.
  expect(figure(36, 7 / 3)).toBeCloseTo(84, 12);
});

test("a crimped frill and a shirred curtain take twice, a shirred hat facing three times", () => {
  // GA-10: Ladies' Work-Table Book, 1844, Frills; GA-11: Stephenson 1905, Lace Curtains. Rules printed.
  expect(figure(30, 2)).toBe(60);
  expect(figure(40, 2)).toBe(80);
  // GA-12, printed: Archer, Needlecraft, 1911, millinery: three times round the brim.
  expect(figure(44, 3) / 44).toBe(3);
});

test("lace gathered round a corner by half takes two and a half widths", () => {
  // GA-07 and GA-08, printed: McGlauflin, Handicraft for Girls, 1910, Sewing on Lace A. Plain, the outer
  // edge of a square corner is twice the width; the half more is half of one width, at the inner edge's fullness.
  const [width, plain] = [1, 2];
  expect(plain * width + figure(width, 1.5) - width).toBeCloseTo(2.5, 12);
});

test("what is gathered away and what is left are the strip", () => {
  expect(step("gathered_away", 33, 2.25) + 33).toBeCloseTo(figure(33, 2.25), 12);
  expect(figure(33, 1)).toBe(33);
});

test("a strip shorter than its edge is refused", () => {
  expect(refusal(36, 0.9)).toBe("ratio must be at least 1, not 0.9");
  expect(refusal(-36, 2)).toBe("finished must be at least 1/32 in, not -36 in");
});
