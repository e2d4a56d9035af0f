import fc from "fast-check";
import { expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { markSize, readTape } from "../../../functions/fractions.ts";
import { run } from "../../../functions/run.ts";
import { show } from "../../../src/engine/show.ts";
import { anyArguments, argumentsOf, setting } from "../../functions/laws.ts";

const RULES = [
  { unit: "in", mark: "1/8" },
  { unit: "in", mark: "1/16" },
  { unit: "cm", mark: "1 mm" },
] as const;

test("what a cell shows of any function's length is the nearest mark of the tape to the exact answer", () => {
  const lengths = [...catalogue.values()].filter(({ returns }) => returns === "length");
  let compared = 0;
  for (const declaration of lengths) {
    const check = (args: ReturnType<typeof argumentsOf>, rule: (typeof RULES)[number]) => {
      const answer = run(declaration, args, setting(rule.unit));
      if (typeof answer !== "number" || Math.abs(answer) > 1e5) return;
      const read = readTape(show(answer, "length", rule), rule.unit)!.length;
      const half = markSize(rule.mark, rule.unit) / 2;
      expect(Math.abs(read - answer), `${declaration.name}: ${read} for ${answer}`).toBeLessThanOrEqual(
        half + 1e-9,
      );
      compared += 1;
    };
    for (const example of declaration.examples) {
      for (const rule of RULES)
        if (rule.unit === (example.unit ?? "in")) check(argumentsOf(declaration, example), rule);
    }
    fc.assert(fc.property(anyArguments(declaration), fc.constantFrom(...RULES), check), {
      seed: 20261127,
      numRuns: 8,
    });
  }
  expect(compared).toBeGreaterThan(300);
});
