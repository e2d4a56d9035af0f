import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Declaration, Take } from "../../functions/define.ts";
import { limitsOf } from "../../functions/limits.ts";
import { type Argument, isRefused, run } from "../../functions/run.ts";
import { convert } from "../../functions/units.ts";
import { argumentsOf, setting } from "./laws.ts";

const NUMBERS = new Set(["length", "area", "count", "share", "angle", "days", "money", "figure"]);
const BROKEN_PIECES = {
  "no path data": "waistband",
  "an open outline": "M 0 0 L 10 0 L 10 10",
  "an outline that crosses itself": "M 0 0 L 10 10 L 10 0 L 0 12 Z",
  "an outline of no area": "M 0 0 L 10 0 Z",
  "a number that is none": "M 0 0 L NaN 4 L 4 4 Z",
  "ten thousand letters": "M".repeat(10_000),
};

/** What may be wrong in one cell given for this argument, each with a name for the message of a failed test. */
function wrong(take: Take): Record<string, Cell> {
  if (take.kind === "piece") return { ...BROKEN_PIECES, "a figure": 12, "TRUE for a piece": true };
  if (take.kind === "flag") return { "a word": "maybe", "the figure 2": 2 };
  if (take.kind === "edge")
    return { "no such name": "elbow", "a fraction": 1.5, "no edge": 0, "a number too many": 900, TRUE: true };
  if (take.choices) {
    const words = { "no such word": "flibbertigibbet", "a figure": 12 };
    return take.blanks ? words : { ...words, "an empty text": "" };
  }
  if (!NUMBERS.has(take.kind)) return {};
  const scale =
    take.kind === "length" ? convert(1, "cm", "in") : take.kind === "area" ? convert(1, "cm", "in") ** 2 : 1;
  const values: Record<string, Cell> = {
    "a word": "wide",
    "the text NaN": "NaN",
    "a figure as text": "1e3x",
    TRUE: true,
    "no number": Number.NaN,
    "without end": Number.POSITIVE_INFINITY,
  };
  if (take.kind === "count") values["two and a half"] = 2.5;
  const { least, most } = limitsOf(take, "in");
  if (least !== undefined) values["below the least"] = least - (take.kind === "count" ? 1 : 0.01 * scale);
  if (most !== undefined) values["above the most"] = most + (take.kind === "count" ? 1 : 0.01 * scale);
  if (take.to !== undefined) values["a huge figure"] = 1e15;
  if (take.from !== undefined && take.from >= 0) values["below nothing"] = -3;
  return values;
}

/** A sentence that names the argument and says what is wrong, with nothing of the machine in it. */
function isPlain(refusal: string, argument: string): void {
  expect(refusal).toMatch(new RegExp(`\\b${argument}\\b`));
  expect(refusal).toMatch(/ must be | is empty| is missing| is not a valid piece/);
  expect(refusal).not.toMatch(/failed on these|undefined|\[object|Infinity of|function|\bnull\b/);
  expect(refusal.length).toBeLessThan(300);
}

function refuse(declaration: Declaration, args: readonly Argument[], argument: string, what: string): void {
  const answer = run(declaration, args, setting("in"));
  if (!isRefused(answer))
    throw new Error(`${what} for ${argument} was let pass: ${String(answer).slice(0, 60)}`);
  isPlain(answer.refusal, argument);
}

describe.each([...catalogue.values()])("$name", (declaration) => {
  const names = Object.keys(declaration.takes);
  const example =
    declaration.examples.find(({ unit }) => (unit ?? "in") === "in") ?? declaration.examples[0]!;
  const good = argumentsOf(declaration, example);
  const instead = (name: string, value: Argument) => good.map((arg, i) => (names[i] === name ? value : arg));

  test.each(names)("what is wrong in %s is said in a sentence that names it", (name) => {
    const take = declaration.takes[name]!;
    for (const [what, value] of Object.entries(wrong(take))) {
      refuse(declaration, instead(name, take.many ? [value] : value), name, what);
      if (!take.many) continue;
      const list = good[names.indexOf(name)];
      const longer = Array.isArray(list) ? [...list, value] : [value, value];
      refuse(declaration, instead(name, longer), name, `${what} at the end of a range`);
    }
    if (!take.many) refuse(declaration, instead(name, [4, 5, 6]), name, "a range where one cell is needed");
    // A text may be empty where no word of a list is needed.
    const mayBeBlank = take.otherwise !== undefined || take.blanks || take.kind === "text";
    if (!take.many && !mayBeBlank) refuse(declaration, instead(name, null), name, "a blank cell");
    if (take.many && !take.blanks && take.kind !== "text")
      refuse(declaration, instead(name, [null]), name, "a blank cell");
  });

  test.each(names)(
    "what is odd in %s, but not wrong by itself, is answered or refused in plain words",
    (name) => {
      const take = declaration.takes[name]!;
      const scale =
        take.kind === "length"
          ? convert(1, "cm", "in")
          : take.kind === "area"
            ? convert(1, "cm", "in") ** 2
            : 1;
      const limits = [take.from, take.to].flatMap((limit) => (limit === undefined ? [] : [limit * scale]));
      limits.push(...Object.values(limitsOf(take, "in")).filter((limit) => limit !== undefined));
      const texts = ["@", "1-1", "99999", "x".repeat(5000), "<script>", "=A1", "½ ½", " "];
      const odd: Cell[] = take.kind === "text" && !take.choices ? texts : limits;
      for (const value of odd) {
        const answer = run(declaration, instead(name, take.many ? [value, value] : value), setting("in"));
        if (isRefused(answer))
          expect(answer.refusal, String(value)).not.toMatch(/failed on these|undefined|NaN|\[object/);
        else if (typeof answer === "number") expect(answer).toSatisfy(Number.isFinite);
        else expect(answer).not.toMatch(/NaN|undefined|Infinity/);
      }
    },
  );

  test("too few and too many arguments are refused", () => {
    const needed = names.filter((name) => declaration.takes[name]!.otherwise === undefined);
    if (needed.length > 0) refuse(declaration, [], needed[0]!, "nothing");
    const answer = run(declaration, [...good, 1], setting("in"));
    expect(answer).toMatchObject({
      refusal: expect.stringMatching(/ takes at most \d+ arguments?, not \d+/),
    });
  });
});
