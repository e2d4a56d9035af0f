import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { register } from "../../../src/engine/register.ts";

register();
test("a formula calls a sewing function as it calls any other", () => {
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
  expect(hf.getCellValue({ sheet: 0, row: 0, col: 3 })).toBe(1.4);
});
