import { expect, test } from "vitest";
import { BUY_LENGTH } from "../../../functions/cloth/BUY_LENGTH.ts";
import { TO_BUY } from "../../../functions/cloth/TO_BUY.ts";
import { besideAnswer } from "../../../functions/run.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(TO_BUY, "in");
const bought = calls(BUY_LENGTH, "in");

test("without stock it is BUY_LENGTH, and what is bought is always enough and less than a step too much", () => {
  for (let needed = 1; needed < 200; needed += 7.3) {
    expect(figure(needed)).toBeCloseTo(bought.figure(needed), 9);
    const buy = figure(needed, 20, 9);
    expect(buy + 20).toBeGreaterThanOrEqual(needed);
    if (buy > 0) expect(buy + 20 - needed).toBeLessThan(9);
  }
});

test("the shop's shortest cut is bought where less is missing, and nothing where nothing is", () => {
  expect(figure(90, 85, 4.5, 9)).toBe(9);
  expect(figure(90, 60, 4.5, 9)).toBe(31.5);
  expect(figure(90, 90, 4.5, 9)).toBe(0);
  expect(figure(0)).toBe(0);
  expect(refusal(90, -1)).toBe("in_stock must be at least 0, not -1 in");
});

test("beside the answer stands that stock and purchase are taken as one length, where there are both", () => {
  const beside = (...args: number[]) => besideAnswer(TO_BUY, args, { unit: "in" });
  expect(beside(90, 60)).toMatch(
    /^what is in stock, 60 in, is taken off as if it and this were one length; .*CLOTH_TO_BUY/,
  );
  expect([beside(90, 0), beside(90), beside(90, 100)]).toEqual(["", "", ""]);
});
