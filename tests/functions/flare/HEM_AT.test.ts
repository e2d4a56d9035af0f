import { expect, test } from "vitest";
import { GIRTH_AT } from "../../../functions/body/GIRTH_AT.ts";
import { HEM_AT } from "../../../functions/flare/HEM_AT.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(HEM_AT, "in");

test("at the hip drop the hem is the hip, at no depth nearly the waist, and between them on a line", () => {
  expect(figure(30, 42, 8, 8)).toBe(42);
  expect(figure(30, 42, 8, 4)).toBe(36);
  expect(figure(30, 42, 8, 16)).toBe(54);
});

test("it is the body's own girth at that level, times the fullness", () => {
  const girth = calls(GIRTH_AT, "in").figure(33, 45, 7, 11);
  expect(figure(33, 45, 7, 11)).toBeCloseTo(girth, 12);
  expect(figure(33, 45, 7, 11, 2.5)).toBeCloseTo(2.5 * girth, 12);
});

test("halves in, half out", () => {
  expect(figure(15, 21, 8, 10)).toBeCloseTo(figure(30, 42, 8, 10) / 2, 12);
});

test("a section deeper than where a narrowing body comes to nothing is refused", () => {
  expect(refusal(40, 30, 5, 25)).toMatch(
    /^depth must be less than 20 in, where a line from top 40 in to hip 30 in/,
  );
});
