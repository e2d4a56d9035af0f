/**
 * The formula in plain OpenFormula that gives the same answer as a function: the rules of its steps
 * put into one another. So an exported book stays alive where the sewing functions are not known.
 */
import type { Cell, Declaration, Example } from "../../functions/define.ts";
import { type Argument, type Explanation, explain, isRefused, type Step } from "../../functions/run.ts";
import { convert, type Unit } from "../../functions/units.ts";

/** Longer formulas than this are not taken by common spreadsheets. */
const LONGEST = 8192;

/**
 * The formula, without "=", over the names of the arguments; null when the answer is not reached by
 * rules alone, as for curves, loops, pieces and verdicts. Lengths are in `unit`; when it is left
 * out the formula must be the same in every unit. An argument left out stands as its usual value, or
 * as an empty text where the function decides.
 */
export function closedForm(declaration: Declaration, unit?: Unit): string | null {
  if (unit === undefined) {
    const [inches, metric] = [closedForm(declaration, "in"), closedForm(declaration, "cm")];
    return inches === metric ? inches : null;
  }
  const samples = samplesOf(declaration, unit);
  const first = samples[0];
  if (!first || samples.some(({ answer }) => isRefused(answer))) return null;
  const rules = new Map<string, string | null>();
  for (const { name } of first.steps) rules.set(name, ruleOf(name, samples, rules));
  const answering = first.steps.findLast(
    ({ name }) => rules.get(name) && samples.every((sample) => equal(worked(name, sample), sample.answer)),
  );
  const formula = answering ? rules.get(answering.name)! : null;
  return formula !== null && formula.length <= LONGEST ? formula : null;
}

/** The examples in the book's unit, each also with every argument left out that may be left to the function. */
function samplesOf(declaration: Declaration, unit: Unit): Explanation[] {
  const names = Object.keys(declaration.takes);
  return declaration.examples.flatMap((example) => {
    const given = inUnit(declaration, example, unit);
    const free = names.filter(
      (name) => declaration.takes[name]!.otherwise === null && (given[name] ?? null) !== null,
    );
    return [given, ...free.map((name) => ({ ...given, [name]: null }))].map((one) =>
      explain(
        declaration,
        names.map((name) => one[name] ?? null),
        { unit },
      ),
    );
  });
}

function inUnit(declaration: Declaration, example: Example, unit: Unit): Record<string, Argument> {
  const scale = convert(1, example.unit ?? "in", unit);
  const power: Partial<Record<string, number>> = { length: 1, area: 2 };
  return Object.fromEntries(
    Object.entries(example.given).map(([name, value]) => {
      const factor = scale ** (power[declaration.takes[name]!.kind] ?? 0);
      const told = (one: Cell): Cell => (typeof one === "number" ? one * factor : one);
      return [name, Array.isArray(value) ? value.map(told) : told(value as Cell)];
    }),
  );
}

const stepOf = (name: string, { steps }: Explanation): Step | undefined =>
  steps.find((step) => step.name === name);
const worked = (name: string, sample: Explanation) => stepOf(name, sample)?.value;

/** Equal up to the last figures. */
function equal(a: unknown, b: unknown): boolean {
  if (typeof a !== "number" || typeof b !== "number") return a === b;
  return Math.abs(a - b) <= 1e-9 * Math.max(1e-9, Math.abs(b));
}

/** A step's rule with the earlier steps in it replaced by theirs; null when it has none that holds in all samples. */
function ruleOf(
  name: string,
  samples: readonly Explanation[],
  earlier: ReadonlyMap<string, string | null>,
): string | null {
  const found = samples.map((sample) => stepOf(name, sample));
  if (found.some((step) => step === undefined)) return null;
  const steps = found as Step[];
  const rule = steps[0]!.rule;
  return steps.every((step) => step.formula && step.rule === rule) ? substituted(rule, earlier) : null;
}

const NAME = /"[^"]*"|[A-Za-z_][A-Za-z0-9_.]*(?!\s*\()\b/g;

/** Names of earlier steps replaced by their formulas, in brackets where they need them. */
function substituted(rule: string, earlier: ReadonlyMap<string, string | null>): string | null {
  let whole = true;
  const formula = rule.replace(NAME, (word) => {
    const known = earlier.get(word);
    if (known === undefined) return word;
    if (known === null) whole = false;
    return known === null || isOne(known) ? String(known) : `(${known})`;
  });
  return whole ? formula : null;
}

/** Is a formula one name, one figure or one call, so that it needs no brackets? */
function isOne(formula: string): boolean {
  if (/^[A-Za-z0-9_.]+$/.test(formula)) return true;
  if (!/^[A-Z][A-Z0-9.]*\(/.test(formula)) return false;
  let depth = 0;
  for (const [i, sign] of [...formula].entries()) {
    if (sign === "(") depth += 1;
    if (sign === ")") depth -= 1;
    if (depth === 0 && sign === ")") return i === formula.length - 1;
  }
  return false;
}
