/** The one door for books: text → book, or the reason why not in a sentence. */
import * as v from "valibot";
import { findPlace, nameFault } from "./address.ts";
import { type Book, COLUMN_KINDS, MOST_COLUMNS, MOST_PAGES, MOST_ROWS, STAGES } from "./shape.ts";
import { upgrade } from "./upgrades.ts";
import { VERSION } from "./write.ts";

/** The longest text that is taken for a book at all, in characters. */
const MOST_TEXT = 30_000_000;
/** The longest text of one cell. A drawn outline may be long; nothing else is. */
const MOST_TYPED = 100_000;

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));

const column = v.object({
  heading: text(200),
  kind: v.picklist(COLUMN_KINDS),
  width: v.pipe(v.number(), v.minValue(20), v.maxValue(2000)),
});

const page = v.object({
  title: v.pipe(text(80), v.regex(/\S/), v.regex(/^[^[\]:*?/\\]+$/)),
  stage: v.picklist(STAGES),
  columns: v.pipe(v.array(column), v.minLength(1), v.maxLength(MOST_COLUMNS)),
  rows: v.pipe(v.array(v.pipe(v.array(text(MOST_TYPED)), v.maxLength(MOST_COLUMNS))), v.maxLength(MOST_ROWS)),
  notes: v.optional(v.record(v.string(), text(5000)), {}),
});

const placement = v.object({ piece: count, copy: count, cloth: count, turn: finite, x: finite, y: finite });
const lay = v.object({ placements: v.array(placement), length: finite, density: finite });

const bookShape = v.object({
  title: v.pipe(text(200), v.regex(/\S/)),
  about: v.optional(text(20_000), ""),
  unit: v.picklist(["in", "cm"]),
  mark: v.picklist(["1/2", "1/4", "1/8", "1/16", "1/32", "1 cm", "5 mm", "1 mm"]),
  names: v.optional(v.record(v.string(), v.string()), {}),
  pages: v.pipe(v.array(page), v.minLength(1), v.maxLength(MOST_PAGES)),
  trials: v.optional(
    v.array(v.object({ title: text(200), cells: v.record(v.string(), text(MOST_TYPED)) })),
    [],
  ),
  lays: v.optional(v.record(v.string(), lay), {}),
});

export type Reading = { readonly book: Book } | { readonly reason: string };

/** Reads a book's file. Whatever the text, the answer is a book or a sentence; nothing is thrown. */
export function readBook(file: string): Reading {
  if (file.length > MOST_TEXT) {
    return {
      reason: `this file is too large for a book: ${Math.round(file.length / 1e6)} million characters, the most is ${MOST_TEXT / 1e6} million`,
    };
  }
  if (file.trim() === "") return { reason: "this file is empty; choose a book saved by Ellwand" };
  let data: unknown;
  try {
    data = JSON.parse(file);
  } catch {
    const cut = file.trimStart().startsWith("{") && !file.trimEnd().endsWith("}");
    return {
      reason: cut
        ? `this book is cut off: the file stops at "${file.trimEnd().slice(-30)}"; look for a whole copy`
        : `this is not a book: the text is not JSON, it begins with "${file.trimStart().slice(0, 30)}"`,
    };
  }
  if (typeof data !== "object" || data === null || !("ellwand" in data)) {
    return { reason: 'this is not a book of Ellwand: it does not say "ellwand" and a version' };
  }
  const version = data.ellwand;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return { reason: `this book's version must be a whole number from 1, not ${JSON.stringify(version)}` };
  }
  if (version > VERSION) {
    return {
      reason: `this book was saved by a newer Ellwand (version ${version}, this one reads up to ${VERSION}); bring Ellwand up to date and open it again`,
    };
  }
  const read = v.safeParse(bookShape, upgrade(data, version));
  if (!read.success) return { reason: told(read.issues[0]) };
  const fault = inconsistency(read.output as Book);
  return fault ? { reason: fault } : { book: read.output as Book };
}

function told(issue: v.BaseIssue<unknown>): string {
  const where = v.getDotPath(issue) ?? "the book";
  const given = JSON.stringify(issue.input) ?? "nothing";
  const wanted = issue.expected ? `must be ${issue.expected}` : "is out of bounds";
  return `this book is damaged at ${where}: it ${wanted}, not ${given.length > 40 ? `${given.slice(0, 37)}...` : given}`;
}

/** What the shape alone can't say: titles and names used once, names pointing at pages there are. */
function inconsistency(book: Book): string | null {
  const titles = new Set<string>();
  for (const { title } of book.pages) {
    if (titles.has(title.toLowerCase())) return `this book has two pages called "${title}"`;
    titles.add(title.toLowerCase());
  }
  const names = new Set<string>();
  for (const [name, address] of Object.entries(book.names)) {
    const fault = nameFault(name);
    if (fault) return `this book has a cell name that can't be used: ${fault}`;
    if (names.has(name.toLowerCase())) return `this book has two cells named ${name}`;
    names.add(name.toLowerCase());
    if (!findPlace(book, address))
      return `the named cell ${name} points at "${address}", which is not in this book`;
  }
  return null;
}
