import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Declaration } from "../../functions/define.ts";
import { ruleOf } from "../../functions/plain-rule.ts";
import { isRefused, run } from "../../functions/run.ts";
import { unusualIn } from "../../functions/to-look-at.ts";
import { argumentsOf, setting } from "./laws.ts";

const NUMBERS = new Set(["length", "area", "count", "share", "angle", "days", "money", "figure"]);

/** Pairs of arguments of one kind, either both single figures or both ranges. */
function pairsOf({ takes }: Declaration): (readonly [string, string])[] {
  const names = Object.keys(takes).filter((name) => NUMBERS.has(takes[name]!.kind));
  return names.flatMap((a, i) =>
    names.slice(i + 1).flatMap((b) => {
      const [x, y] = [takes[a]!, takes[b]!];
      return x.kind === y.kind && x.many === y.many ? [[a, b] as const] : [];
    }),
  );
}

/** What becomes of the examples that give both arguments when the two change places. */
function swapped(declaration: Declaration, a: string, b: string): string {
  const names = Object.keys(declaration.takes);
  const [i, j] = [names.indexOf(a), names.indexOf(b)];
  const found = declaration.examples.flatMap((example) => {
    const args = argumentsOf(declaration, example);
    if (args[i] === null || args[j] === null || String(args[i]) === String(args[j])) return [];
    const other = args.with(i, args[j]!).with(j, args[i]!);
    const at = setting(example.unit ?? "in");
    const [before, answer] = [run(declaration, args, at), run(declaration, other, at)];
    // The example of a number past the last of a row answers with an empty text.
    if (before === "") return [];
    if (isRefused(answer)) return ["refused"];
    if (unusualIn(declaration, other, at).length > 0) return ["unusual"];
    if (answer === "") return ["empty"];
    if (String(answer).startsWith("check: ")) return ["a verdict"];
    return [answer === before ? "the same" : "silent"];
  });
  if (found.length === 0) return "never given together";
  return ["silent", "unusual", "refused", "a verdict", "empty", "the same"].find((one) =>
    found.includes(one),
  )!;
}

const tally = new Map<string, string[]>();

describe.each([...catalogue.values()])("$name", (declaration) => {
  const { takes, usual = [], alike = {}, examples } = declaration;

  test("what is usual is said of arguments it has, and no example breaks it", () => {
    for (const one of usual) {
      const { names, sides } = ruleOf(typeof one === "string" ? one : one.rule);
      expect(Object.keys(takes)).toEqual(expect.arrayContaining([...names]));
      if (typeof one === "string") expect(sides, `${one} needs its own sentence`).not.toBeNull();
      else for (const [, name] of one.says.matchAll(/\{(\w+)\}/g)) expect(names).toContain(name);
    }
    for (const { usual: range, from, to } of Object.values(takes)) {
      if (!range) continue;
      expect(range[0]).toBeLessThan(range[1]);
      expect(range[0]).toBeGreaterThanOrEqual(from ?? Number.NEGATIVE_INFINITY);
      expect(range[1]).toBeLessThanOrEqual(to ?? Number.POSITIVE_INFINITY);
    }
    for (const example of examples) {
      expect(
        unusualIn(declaration, argumentsOf(declaration, example), setting(example.unit ?? "in")),
      ).toEqual([]);
    }
  });

  test("two figures of one kind that change places are refused, unusual or declared alike", () => {
    const pairs = pairsOf(declaration);
    for (const pair of Object.keys(alike)) expect(pairs.map((one) => one.join(", "))).toContain(pair);
    const silent = pairs.filter(([a, b]) => {
      const outcome = swapped(declaration, a, b);
      tally.set(outcome, [...(tally.get(outcome) ?? []), `${declaration.name}: ${a}, ${b}`]);
      return outcome === "silent";
    });
    // What is missing here needs a usual relation or range; what is too much need not be declared alike.
    expect(silent.map((pair) => pair.join(", "))).toEqual(expect.arrayContaining(Object.keys(alike)));
    expect(Object.keys(alike)).toEqual(expect.arrayContaining(silent.map((pair) => pair.join(", "))));
  });
});

test("far more pairs are told apart than are declared alike", () => {
  const count = (...outcomes: string[]) =>
    outcomes.reduce((sum, outcome) => sum + (tally.get(outcome)?.length ?? 0), 0);
  const told = count("refused", "unusual", "a verdict", "empty");
  const alike = count("silent");
  expect(told + alike).toBeGreaterThan(250);
  expect(told, `${told} told apart, ${alike} alike`).toBeGreaterThan(2 * alike);
});
