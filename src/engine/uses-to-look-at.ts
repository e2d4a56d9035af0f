/**
 * Which of the places where formulas need numbers may lack a number. They are kept by row: after an edit only the
 * rows are looked through that were changed, or that need a figure from a cell that is of another kind now. What is
 * found at a place is never kept: it is read anew.
 */
import { comparePlaces, type Place, placeKey } from "../book/address.ts";
import { changedRows } from "../book/changed-rows.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { atOnce } from "./at-once.ts";
import { CellsBelowZero, isBelowZero } from "./below-zero.ts";
import { isTypedLength, takesNoLength } from "./length-as-number.ts";
import { Reach, type Row } from "./reach.ts";
import { cellsIn, isSingle, repeatedBy, sourceOf } from "./references.ts";
import { Statuses, statusesOfRow } from "./statuses.ts";
import { namesTogether, UsesByRow } from "./uses.ts";
import type { Use } from "./uses-in-formula.ts";

export interface UsesToLookAt {
  /** Places where some cell is not a number. */
  readonly counted: readonly Use[];
  /** Places of arguments that take no length, where some cell is a typed length. */
  readonly lengths: readonly Use[];
  /** Places of amounts, where some cell may hold a number below zero. */
  readonly amounts: readonly Use[];
  /** Cells in which a figure has two readings, whether or not a formula needs them. */
  readonly unclear: readonly Place[];
}

/** The most cells of one range that are looked at one by one. */
const MOST_CELLS = 2000;

/** Those among the given uses. */
export function usesToLookAt(
  book: Book,
  uses: Iterable<Use>,
  statuses = new Statuses(book),
  below = new CellsBelowZero(book),
): UsesToLookAt {
  const lacksFigure = ({ as, areas }: Use): boolean => {
    if (as !== "cell") return !areas.every((area) => statuses.areFigures(area));
    const { page, top, left } = areas[0]!;
    return statuses.of(sourceOf(book, { page, row: top, column: left })) !== "figure";
  };
  const hasLength = (use: Use): boolean =>
    takesNoLength(use) &&
    use.areas.some((area) =>
      cellsIn(book, area, MOST_CELLS).some((cell) => isTypedLength(book, sourceOf(book, cell))),
    );
  const mayBeBelow = ({ amount, areas }: Use): boolean =>
    amount !== undefined &&
    areas.some((area) => {
      if (!isSingle(area)) return below.isIn(area);
      const place = sourceOf(book, { page: area.page, row: area.top, column: area.left });
      return isBelowZero(typedAt(book, place.page, place.row, place.column));
    });
  const [counted, lengths, amounts]: [Use[], Use[], Use[]] = [[], [], []];
  for (const use of uses) {
    if (lacksFigure(use)) counted.push(use);
    if (hasLength(use)) lengths.push(use);
    if (mayBeBelow(use)) amounts.push(use);
  }
  return { counted, lengths, amounts, unclear: [] };
}

const NONE: UsesToLookAt = { counted: [], lengths: [], amounts: [], unclear: [] };

/** How many rows a slice has. */
const SLICE = 500;

/** With more changed rows than this, or more cells that are of another kind, all rows are looked through. */
const MOST_ROWS = 200;
const MOST_TURNED = 30;

/** The uses to look at of one state of a book after the other. */
export class KeptUses {
  #book: Book | null = null;
  /** By page and row. */
  #rows: UsesToLookAt[][] = [];
  #all: UsesToLookAt = NONE;
  #reach: Reach | null = null;

