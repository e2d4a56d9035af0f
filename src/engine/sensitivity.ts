/** Which tape measurements a result hangs on most: measure those twice. */
import { BOOK_UNITS } from "../../functions/units.ts";
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { type Dial, dialAt, isProblem } from "./dial.ts";
import type { LayDesk } from "./instance.ts";
import { numberOf, QuestionEngine, type Reading } from "./question-engine.ts";
import { Upstream } from "./references.ts";
import type { Watched } from "./sweep.ts";

export interface Effect {
  readonly dial: Dial;
  /** Change of the result when the measurement is a slip longer, and when it is a slip shorter; or why there is none. */
  readonly longer: number | null;
  readonly shorter: number | null;
  readonly sentence: string | null;
  /** The larger of the two changes, without its sign; greater than any figure where the result is lost. */
  readonly weight: number;
}

/** A usual slip in taking a measurement, in the book's unit. */
export const slipOf = (book: Book): number => BOOK_UNITS[book.unit].slip;

/** The typed lengths that a cell rests on, in the order of the book. */
export function lengthsUnder(book: Book, place: Place): Dial[] {
  return new Upstream(book, [place]).places
    .filter(({ page, row, column }) => !isFormula(typedAt(book, page, row, column)))
    .toSorted((a, b) => a.page - b.page || a.row - b.row || a.column - b.column)
    .flatMap((one) => {
      const dial = dialAt(book, one);
      return !isProblem(dial) && dial.kind === "length" && dial.now !== null ? [dial] : [];
    });
}

/** What a slip in each typed length does to the result, the weightiest first. One effect is worked between two steps. */
export function* sensitivity(book: Book, desk: LayDesk, watched: Watched): Generator<void, Effect[]> {
  const slip = slipOf(book);
  const effects: Effect[] = [];
  for (const dial of lengthsUnder(book, watched.place)) {
    const copy = new QuestionEngine(book, desk, [dial], [watched.place]);
    try {
      const base = numberOf(copy.now()[0]);
      const longer = copy.read([dial.now! + slip])[0]!;
      const shorter = copy.read([dial.now! - slip])[0]!;
      effects.push(effectOf(dial, base, longer, shorter));
    } finally {
      copy.destroy();
    }
    yield;
  }
  return effects.toSorted((a, b) => b.weight - a.weight);
}

function effectOf(dial: Dial, base: number | null, longer: Reading, shorter: Reading): Effect {
  const change = (reading: Reading) => {
    const made = numberOf(reading);
    return made === null || base === null ? null : made - base;
  };
  const [more, less] = [change(longer), change(shorter)];
  const lost = [longer, shorter].find((one): one is { sentence: string } => "sentence" in one);
  const weight = lost ? Number.POSITIVE_INFINITY : Math.max(Math.abs(more ?? 0), Math.abs(less ?? 0));
  return { dial, longer: more, shorter: less, sentence: lost?.sentence ?? null, weight };
}
