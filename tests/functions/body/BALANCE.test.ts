import { expect, test } from "vitest";
import { BALANCE } from "../../../functions/body/BALANCE.ts";
import { run } from "../../../functions/run.ts";

const balance = (...args: number[]) => run(BALANCE, args, { unit: "cm" }) as number;

test("a wearer taller in front and back alike needs no change of balance", () => {
  expect(balance(46, 44, 43, 41)).toBe(0);
});

test("the pattern put right by it has the wearer's balance", () => {
  const change = balance(47, 42, 44, 42.5);
  expect(44 + change - 42.5).toBeCloseTo(47 - 42, 12);
  expect(balance(47, 42, 44 + change, 42.5)).toBeCloseTo(0, 12);
});
