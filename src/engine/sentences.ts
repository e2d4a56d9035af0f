/** The engine's own errors in plain sentences. */
import type { DetailedCellError } from "hyperformula";
import { catalogue } from "../../functions/catalogue.ts";
import { nameInBook } from "../book/address.ts";
import { tokens } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";

/** Letters to change, put in, take out or swap with their neighbour to get from one word to the other. */
function apart(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? before[j - 2]! + 1 : Number.POSITIVE_INFINITY;
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, change, swap));
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}

/** The word of the list nearest to what was typed, when it is near enough to be meant. */
export function nearest(word: string, list: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const one of list) {
    const distance = apart(word.toLowerCase(), one.toLowerCase());
    if (distance < least) [best, least] = [one, distance];
  }
  return best;
}

/** The first name or function of a formula that nobody knows, in a sentence. */
export function unknownWord(formula: string, book: Book, known: (name: string) => boolean): string | null {
  for (const { kind, text } of tokens(formula)) {
    if (kind === "name" && !/^(true|false)$/i.test(text) && nameInBook(book, text) === undefined) {
      const near = nearest(text, Object.keys(book.names));
      return `${text} is no named cell of this book${near ? `; is ${near} meant?` : "; name a cell so, or check the spelling"}`;
    }
    if (kind === "function" && !known(text.toUpperCase())) {
      const near = nearest(text, catalogue.keys());
      return `${text.toUpperCase()} is no function${near ? `; is ${near} meant?` : "; look the name up in the list of functions"}`;
    }
  }
  return null;
}

/** What is wrong in a cell, for an error of the engine. */
export function sentence(
  error: DetailedCellError,
  formula: string,
  book: Book,
  known: (name: string) => boolean,
): string {
  switch (error.type) {
    case "CYCLE":
      return "this cell rests on itself: follow its formula round and break the circle";
    case "NAME":
      return unknownWord(formula, book, known) ?? "a name in this formula is not known";
    case "DIV_BY_ZERO":
      return "this divides by zero or by a blank cell; give the divisor a figure";
    case "REF":
      return "this points at a cell that was taken out; point it at another";
    case "ERROR":
      return (
        unknownWord(formula, book, known) ??
        "this formula can't be read; look at its brackets, quotes and the ; between arguments"
      );
    case "NA":
      return "nothing was found to match";
    case "VALUE":
      return error.message && !/coerced|wrong type|value/i.test(error.message)
        ? lower(error.message)
        : "a text stands where this formula needs a number";
    default:
      return error.message ? lower(error.message) : `this formula has no answer (${error.value})`;
  }
}

/** The engine begins some of its own messages with a capital; ours never do, except for a name. */
const lower = (message: string): string =>
  /^[A-Z][a-z]/.test(message) ? message[0]!.toLowerCase() + message.slice(1).replace(/\.$/, "") : message;
