import { expect, test } from "vitest";
import { LET_OUT_ROOM } from "../../../functions/fitting/LET_OUT_ROOM.ts";
import { TAKE_IN_EACH } from "../../../functions/fitting/TAKE_IN_EACH.ts";
import { run } from "../../../functions/run.ts";

const room = (allowances: (number | null)[], ...rest: number[]) =>
  run(LET_OUT_ROOM, [allowances, ...rest], { unit: "in" }) as number;

test("even seams let out to the last leave at each edge just what must stay", () => {
  const all = room([0.875, 0.875, 0.875, 0.875], 0.25);
  const each = run(TAKE_IN_EACH, [all, 4], { unit: "in" }) as number;
  expect(0.875 - each).toBeCloseTo(0.25, 12);
});

test("a narrow seam gives nothing and takes nothing from the others", () => {
  expect(room([1, 0.125], 0.5)).toBe(room([1, 0.5], 0.5));
  expect(room([1, null], 0.5)).toBe(1);
  expect(room([0.25], 0.5)).toBe(0);
});
