import { HyperFormula } from "hyperformula";
import { expect, it } from "vitest";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

const VALUES = [
  "TRUE()",
  "FALSE()",
  "0",
  "2",
  '"true"',
  '"FALSE"',
  '""',
  '"abc"',
  "B50",
  "1/0",
  "NA()",
  "-3",
];

const FORMULAS = VALUES.flatMap((a) =>
  VALUES.flatMap((b) => [
    `=IF(${a};${b};9)`,
    `=IF(${a};9)`,
    `=IF(${a};;${b})`,
    `=IFERROR(${a};${b})`,
    `=IFNA(${a};${b})`,
    `=IFS(${a};1;${b};2)`,
    `=SWITCH(${a};${b};1;2;3;4)`,
    `=CHOOSE(${a};${b};9)`,
  ]),
);

/** Formulas in which a branch that the answer does not need has an error: the library alone gives the error. */
const isLazier = (formula: string) => /^=(?:IFS|SWITCH)/.test(formula) && /1\/0|NA\(|"abc"/.test(formula);

it("functions that choose a branch answer as the library alone does", () => {
  const plain = HyperFormula.buildFromArray([[null]], {
    licenseKey: "gpl-v3",
    functionArgSeparator: ";",
  });
  const engine = new Engine(bookOf({ a: "1" }), layDesk);
  let compared = 0;
  for (const formula of FORMULAS.filter((one) => !isLazier(one))) {
    const value = plain.calculateFormula(formula, 0);
    const answer = engine.evaluate(formula);
    if (typeof value === "object" && value !== null) expect(answer, formula).toHaveProperty("problem");
    else expect(answer, formula).toMatchObject({ value });
    compared += 1;
  }
  expect(compared).toBeGreaterThan(800);
  expect(engine.evaluate("=IFS(TRUE();1;1/0;2)")).toMatchObject({ value: 1 });
  expect(engine.evaluate("=SWITCH(2;2;1;1/0;3)")).toMatchObject({ value: 1 });
  engine.destroy();
  plain.destroy();
});