  of(book: Book): UsesToLookAt {
    if (book !== this.#book) atOnce(this.find(book));
    return this.#all;
  }

  /** Finds the uses to look at in a book, in slices. */
  *find(book: Book): Generator<void> {
    const uses = new UsesByRow(book);
    const statuses = new Statuses(book);
    const below = new CellsBelowZero(book);
    const inRow = (page: number, row: number): UsesToLookAt => {
      const { counted, lengths, amounts } = usesToLookAt(book, uses.of(page, row), statuses, below);
      const unclear = statuses.unclear(page, row);
      return counted.length + lengths.length + amounts.length + unclear.length > 0
        ? { counted, lengths, amounts, unclear }
        : NONE;
    };
    const rows = this.#rowsToLookThrough(book, uses);
    let isSame = rows !== null;
    if (rows)
      for (const { page, row } of rows) {
        const found = inRow(page, row);
        isSame &&= found === NONE && this.#rows[page]![row] === NONE;
        this.#rows[page]![row] = found;
      }
    else {
      this.#rows = book.pages.map(() => []);
      for (const [page, on] of book.pages.entries())
        for (const row of on.rows.keys()) {
          this.#rows[page]!.push(inRow(page, row));
          if (row % SLICE === 0) yield;
        }
      this.#reach = new Reach(book, uses);
    }
    if (!isSame) {
      const some = this.#rows.flatMap((page) => page.filter((row) => row !== NONE));
      this.#all = {
        counted: some.flatMap(({ counted }) => counted),
        lengths: some.flatMap(({ lengths }) => lengths),
        amounts: some.flatMap(({ amounts }) => amounts),
        unclear: some.flatMap(({ unclear }) => unclear),
      };
    }
    this.#book = book;
  }

  /** The rows whose uses to look at may be others than before; null when that can be all rows. */
  #rowsToLookThrough(next: Book, uses: UsesByRow): readonly Row[] | null {
    const old = this.#book;
    const changed = old && rowsChanged(old, next);
    if (!changed || !this.#reach?.follow(changed, uses)) return null;
    const turned = changed.flatMap(({ page, row }) => turnedCells(old, next, page, row));
    if (turned.length === 0) return changed;
    const all = withRepeats(this.#reach, turned, uses);
    if (all.length > MOST_TURNED) return null;
    const known = new Set(changed.map(({ page, row }) => `${page}.${row}`));
    const reached = this.#reach.rows(all, uses);
    return [...changed, ...reached.filter(({ page, row }) => !known.has(`${page}.${row}`))];
  }
}

/** The rows that differ; null when something else differs, too, or there are too many. */
function rowsChanged(old: Book, next: Book): readonly Row[] | null {
  if (old.unit !== next.unit || old.decimal !== next.decimal || old.pages.length !== next.pages.length)
    return null;
  const names = namesTogether(old);
  if (names !== namesTogether(next)) return null;
  const changed: Row[] = [];
  for (const [page, was] of old.pages.entries()) {
    const is = next.pages[page]!;
    if (was === is) continue;
    if (was.title !== is.title || was.columns !== is.columns || was.rows.length !== is.rows.length)
      return null;
    for (const row of changedRows(was.rows, is.rows)) changed.push({ page, row });
    if (changed.length > MOST_ROWS) return null;
  }
  return changed;
}

/** The cells of a row that are of another kind to a formula that needs a number, or repeat another cell. */
function turnedCells(old: Book, next: Book, page: number, row: number): Place[] {
  const [a, b] = [old.pages[page]!.rows[row]!, next.pages[page]!.rows[row]!];
  const was = statusesOfRow(old, old.pages[page]!, a);
  const is = statusesOfRow(next, next.pages[page]!, b);
  const found: Place[] = [];
  for (let column = 0; column < Math.max(a.length, b.length); column += 1) {
    const place = { page, row, column };
    const [before, after] = [typedAt(old, page, row, column), typedAt(next, page, row, column)];
    if (before === after) continue;
    const isSame =
      (was[column] ?? "blank") === (is[column] ?? "blank") &&
      isTypedLength(old, place) === isTypedLength(next, place) &&
      isBelowZero(before) === isBelowZero(after) &&
      !repeatedBy(old, before, page) &&
      !repeatedBy(next, after, page);
    if (!isSame) found.push(place);
  }
  return found;
}

/** The cells with those that repeat them, one through the other. */
function withRepeats(reach: Reach, cells: readonly Place[], uses: UsesByRow): readonly Place[] {
  const repeats = reach
    .repeating()
    .flatMap(({ page, row }) =>
      uses.repeats(page, row).map(({ column, of }) => ({ place: { page, row, column }, of: placeKey(of) })),
    );
  const found = new Map(cells.map((cell) => [placeKey(cell), cell]));
  for (let count = 0; count < found.size; ) {
    count = found.size;
    for (const { place, of } of repeats) if (found.has(of)) found.set(placeKey(place), place);
  }
  return [...found.values()].toSorted(comparePlaces);
}
