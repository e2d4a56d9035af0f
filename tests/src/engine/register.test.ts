import { HyperFormula } from "hyperformula";
import { afterAll, expect, test } from "vitest";
import { register } from "../../../src/engine/register.ts";

register();
const hf = HyperFormula.buildFromArray(
  [
    [
      16.5,
      23.5,
      5,
      "=SPREAD_PER_GAP(A1;B1;C1)",
      "=SPREAD_PER_GAP(A1;E9;C1)",
      "=D1+E1",
      "=spread_per_gap(A1;B1;2.5)",
    ],
  ],
  { licenseKey: "gpl-v3", functionArgSeparator: ";", context: { unit: "in" } },
);
afterAll(() => hf.destroy());

const at = (col: number) => hf.getCellValue({ sheet: 0, row: 0, col });

test("a formula calls a sewing function as it calls any other", () => {
  expect(at(3)).toBe(1.4);
});

test("an argument that is a blank cell is refused by name, and what rests on the cell gets the same error", () => {
  expect(at(4)).toMatchObject({ type: "VALUE", message: "hem is empty: a length is needed there" });
  expect(at(5)).toEqual(at(4));
});

test("a name in small letters is the same function, and its limits hold", () => {
  expect(at(6)).toMatchObject({ type: "VALUE", message: expect.stringMatching(/whole number, not 2\.5/) });
});
