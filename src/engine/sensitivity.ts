/** Which tape measurements a result depends on most: measure those twice. */

import type { LayOrigin } from "../../functions/lay.ts";
import { BOOK_UNITS } from "../../functions/units.ts";
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { lessSearched, uncertaintyOf } from "./laid.ts";
import type { LayDesk } from "./lay-desk.ts";
import { numberOf, QuestionEngine, type Reading } from "./question-engine.ts";
import type { Watched } from "./sweep.ts";
import { isProblem, type VariedCell, variedCellAt } from "./varied-cell.ts";

export interface Effect {
  readonly measurement: VariedCell;
  /** Change of the result when the measurement is longer by the measuring error, and when it is shorter by it; null where the result is lost. */
  readonly longer: number | null;
  readonly shorter: number | null;
  readonly sentence: string | null;
  /** Whether both changes are smaller than a longer search may change the lays that the result rests on. */
  readonly unsure: boolean;
  /** The larger of the two changes, without its sign; greater than any figure where the result is lost. */
  readonly weight: number;
}

/** A usual error in taking a measurement, in the book's unit. */
export const measuringErrorOf = (book: Book): number => BOOK_UNITS[book.unit].measuringError;

/** The typed lengths that a cell rests on, in the order of the book. */
export function lengthsUnder(book: Book, desk: LayDesk, place: Place): VariedCell[] {
  const engine = new QuestionEngine(book, desk, [], [place]);
  const under = engine.under();
  engine.destroy();
  return under
    .filter(({ page, row, column }) => !isFormula(typedAt(book, page, row, column)))
    .toSorted((a, b) => a.page - b.page || a.row - b.row || a.column - b.column)
    .flatMap((one) => {
      const cell = variedCellAt(book, one);
      return !isProblem(cell) && cell.kind === "length" && cell.now !== null ? [cell] : [];
    });
}

/** What a measuring error in each typed length does to the result, the weightiest first. One effect is worked between two steps. */
export function* sensitivity(book: Book, desk: LayDesk, watched: Watched): Generator<void, Effect[]> {
  const error = measuringErrorOf(book);
  const effects: Effect[] = [];
  for (const cell of lengthsUnder(book, desk, watched.place)) {
    const engine = new QuestionEngine(book, desk, [cell], [watched.place]);
    try {
      const origins: (LayOrigin | null)[] = [];
      const reading = (read: readonly Reading[]): Reading => {
        origins.push(engine.origin);
        return read[0]!;
      };
      const base = numberOf(reading(engine.now()));
      const longer = reading(engine.read([cell.now! + error]));
      const shorter = reading(engine.read([cell.now! - error]));
      const share = uncertaintyOf(origins.reduce(lessSearched));
      effects.push(effectOf(cell, base, longer, shorter, share * Math.abs(base ?? 0)));
    } finally {
      engine.destroy();
    }
    yield;
  }
  return effects.toSorted((a, b) => b.weight - a.weight);
}

/** `uncertainty` is the change of the result that a longer search for its lays may make. */
function effectOf(
  measurement: VariedCell,
  base: number | null,
  longer: Reading,
  shorter: Reading,
  uncertainty: number,
): Effect {
  const change = (reading: Reading) => {
    const made = numberOf(reading);
    return made === null || base === null ? null : made - base;
  };
  const [more, less] = [change(longer), change(shorter)];
  const lost = [longer, shorter].find((one): one is { sentence: string } => "sentence" in one);
  const weight = lost ? Number.POSITIVE_INFINITY : Math.max(Math.abs(more ?? 0), Math.abs(less ?? 0));
  const unsure = weight > 0 && weight <= uncertainty;
  return { measurement, longer: more, shorter: less, sentence: lost?.sentence ?? null, unsure, weight };
}
