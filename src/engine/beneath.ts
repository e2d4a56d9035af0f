/**
 * What stands directly beneath a named list as if it belonged to it. A list grows by rows that are
 * inserted within it, never by what is typed below its end: the cell there and every formula that
 * uses the list say that it is not counted.
 */
import { phrase } from "../../functions/phrase.ts";
import { type Block, cellAddress, type Place } from "../book/address.ts";
import { formulaTree, isFormula, tokens } from "../book/formula.ts";
import { blockText, everyName, isCell, type Named, nameMeant } from "../book/names.ts";
import { type Book, MOST_ROWS, typedAt } from "../book/shape.ts";
import { areasOf } from "./references.ts";
import type { Statuses } from "./statuses.ts";

export interface Beneath {
  readonly place: Place;
  readonly sentence: string;
  /** The formulas that use the list by its name. */
  readonly users: readonly Place[];
  readonly list: Named;
  /** The last row that the list would have with all that stands beneath it. */
  readonly to: number;
}

/** Such cells of a book, the first of each list. */
export function beneathLists(book: Book, statuses: Statuses): Beneath[] {
  const found = everyName(book).flatMap((list) => {
    const place = isCell(list.block) ? null : cellBeneath(book, list, statuses);
    return place ? [{ list, place }] : [];
  });
  return found.map(({ list, place }) => ({
    place,
    sentence: phrase`this stands directly beneath ${list.name} (${blockText(list.block)}) and is not counted: insert a row within the list, or name the longer list`,
    users: usersOf(book, list),
    list,
    to: lastBeneath(book, list, place, statuses),
  }));
}

/** The cell that holds a number directly beneath the last number of a list; a formula that uses the list itself does not count. */
function cellBeneath(book: Book, { block }: Named, statuses: Statuses): Place | null {
  const { page, left, bottom, right } = block;
  const rows = book.pages[page]?.rows.length ?? 0;
  if (bottom + 1 >= Math.min(rows, MOST_ROWS)) return null;
  const last = Math.min(right, (book.pages[page]!.rows[bottom + 1]?.length ?? 0) - 1);
  for (let column = left; column <= last; column += 1) {
    const place = { page, row: bottom + 1, column };
    if (statuses.of({ ...place, row: bottom }) !== "figure") continue;
    if (statuses.of(place) === "figure" && !usesList(book, place, block)) return place;
  }
  return null;
}

/** The last row of the numbers that stand one beneath the other from `place` on. */
function lastBeneath(book: Book, { block }: Named, place: Place, statuses: Statuses): number {
  const belongs = (row: number) =>
    statuses.of({ ...place, row }) === "figure" && !usesList(book, { ...place, row }, block);
  let { row } = place;
  while (row + 1 < MOST_ROWS && belongs(row + 1)) row += 1;
  return row;
}

/** Whether a formula uses cells of a list that stand one beneath the other, as a total does. */
function usesList(book: Book, place: Place, { page, top, left, bottom, right }: Block): boolean {
  const typed = typedAt(book, page, place.row, place.column);
  return (
    isFormula(typed) &&
    areasOf(book, formulaTree(typed), page).some(
      (area) =>
        area.page === page &&
        area.top <= bottom &&
        area.bottom >= top &&
        area.left <= right &&
        area.right >= left &&
        area.bottom > area.top,
    )
  );
}

function usersOf(book: Book, list: Named): Place[] {
  return book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((row, r) =>
      row.flatMap((typed, column) => {
        const uses =
          isFormula(typed) &&
          tokens(typed).some(
            ({ kind, text }) => kind === "name" && nameMeant(book, text, page)?.address === list.address,
          );
        return uses ? [{ page, row: r, column }] : [];
      }),
    ),
  );
}

/** The cells that stand beneath the lists that a formula which stands in no cell uses, in sentences. */
export function beneathUsed(book: Book, statuses: Statuses, formula: string, page: number): string[] {
  const used = tokens(formula).flatMap(({ kind, text }) =>
    kind === "name" ? (nameMeant(book, text, page) ?? []) : [],
  );
  return used.flatMap((list) => {
    const place = isCell(list.block) ? null : cellBeneath(book, list, statuses);
    return place
      ? [
          phrase`${cellAddress(place.row, place.column)} stands directly beneath ${list.name} (${blockText(list.block)}) and is not counted`,
        ]
      : [];
  });
}
