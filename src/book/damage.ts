/** What is wrong in a book's file, in a sentence: where, what should stand there, what stands there. */
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

export function damageText(damage: Damage, book: unknown): string {
  const keys = (damage.path ?? []).map(({ key }) => key);
  const missing = damage.received === "undefined";
  return `this book is damaged: ${where(missing ? keys.slice(0, -1) : keys, book)} ${
    missing ? `has no ${noun(keys.at(-1))}` : wrong(damage)
  }`;
}

const NOUNS = new Map([
  ["about", "description"],
  ["mark", "finest mark"],
  ["decimal", "decimal mark"],
  ["by", "way of finding"],
  ["hidden", "hidden rows"],
  ["frozen", "number of columns that stay in sight"],
  ["decimals", "number of decimal places"],
  ["fitting", "seam whose fitting changes it follows"],
]);
const ONE_OF = new Map([
  ["trials", "trial"],
  ["lays", "the kept lay"],
  ["names", "the named cell"],
]);

const noun = (key: unknown): string =>
  typeof key === "number" ? `number ${key + 1}` : (NOUNS.get(String(key)) ?? quotedless(key));

const quotedless = (key: unknown): string => quotedShort(String(key)).slice(1, -1);

/** The place in the words of the book: 'cell B3 of the page "Draft"'. */
function where(keys: readonly unknown[], book: unknown): string {
  const [list, index, part, row, column, ...rest] = keys;
  if (list === undefined) return "the book";
  if (list !== "pages" || typeof index !== "number") {
    if (index === undefined) return `the book's ${noun(list)}`;
    const one = `${ONE_OF.get(String(list)) ?? noun(list)} ${typeof index === "number" ? index + 1 : quotedless(index)}`;
    return [
      ...keys
        .slice(2)
        .toReversed()
        .map((key) => `the ${noun(key)} of`),
      one,
    ].join(" ");
  }
  const title = (book as { pages: { title?: unknown }[] }).pages[index]?.title;
  const page =
    typeof title === "string" && part !== "title" ? `the page ${quotedShort(title)}` : `page ${index + 1}`;
  if (part === undefined) return page;
  if (part === "rows" && typeof row === "number")
    return typeof column === "number"
      ? `cell ${columnLetters(column)}${row + 1} of ${page}`
      : `row ${row + 1} of ${page}`;
  if (part === "columns" && typeof row === "number") {
    const which = `column ${columnLetters(row)} of ${page}`;
    return column === undefined ? which : `the ${[column, ...rest].map(noun).join(" ")} of ${which}`;
  }
  const inner = row === undefined ? "" : ` at ${keys.slice(3).map(noun).join(", ")}`;
  return `the ${noun(part)}${inner} of ${page}`;
}

function wrong({ type, expected, input, requirement }: Damage): string {
  const given = quotedShort(input);
  switch (type) {
    case "string":
      return `must be a text, not ${given}`;
    case "number":
      return `must be a number, not ${given}`;
    case "array":
      return `must be a list, not ${given}`;
    case "object":
    case "record":
      return `must be a group of named things, not ${given}`;
    case "picklist":
    case "variant":
      return `must be ${(expected ?? "").replace(/^\(|\)$/g, "").replaceAll(" | ", " or ")}, not ${given}`;
    case "max_length":
      return typeof input === "string"
        ? `must have at most ${requirement} letters, not ${input.length}`
        : `must have at most ${requirement} entries, not ${(input as unknown[]).length}`;
    case "min_length":
      return "must not be empty";
    case "min_value":
      return `must be at least ${requirement}, not ${given}`;
    case "max_value":
      return `must be at most ${requirement}, not ${given}`;
    case "integer":
      return `must be a whole number, not ${given}`;
    case "deep":
      return `must have at most ${requirement} groups and lists within one another`;
    case "regex":
      return /\S/.test(String(input))
        ? `must not contain any of [ ] : * ? / \\, unlike ${given}`
        : "must not be blank";
    default:
      return `can't be ${given}`;
  }
}

/** What was given, in short: texts in quotes without control characters, other values by their kind. */
export function quotedShort(given: unknown): string {
  if (typeof given === "string") {
    const seen = given.slice(0, 60).replace(/[\p{C}\s]+/gu, " ");
    return `"${seen.length > 40 ? `${seen.slice(0, 37)}...` : seen}"`;
  }
  if (Array.isArray(given)) return "a list";
  return typeof given === "object" && given !== null ? "a group of named things" : String(given);
}
