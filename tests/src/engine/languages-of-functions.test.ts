/** Every sewing function at work for a reader of another language: its answers and figures stay, its words are the reader's. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Declaration, EdgeStrip, Example } from "../../../functions/define.ts";
import type { Shape } from "../../../functions/drawing/shapes.ts";
import type { Explanation } from "../../../functions/run.ts";
import type { Body } from "../../../functions/worn/body.ts";
import type { Worn } from "../../../functions/worn/worn-drawing.ts";
import { inLetters, madeUpLanguage, namesIn, untranslated } from "../setup/made-up.ts";

const CYRILLIC = inLetters("абвгдежзийклмнопрстуфхцчшщ");

// Other files of tests share the modules of this one, and their constants are in English.
afterAll(() => vi.resetModules());

interface Call {
  /** The function and the number of its example. */
  readonly of: string;
  readonly explained: Explanation;
  readonly strip: EdgeStrip | null;
  readonly worn: Worn | null;
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

/** A wearer of whom some is known, and of the rest why not. */
const BODY: Body = {
  known: {
    stature: { length: 66, from: "B2" },
    hip: { length: 42, from: "B3" },
    waist_height: { length: 41, from: "B4" },
  },
  unsure: {},
};

/** Every example of every function, worked by modules that were loaded for this reader. */
async function worked(language: ReturnType<typeof madeUpLanguage> | null): Promise<Call[]> {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(language);
  const { catalogue } = await import("../../../functions/catalogue.ts");
  const { explain, stripOf } = await import("../../../functions/run.ts");
  const { worn } = await import("../../../functions/as-worn.ts");
  const { argumentsOf, setting } = await import("../../functions/laws.ts");
  const calls = [...catalogue.values()].flatMap((declaration) =>
    declaration.examples.map((example, i) => {
      const call = [declaration, argumentsOf(declaration, example), setting(example.unit ?? "in")] as const;
      const explained = explain(...call);
      return {
        of: `${declaration.name} ${i + 1}`,
        explained,
        strip: stripOf(...call),
        worn: worn(...call, BODY),
        own: ownOf(declaration, example, explained),
      };
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

const labelOf = (shape: Shape): string =>
  shape.kind === "note" ? shape.text : shape.kind === "layer" ? "" : (shape.label ?? "");

/** A shape without its words. */
const bare = (shape: Shape): unknown =>
  shape.kind === "note" ? { ...shape, text: "" } : "label" in shape ? { ...shape, label: "" } : shape;

const wordsOf = ({ explained: { shapes }, strip, worn }: Call): string[] => [
  ...shapes.map(labelOf),
  ...(strip?.marks.map(({ says }) => says) ?? []),
  ...(worn ? [worn.says, ...worn.measured, ...worn.assumed, ...worn.together.map(labelOf)] : []),
];

test("drawings are the same but for their words, and these are in the reader's language", () => {
  const drawn = ({ of, explained, worn }: Call) => ({
    of,
    shapes: [...explained.shapes, ...(worn?.together ?? [])].map(bare),
  });
  expect(other.map(drawn)).toEqual(english.map(drawn));
  const count = (calls: readonly Call[]) => calls.map((call) => wordsOf(call).filter(Boolean).length);
  expect(count(other)).toEqual(count(english));
  const left = other.flatMap((call) =>
    untranslated(wordsOf(call), call.own).map((words) => `${call.of}: ${words}`),
  );
  expect(left).toEqual([]);
});

/** The sheets of a ready book that are written as files, and its drawings in words. */
async function sheets(language: ReturnType<typeof madeUpLanguage> | null) {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(language);
  const { Engine } = await import("../../../src/engine/engine.ts");
  const { layDesk } = await import("../../../src/lay/desk.ts");
  const { readBook } = await import("../../../src/book/read.ts");
  const { piecesOf } = await import("../../../src/engine/pieces.ts");
  const { trueScaleSheet } = await import("../../../src/engine/true-scale-sheet.ts");
  const { wornSheet } = await import("../../../src/engine/worn-sheet.ts");
  const { canWear, wornAt } = await import("../../../src/engine/drawn.ts");
  const { drawingInWords } = await import("../../../src/engine/picture-words.ts");
  const text = readFileSync(new URL("../../../templates/peplum-bodice.json", import.meta.url), "utf8");
  const read = readBook(text);
  if (!("book" in read)) throw new Error(read.reason);
  const { book } = read;
  const engine = new Engine(book, layDesk);
  const { found } = piecesOf(engine);
  const files = found.map((one) => trueScaleSheet(book, one).svg);
  const worn = found.flatMap(({ place }) =>
    canWear(engine, place) === "yes" ? [wornSheet(book, "skirt", wornAt(engine, place)!.worn)] : [],
  );
  const words = found.map(({ shapes }) => drawingInWords(shapes, book));
  const own = new Set([...wordsIn(text), ...found.flatMap(({ piece }) => piece.names.flatMap(wordsIn))]);
  engine.destroy();
  speak(null);
  return { files, worn, words, own };
}

test("sheets that are written as files have the reader's words, and the piece that is read back from them", async () => {
  const english = await sheets(null);
  const other = await sheets(madeUpLanguage("en-XA", CYRILLIC));
  const piece = (svg: string) => /<g id="piece"[\s\S]*?<\/g>/.exec(svg)![0];
  expect(english.files.length).toBeGreaterThan(0);
  expect(english.worn.length).toBeGreaterThan(0);
  expect(other.files.map(piece)).toEqual(english.files.map(piece));
  const texts = [...other.files, ...other.worn].flatMap((svg) =>
    [...svg.matchAll(/<(text|title|desc)[^>]*>([^<]*)</g)].map(([, , text]) =>
      text!.replaceAll("&quot;", '"'),
    ),
  );
  expect(untranslated([...texts, ...other.words], other.own)).toEqual([]);
});

/** Every text in the named fields of a plain value, at any depth; what a column of a list takes is shown nowhere. */
const fieldsIn = (value: unknown, fields: readonly string[]): string[] =>
  typeof value === "object" && value
    ? Object.entries(value).flatMap(([field, one]) =>
        field === "take"
          ? []
          : typeof one === "string"
            ? fields.includes(field)
              ? [one]
              : []
            : fieldsIn(one, fields),
      )
    : [];

const SAID = ["summary", "source", "words", "cautions", "about", "because"];

/** The texts of the help of every function, and the lines of it that are no formula. */
async function helped(language: ReturnType<typeof madeUpLanguage> | null) {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(language);
  const { catalogue } = await import("../../../functions/catalogue.ts");
  const { helpText } = await import("../../../functions/help.ts");
  const { inLanguage } = await import("../../../functions/said-of-function.ts");
  const all = [...catalogue.values()].map(inLanguage);
  const isFormula = (line: string) => /^\s*=?[A-Z_]+\(/.test(line);
  const texts = all.flatMap((one) => fieldsIn(one, SAID));
  const helps = all.map((one) => ({
    lines: helpText(one, "cm")
      .split("\n")
      .filter((line) => !isFormula(line)),
    own: new Set([...namesIn(one), "TRUE", "FALSE"].filter((text) => /[a-z]{2}/i.test(text))),
  }));
  speak(null);
  return { texts, helps };
}

test("the help of every function, and what its arguments may be, is in the reader's language", async () => {
  const english = await helped(null);
  const other = await helped(madeUpLanguage("en-XA", CYRILLIC));
  expect(english.texts.length).toBeGreaterThan(1500);
  expect(other.texts.length).toBe(english.texts.length);
  expect(other.texts.filter((text, i) => text === english.texts[i] && /[a-z]{2}/.test(text))).toEqual([]);
  expect(other.helps.flatMap(({ lines, own }) => untranslated(lines, own))).toEqual([]);
});

test("in a language from right to left a unit stays behind its figure in the help, and choices keep their order", async () => {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(madeUpLanguage("ar-XB", inLetters("אבגדהוזחטיכלמנסעפצקרשתךםןף")));
  const { allowed } = await import("../../../functions/help.ts");
  const length = allowed({ kind: "length", about: "", from: 1, to: 200 }, "cm");
  const choice = allowed({ kind: "text", about: "", choices: ["hem", "top"] }, "cm");
  speak(null);
  expect(length).toContain("\u2068200 cm\u2069");
  expect(choice).toContain("\u2068hem / top\u2069");
});
