import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Declaration } from "../../functions/define.ts";
import { type Argument, explain, isRefused } from "../../functions/run.ts";
import { closedForm } from "./closed-form.ts";
import { anyArguments, argumentsOf, evaluate, inUnit, setting, withFigures } from "./laws.ts";

const SEED = 26300;

const closed = [...catalogue.values()].flatMap((declaration) => {
  const formula = closedForm(declaration, "cm");
  return formula === null ? [] : [{ name: declaration.name, formula, declaration }];
});

const inMillionths = (arg: Argument): Argument =>
  typeof arg === "number"
    ? Number(arg.toFixed(6))
    : Array.isArray(arg)
      ? (arg.map(inMillionths) as Cell[])
      : arg;

/** The formula worked by the engine, which is not told of any sewing function here, against the function itself. */
function compare(declaration: Declaration, formula: string, args: readonly Argument[]): boolean {
  const explained = explain(declaration, args, setting("cm"));
  if (isRefused(explained.answer)) return false;
  const found = evaluate(withFigures(formula, { ...explained, steps: [] }), "cm");
  const why = `${formula} for ${JSON.stringify(args)}`;
  if (typeof explained.answer === "number") {
    expect(typeof found, why).toBe("number");
    const off = Math.abs((found as number) - explained.answer);
    expect(off, why).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(explained.answer)));
  } else expect(found, why).toBe(explained.answer);
  return true;
}

describe.each(closed)("$name = $formula", ({ declaration, formula }) => {
  test("gives the examples' answers and those of 200 random calls", () => {
    for (const example of declaration.examples) {
      const args = inUnit(declaration, argumentsOf(declaration, example), example.unit ?? "in", "cm");
      expect(compare(declaration, formula, args)).toBe(true);
    }
    let answered = 0;
    fc.assert(
      fc.property(anyArguments(declaration), (any) => {
        // The engine reads no figure such as 5e-324.
        const args = any.map(inMillionths);
        answered += compare(declaration, formula, args) ? 1 : 0;
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(answered).toBeGreaterThan(10);
  });

  test("names nothing but its arguments and functions every spreadsheet has", () => {
    const words = formula.replace(/"[^"]*"/g, "").match(/[A-Za-z_][A-Za-z0-9_.]*/g) ?? [];
    for (const word of words) {
      expect(catalogue.has(word), word).toBe(false);
      expect(word in declaration.takes || /^[A-Z0-9.]+$/.test(word), word).toBe(true);
    }
  });
});

test("most functions that answer with a figure have one; curves, loops and pieces have none", () => {
  const figures = [...catalogue.values()].filter(
    ({ returns }) => !["piece", "verdict", "text"].includes(returns),
  );
  expect(closed.length / figures.length).toBeGreaterThan(0.8);
  for (const name of ["EDGE_LENGTH", "OUTLINE", "YARDAGE", "CURVE_LENGTH"])
    expect(closedForm(catalogue.get(name)!, "cm"), name).toBeNull();
});

test("a usual figure stands for an argument that is left out, so one formula holds on both tapes", () => {
  expect(closedForm(catalogue.get("BAND_LENGTH")!)).toBe("waist + extra");
  expect(closedForm(catalogue.get("DART_LEG")!)).toBe("SQRT(length^2 + (intake / 2)^2)");
});
