/**
 * A garment to begin with: an ordinary book and the questions that fill it. Its file is a JSON
 * document in templates/garments/:
 *
 *   {
 *     "ellwandGarment": 1,
 *     "title": "Gored skirt", "about": "one sentence", "group": "Skirts",
 *     "questions": [{ "name": "waist", "ask": "Waist girth", "hint": "...", "kind": "length", "needed": true }, ...],
 *     "draws": ["gore"], "tells": ["hem", "cloth_length"], "examples": ["Measure!F3:I14"],
 *     "book": { "names": ..., "pages": ... }
 *   }
 *
 * A question fills the cell of its name; what the template types there is its example, and stays
 * where a question that is not needed is left empty. A typed text may be { "in": ..., "cm": ... },
 * one for each tape, so that one file gives round figures in inches and in centimetres.
 */

import * as v from "valibot";
import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Tape } from "../../functions/units.ts";
import { type Damage, damageText, quotedShort } from "./damage.ts";
import { findBlock } from "./names.ts";
import { readBook } from "./read.ts";
import type { Book } from "./shape.ts";

/** What an answer may be: a length, any number, a whole number, one of the choices, a date, or any text. */
export const ANSWER_KINDS = ["length", "number", "count", "choice", "date", "text"] as const;
export type AnswerKind = (typeof ANSWER_KINDS)[number];

export interface Question {
  /** Of the cell that the answer is typed in. */
  readonly name: string;
  /** What is asked for, as a label: "Waist girth". */
  readonly ask: string;
  /** How it is taken or what it changes, in a few words; "" for nothing. */
  readonly hint: string;
  readonly kind: AnswerKind;
  /** Whether it has no answer that fits everybody; the template's own is an example only. */
  readonly needed: boolean;
  /** For a choice: what may be chosen. */
  readonly choices: readonly string[];
  /** From the least to the greatest usual answer; lengths in centimetres. */
  readonly usual?: readonly [number, number];
  /** The drawing of what is meant, when it has another name than the question. */
  readonly drawing?: string;
}

export interface Garment {
  readonly title: string;
  readonly about: string;
  /** Garments of one group stand together in the list. */
  readonly group: string;
  readonly questions: readonly Question[];
  /** Names of the cells that are drawn while the questions are answered. */
  readonly draws: readonly string[];
  /** Names of the cells whose figures are shown beside the drawing. */
  readonly tells: readonly string[];
  /** Blocks whose figures no question asks for, and which are nobody's: each is marked as an example. */
  readonly examples: readonly string[];
  /** The book with every example in it, by the tape whose round figures it has. */
  readonly books: Readonly<Record<Tape, Book>>;
}

const VERSION = 1;

const text = (most: number) => v.pipe(v.string(), v.maxLength(most), v.regex(/\S/));
const typed = v.union([v.string(), v.object({ in: v.string(), cm: v.string() })]);

const garmentShape = v.object({
  title: text(80),
  about: text(400),
  group: text(40),
  questions: v.array(
    v.object({
      name: text(60),
      ask: text(80),
      hint: v.optional(v.pipe(v.string(), v.maxLength(200)), ""),
      kind: v.picklist(ANSWER_KINDS),
      needed: v.optional(v.boolean(), false),
      choices: v.optional(v.array(text(60)), []),
      usual: v.optional(v.tuple([v.number(), v.number()])),
      drawing: v.optional(text(60)),
    }),
  ),
  draws: v.optional(v.array(v.string()), []),
  tells: v.optional(v.array(v.string()), []),
  examples: v.optional(v.array(v.string()), []),
  book: v.looseObject({
    names: v.record(v.string(), v.string()),
    pages: v.array(v.looseObject({ rows: v.array(v.array(typed)) })),
  }),
});

type File = v.InferOutput<typeof garmentShape>;

export type GarmentReading = { readonly garment: Garment } | { readonly reason: string };

/** Reads a garment's file: the garment, or the reason why not in a sentence; nothing is thrown. */
export function readGarment(file: string): GarmentReading {
  let data: unknown;
  try {
    data = JSON.parse(file);
  } catch {
    return { reason: phrase`this is not a garment to begin with: the text is not JSON` };
  }
  if (typeof data !== "object" || data === null || !Object.hasOwn(data, "ellwandGarment"))
    return {
      reason: phrase`this is not a garment to begin with: it does not say "ellwandGarment" and a version`,
    };
  const version = (data as { ellwandGarment: unknown }).ellwandGarment;
  if (version !== VERSION)
    return { reason: phrase`this garment's version must be ${VERSION}, not ${quotedShort(version)}` };
  const read = v.safeParse(garmentShape, data, { abortEarly: true });
  if (!read.success)
    return {
      reason: damageText(read.issues[0] as unknown as Damage, data, "garment"),
    };
  const inches = bookFor(read.output, "in");
  const metric = bookFor(read.output, "cm");
  if ("reason" in inches) return inches;
  if ("reason" in metric) return metric;
  const fault = faultOf(read.output, inches.book);
  if (fault) return { reason: fault };
  const { title, about, group, questions, draws, tells, examples } = read.output;
  return {
    garment: {
      ...{ title, about, group, draws, tells, examples },
      questions: questions.map(({ usual, drawing, ...rest }) => ({
        ...rest,
        ...(usual && { usual }),
        ...(drawing && { drawing }),
      })),
      books: { in: inches.book, cm: metric.book },
    },
  };
}

/** The ordinary book of a garment's file, its texts those of one tape. */
function bookFor({ title, about, book }: File, tape: Tape) {
  const pages = book.pages.map((page) => ({
    ...page,
    rows: page.rows.map((row) => row.map((text) => (typeof text === "string" ? text : text[tape]))),
  }));
  return readBook(
    JSON.stringify({ ellwand: 1, title, about, unit: tape, mark: DEFAULT_MARK[tape], ...book, pages }),
  );
}

/** What the shape alone can't say: names that the book has, and choices where one is asked for. */
function faultOf({ questions, draws, tells, examples }: File, book: Book): string | null {
  const seen = new Set<string>();
  for (const { name, kind, choices } of questions) {
    if (!Object.hasOwn(book.names, name))
      return phrase`the question ${quotedShort(name)} names no cell of the book`;
    if (seen.has(name)) return phrase`the cell ${name} is asked for twice`;
    seen.add(name);
    if ((kind === "choice") !== choices.length > 1)
      return phrase`the question ${name} must have two or more choices just when its kind is "choice"`;
  }
  const nowhere = examples.find((address) => findBlock(book, address) === null);
  if (nowhere !== undefined) return phrase`the examples ${quotedShort(nowhere)} are no block of the book`;
  const lost = [...draws, ...tells].find((name) => !Object.hasOwn(book.names, name));
  return lost === undefined
    ? null
    : phrase`the cell ${quotedShort(lost)} is to be shown and is not in the book`;
}
