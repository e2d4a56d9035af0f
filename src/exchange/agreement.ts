/**
 * The formulas of a spreadsheet file compared with the values that the file has for them: a formula that
 * gives another value in the book is kept as the value of the file, and its note says so.
 */

import type { Cell } from "../../functions/define.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { cellAddress, type Place, placeKey } from "../book/address.ts";
import { type Typing, type } from "../book/edit.ts";
import { type Book, LONGEST, typedAt } from "../book/shape.ts";
import { Engine } from "../engine/engine.ts";
import type { LayDesk } from "../engine/lay-desk.ts";
import { addresses, counted } from "./cell-report.ts";
import type { Revived } from "./sheets-to-book.ts";
import { typedText } from "./typed-text.ts";

export interface Agreed {
  readonly book: Book;
  /** How many formulas stay alive. */
  readonly alive: number;
  /** How many are kept as values because they come to another value here. */
  readonly kept: number;
  /** By page, in sentences. */
  readonly said: ReadonlyMap<number, readonly string[]>;
}

/** Their answers change from one calculation to the next. */
const CHANGING = /\b(?:NOW|TODAY|RAND|RANDBETWEEN)\(/i;

/** Rounds of comparing; a chain of formulas may need one for each of its first faults. */
const MOST_ROUNDS = 20;

/** Equal to 1e-9; a blank is an empty text, and an error has no value. */
export const near = (a: unknown, b: Cell): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b))
    : (a ?? "") === (b ?? "");

export function agreed(start: Book, revived: readonly Revived[], desk: LayDesk): Agreed {
  if (revived.length === 0) return { book: start, alive: 0, kept: 0, said: new Map() };
  const engine = new Engine(start, desk);
  const changing = changingCells(engine, revived);
  const alive = new Map(revived.map((one) => [placeKey(one), one]));
  const kept: Revived[] = [];
  for (let round = 1; ; round += 1) {
    const wrong = [...alive.values()].filter((one) => !changing(one) && !agrees(engine, one));
    if (wrong.length === 0) break;
    const keys = new Set(wrong.map(placeKey));
    // A formula that rests on one that differs may agree once that one is a value.
    const first =
      round > MOST_ROUNDS
        ? []
        : wrong.filter((one) => !engine.restsOn(one).some((under) => keys.has(placeKey(under))));
    const asValues = first.length > 0 ? first : wrong;
    engine.become(withValues(engine, asValues));
    for (const one of asValues) alive.delete(placeKey(one));
    kept.push(...asValues);
  }
  const { book } = engine;
  const said = sentences(start, [...alive.values()], kept, changing);
  engine.destroy();
  return { book, alive: alive.size, kept: kept.length, said };
}

/** The value of a cell agrees with the file's, or the file has no value to compare. */
function agrees(engine: Engine, { cell, ...place }: Revived): boolean {
  const value = engine.value(place);
  if (cell.value === null) return true;
  if (cell.as === "error") return value === null;
  return near(value, cell.value);
}

/** Whether a formula's answer changes by itself, or rests on one that does. */
function changingCells(engine: Engine, revived: readonly Revived[]): (place: Place) => boolean {
  const typed = ({ page, row, column }: Place) => typedAt(engine.book, page, row, column);
  if (!revived.some((one) => CHANGING.test(typed(one)))) return () => false;
  const known = new Map<string, boolean>();
  const formulas = new Set(revived.map(placeKey));
  const changes = (place: Place): boolean => {
    const key = placeKey(place);
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, false);
    const found =
      CHANGING.test(typed(place)) ||
      engine.restsOn(place).some((under) => formulas.has(placeKey(under)) && changes(under));
    known.set(key, found);
    return found;
  };
  return changes;
}

function withValues(engine: Engine, places: readonly Revived[]): Book {
  const { book } = engine;
  const decimal = book.decimal ?? "point";
  const typings = places.map(
    ({ cell, page, row, column }): Typing => ({ page, row, column, typed: typedText(cell, decimal).text }),
  );
  const pages = new Map<number, Record<string, string>>();
  for (const place of places) {
    const address = cellAddress(place.row, place.column);
    const notes = pages.get(place.page) ?? { ...book.pages[place.page]!.notes };
    const view = engine.view(place);
    const there = String(place.cell.value).slice(0, 60);
    const kept =
      view.value === null
        ? phrase`This formula of the file has no answer here and came to ${there} there; the value of the file is kept.`
        : phrase`This formula of the file comes to ${String(view.value).slice(0, 60)} here and came to ${there} there; the value of the file is kept.`;
    const text = `${view.typed}\n${kept}`;
    notes[address] = [notes[address], text].filter(Boolean).join("\n").slice(0, LONGEST.note);
    pages.set(place.page, notes);
  }
  const next = type(book, typings);
  return {
    ...next,
    pages: next.pages.map((page, i) => (pages.has(i) ? { ...page, notes: pages.get(i)! } : page)),
  };
}

function sentences(
  book: Book,
  alive: readonly Revived[],
  kept: readonly Revived[],
  changing: (place: Place) => boolean,
): ReadonlyMap<number, readonly string[]> {
  return new Map(
    book.pages.map((_, page): [number, string[]] => {
      const on = (list: readonly Revived[]) => list.filter((one) => one.page === page);
      const where = (list: readonly Revived[]) => addresses(list.map(({ row, column }) => cellAddress(row, column)));
      const living = on(alive);
      const unknown = living.filter(({ cell }) => cell.value === null);
      const moving = living.filter(changing);
      const values = on(kept);
      return [
        page,
        [
          ...(living.length > 0 ? [unknown.length + moving.length < living.length ? phrase`${counted(living.length)} ${plural(living.length, "formula stays alive and gives the value of the file", "formulas stay alive and give the values of the file")}.` : phrase`${counted(living.length)} ${plural(living.length, "formula stays alive", "formulas stay alive")}.`] : []),
          ...(unknown.length > 0 ? [phrase`The file has no value for ${counted(unknown.length)} ${plural(unknown.length, "formula", "formulas")} to compare with: ${where(unknown)}.`] : []),
          ...(moving.length > 0 ? [phrase`${counted(moving.length)} ${plural(moving.length, "formula changes", "formulas change")} with the day or by chance: ${where(moving)}.`] : []),
          ...(values.length > 0 ? [phrase`${counted(values.length)} ${plural(values.length, "formula comes", "formulas come")} to another value here and ${plural(values.length, "is", "are")} kept as the value of the file, with a note: ${where(values)}.`] : []),
        ],
      ];
    }),
  ); // biome-ignore format: sentences
}
