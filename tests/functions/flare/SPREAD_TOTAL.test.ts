import { expect, test } from "vitest";
import { SPREAD_TOTAL } from "../../../functions/flare/SPREAD_TOTAL.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(SPREAD_TOTAL, "cm");

test("six gaps of five centimetres are thirty", () => {
  // SP-01 turned round.
  expect(figure(5, 6)).toBe(30);
});

test("edges that take a full gap add one gap more than edges that take half", () => {
  for (const sections of [1, 2, 5, 12]) {
    expect(figure(3, sections, 1) - figure(3, sections, 0.5)).toBeCloseTo(3, 12);
    expect(step("with_full_edges", 3, sections)).toBeCloseTo(figure(3, sections, 1), 12);
  }
});

test("one section whose edges take nothing has no gap to add up", () => {
  expect(refusal(3, 1, 0)).toBe("sections must be at least 2 when edge_share is 0, not 1");
});
