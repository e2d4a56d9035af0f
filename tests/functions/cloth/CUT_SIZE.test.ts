import { expect, test } from "vitest";
import { CUT_SIZE } from "../../../functions/cloth/CUT_SIZE.ts";
import { run } from "../../../functions/run.ts";

const cut = (...args: number[]) => run(CUT_SIZE, args, { unit: "in" });

test("nine inches with an inch of turning all round are cut eleven", () => {
  // Hands, Church Needlework, 1907 (printed).
  expect(cut(9, 1)).toBe(11);
});

test("slippers for a nine-inch foot are cut ten and a half", () => {
  // Johnson, Oregon / Utah State extension L-86, 1964, TV slippers: foot and 1 1/2 in (printed).
  expect(cut(9, 1.5, 1)).toBe(10.5);
});

test("the turnings folded away again leave the finished size", () => {
  expect((cut(20, 0.625) as number) - 2 * 0.625).toBe(20);
});
