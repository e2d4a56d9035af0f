/** Every sewing function at work for a reader of another language: its answers and figures stay, its words are the reader's. */
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Declaration, Example } from "../../../functions/define.ts";
import type { Explanation } from "../../../functions/run.ts";
import { inLetters, madeUpLanguage, untranslated } from "../setup/made-up.ts";

const CYRILLIC = inLetters("абвгдежзийклмнопрстуфхцчшщ");

// Other files of tests share the modules of this one, and their constants are in English.
afterAll(() => vi.resetModules());

interface Call {
  /** The function and the number of its example. */
  readonly of: string;
  readonly explained: Explanation;
  /** What is the book's in it: names and choices of arguments, names of edges, texts that were given. */
  readonly own: ReadonlySet<string>;
}

/** The words of texts that the book gives, such as names of pieces and their edges. */
const wordsIn = (value: unknown): string[] =>
  typeof value === "string"
    ? (value.match(/\p{L}+/gu) ?? [])
    : Array.isArray(value)
      ? value.flatMap(wordsIn)
      : [];

const ownOf = ({ takes }: Declaration, example: Example, { steps, answer }: Explanation): Set<string> =>
  new Set([
    ...Object.entries(takes).flatMap(([name, { choices = [] }]) => [name, ...choices]),
    ...steps.map(({ name }) => name),
    ...Object.values(example.given).flatMap(wordsIn),
    ...(typeof answer === "string" && answer.startsWith("M") ? wordsIn(answer) : []),
  ]);

/** Every example of every function, worked by modules that were loaded for this reader. */
async function worked(language: ReturnType<typeof madeUpLanguage> | null): Promise<Call[]> {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(language);
  const { catalogue } = await import("../../../functions/catalogue.ts");
  const { explain } = await import("../../../functions/run.ts");
  const { argumentsOf, setting } = await import("../../functions/laws.ts");
  const calls = [...catalogue.values()].flatMap((declaration) =>
    declaration.examples.map((example, i) => {
      const explained = explain(
        declaration,
        argumentsOf(declaration, example),
        setting(example.unit ?? "in"),
      );
      return { of: `${declaration.name} ${i + 1}`, explained, own: ownOf(declaration, example, explained) };
    }),
  );
  speak(null);
  return calls;
}

let english: Call[];
let other: Call[];
beforeAll(async () => {
  english = await worked(null);
  other = await worked(madeUpLanguage("en-XA", CYRILLIC));
});

test("answers, the figures of all steps and their formulas are those of an English reader", () => {
  const figures = ({ of, explained: { answer, given, steps } }: Call) => ({
    of,
    answer,
    given,
    steps: steps.map(({ name, rule, formula, value }) => [name, formula ? rule : "", value]),
  });
  expect(english.length).toBeGreaterThan(300);
  expect(other.map(figures)).toEqual(english.map(figures));
});

test("the sentences of the Working are in the reader's language", () => {
  const said = (calls: readonly Call[]) =>
    calls.flatMap(({ of, explained, own }) =>
      explained.steps.filter(({ formula }) => !formula).map(({ rule }) => ({ of, rule, own })),
    );
  expect(said(other).length).toBe(said(english).length);
  const left = said(other).filter(({ rule, own }) => untranslated([rule], own).length > 0);
  expect(left.map(({ of, rule }) => `${of}: ${rule}`)).toEqual([]);
});
