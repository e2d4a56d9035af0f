/**
 * Builds all that an engine needs for a book in slices, so that a page can paint, hear keys and stop it meanwhile.
 * HyperFormula takes the typed cells first, then the formulas, each after those that it rests on: so every formula
 * is calculated once. What comes of it is what an engine that is built at once has.
 */
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { changedCells } from "./changes.ts";
import type { Engine } from "./engine.ts";
import { workedBook } from "./fitted-cells.ts";
import type { TimeLimits } from "./guards.ts";
import { Instance } from "./instance.ts";
import type { KindCells } from "./kind-cells.ts";
import { MOST_CELLS } from "./kind-lists.ts";
import { Kinds } from "./kinds.ts";
import { type LayDesk, withOwnTime } from "./lay-desk.ts";
import { KeptUses } from "./uses-to-look-at.ts";

/** What an engine has of one book. */
export interface Prepared {
  readonly kinds: Kinds;
  readonly instance: Instance;
  readonly uses: KeptUses;
}

/** With fewer formulas a book is built at once, and with fewer changed cells they are calculated at once. */
const MANY = 20_000;

/** Whether it takes an engine long to follow its book to the next one, or with `anew` to open that. */
export function takesLong(engine: Engine, next: Book, anew = false): boolean {
  let count = 0;
  for (const { rows } of next.pages)
    for (const row of rows) for (const typed of row) if (isFormula(typed)) count += 1;
  if (count <= MANY) return false;
  const changed = anew ? null : changedCells(engine.worked, workedBook(next));
  return !changed || changed.length > MANY;
}

/** What an engine prepares by: it is loaded only when a book takes long. */
export type Preparing = typeof prepare;

/** How many formulas are entered and calculated together. */
const TOGETHER = 1000;

/** Which share of the work is done when the kinds are found, and when all formulas are calculated. */
const SHARES = { kinds: 0.25, formulas: 0.9 } as const;

/** Gives, after each slice, which share of the work is done. A generator that is ended early leaves nothing behind. */
export function* prepare(book: Book, desk: LayDesk, limits: TimeLimits): Generator<number, Prepared> {
  const own = withOwnTime(desk, limits);
  const kinds = new Kinds(book);
  for (const _ of kinds.find()) yield 0;
  yield SHARES.kinds;
  const instance = new Instance(book, own.desk, own.limits, "values");
  let isWhole = false;
  try {
    yield SHARES.kinds;
    const order = inOrderOfWork(kinds.cells);
    for (let from = 0; from < order.length && instance.has === "values"; from += TOGETHER) {
      instance.enter(order.slice(from, from + TOGETHER));
      yield SHARES.kinds + (SHARES.formulas - SHARES.kinds) * Math.min(1, (from + TOGETHER) / order.length);
    }
    instance.take(book, []);
    const uses = new KeptUses();
    for (const _ of uses.find(book)) yield SHARES.formulas;
    isWhole = true;
    return { kinds, instance, uses };
  } finally {
    if (!isWhole) instance.destroy();
  }
}

/**
 * The formulas in the order to calculate them in from the beginning: those that read a long area come last, with all
 * that rests on them, since not all that they rest on is looked at for their order.
 */
function inOrderOfWork(cells: KindCells): Place[] {
  const late = new Set<number>();
  for (const cell of cells.inOrder) {
    const parts = cells.patterns[cell]!.parts.map((_, i) => cells.part(cell, i));
    const isLate = parts.some((part) => {
      if (cells.isLong(part)) return true;
      let found = false;
      cells.eachOfPart(part, MOST_CELLS, (one) => {
        found = late.has(one);
        return found;
      });
      return found;
    });
    if (isLate) late.add(cell);
  }
  return [...cells.inOrder.filter((cell) => !late.has(cell)), ...late].map((cell) => cells.at(cell));
}
