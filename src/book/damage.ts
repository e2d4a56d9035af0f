/** What is wrong in a book's file, in a sentence: where, what should stand there, what stands there. */
import { phrase } from "../../functions/phrase.ts";
import { columnLetters } from "./address.ts";

/** What the schema found. */
export interface Damage {
  readonly type: string;
  readonly expected: string | null;
  readonly received: string;
  readonly input: unknown;
  readonly requirement?: unknown;
  readonly path?: readonly { readonly key: unknown; readonly value: unknown; readonly input: unknown }[];
}

/** Why a file is damaged. `of` is what the file should hold. */
export function damageText(damage: Damage, book: unknown, of: "book" | "garment" = "book"): string {
  const keys = (damage.path ?? []).map(({ key }) => key);
  const missing = damage.received === "undefined";
  const place = where(missing ? keys.slice(0, -1) : keys, book);
  const missed = noun(keys.at(-1));
  const fault = missing ? phrase`${place} has no ${missed}` : wrong(place, damage);
  return of === "book" ? phrase`this book is damaged: ${fault}` : phrase`this garment is damaged: ${fault}`;
}

// For translators: the nouns are parts of a book's file, and stand in sentences such as "the book has no finest mark".
const NOUNS = new Map([
  ["about", phrase`description`],
  ["mark", phrase`finest mark`],
  ["decimal", phrase`decimal mark`],
  ["by", phrase`way of finding`],
  ["hidden", phrase`hidden rows`],
  ["frozen", phrase`number of columns that stay in sight`],
  ["decimals", phrase`number of decimal places`],
  ["fitting", phrase`seam whose fitting changes it follows`],
]);

/** A part of the file by its key; a key that has no name of its own is said as the file has it. */
const noun = (key: unknown): string =>
  typeof key === "number" ? phrase`number ${key + 1}` : (NOUNS.get(String(key)) ?? quotedless(key));

const quotedless = (key: unknown): string => quotedShort(String(key)).slice(1, -1);

/** One of the trials, lays or names of a book, or of what else it has. */
function oneOf(list: unknown, index: unknown): string {
  const which = typeof index === "number" ? index + 1 : quotedless(index);
  if (list === "trials") return phrase`trial ${which}`;
  if (list === "lays") return phrase`the kept lay ${which}`;
  // For translators: the value is the name of a cell
  if (list === "names") return phrase`the named cell ${which}`;
  return `${noun(list)} ${which}`;
}

/** The place in the words of the book: 'cell B3 of the page "Draft"'. */
function where(keys: readonly unknown[], book: unknown): string {
  const [list, index, part, row, column, ...rest] = keys;
  if (list === undefined) return phrase`the book`;
  if (list !== "pages" || typeof index !== "number") {
    if (index === undefined) return phrase`the book's ${noun(list)}`;
    return keys.slice(2).reduce((of: string, key) => phrase`the ${noun(key)} of ${of}`, oneOf(list, index));
  }
  const title = (book as { pages: { title?: unknown }[] }).pages[index]?.title;
  const page =
    typeof title === "string" && part !== "title"
      ? phrase`the page ${quotedShort(title)}`
      : phrase`page ${index + 1}`;
  if (part === undefined) return page;
  if (part === "rows" && typeof row === "number")
    return typeof column === "number"
      ? phrase`cell ${columnLetters(column)}${row + 1} of ${page}`
      : phrase`row ${row + 1} of ${page}`;
  if (part === "columns" && typeof row === "number") {
    const which = phrase`column ${columnLetters(row)} of ${page}`;
    return column === undefined ? which : phrase`the ${[column, ...rest].map(noun).join(" ")} of ${which}`;
  }
  return row === undefined
    ? phrase`the ${noun(part)} of ${page}`
    : phrase`the ${noun(part)} at ${keys.slice(3).map(noun).join(", ")} of ${page}`;
}

function wrong(place: string, { type, expected, input, requirement }: Damage): string {
  const given = quotedShort(input);
  const limit = String(requirement);
  switch (type) {
    case "string":
      return phrase`${place} must be a text, not ${given}`;
    case "number":
      return phrase`${place} must be a number, not ${given}`;
    case "array":
      return phrase`${place} must be a list, not ${given}`;
    case "object":
    case "record":
      return phrase`${place} must be a group of named things, not ${given}`;
    case "picklist":
    case "variant": {
      const choices = (expected ?? "").replace(/^\(|\)$/g, "").split(" | ");
      return phrase`${place} must be ${choices.reduce((one, other) => phrase`${one} or ${other}`)}, not ${given}`;
    }
    case "max_length":
      return typeof input === "string"
        ? phrase`${place} must have at most ${limit} letters, not ${input.length}`
        : phrase`${place} must have at most ${limit} entries, not ${(input as unknown[]).length}`;
    case "min_length":
      return phrase`${place} must not be empty`;
    case "min_value":
      return phrase`${place} must be at least ${limit}, not ${given}`;
    case "max_value":
      return phrase`${place} must be at most ${limit}, not ${given}`;
    case "integer":
      return phrase`${place} must be a whole number, not ${given}`;
    case "deep":
      return phrase`${place} must have at most ${limit} groups and lists within one another`;
    case "regex":
      return /\S/.test(String(input))
        ? phrase`${place} must not contain any of [ ] : * ? / \\, unlike ${given}`
        : phrase`${place} must not be blank`;
    default:
      return phrase`${place} can't be ${given}`;
  }
}

/** What was given, in short: texts in quotes without control characters, other values by their kind. */
export function quotedShort(given: unknown): string {
  if (typeof given === "string") {
    const seen = given.slice(0, 60).replace(/[\p{C}\s]+/gu, " ");
    return `"${seen.length > 40 ? `${seen.slice(0, 37)}...` : seen}"`;
  }
  if (Array.isArray(given)) return phrase`a list`;
  return typeof given === "object" && given !== null ? phrase`a group of named things` : String(given);
}
