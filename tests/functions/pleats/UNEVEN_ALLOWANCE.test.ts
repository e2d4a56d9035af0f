import { expect, test } from "vitest";
import { PLEAT_ALLOWANCE } from "../../../functions/pleats/PLEAT_ALLOWANCE.ts";
import { UNEVEN_ALLOWANCE } from "../../../functions/pleats/UNEVEN_ALLOWANCE.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(UNEVEN_ALLOWANCE, "in");

test("pleats that are all as deep take what even pleats take", () => {
  for (const style of ["knife", "box", "inverted"])
    expect(figure([1.5, 1.5, 1.5, 1.5], style)).toBe(calls(PLEAT_ALLOWANCE, "in").figure(4, 1.5, style));
});

test("graduated pleats of 1, 1 1/2 and 2 in hide nine inches, blanks none", () => {
  expect(figure([1, null, 1.5, 2])).toBe(9);
  expect(refusal([null, null])).toBe("depths is empty: give the depth of at least one pleat");
});
