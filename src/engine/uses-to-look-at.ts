/**
 * Which of the places where formulas need numbers may lack a number. When an edit only replaces numbers with
 * numbers, the same places are kept for the next book. What is found at a place is never kept: it is read anew.
 */
import { isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { isTypedLength, takesNoLength } from "./length-as-number.ts";
import { cellsIn, sourceOf } from "./references.ts";
import { Statuses, statusesOfRow } from "./statuses.ts";
import { namesTogether, type Use } from "./uses.ts";

export interface UsesToLookAt {
  /** Places where some cell is not a number. */
  readonly counted: readonly Use[];
  /** Places of arguments that take no length, where some cell is a typed length. */
  readonly lengths: readonly Use[];
}

/** The most cells of one range that are looked at one by one. */
const MOST_CELLS = 2000;

export function usesToLookAt(book: Book, uses: Iterable<Use>): UsesToLookAt {
  const statuses = new Statuses(book);
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
  const [counted, lengths]: [Use[], Use[]] = [[], []];
  for (const use of uses) {
    if (lacksFigure(use)) counted.push(use);
    if (hasLength(use)) lengths.push(use);
  }
  return { counted, lengths };
}

/** Whether both books are sure to have the same uses to look at: no cell but figures differs, and figures have become figures. */
export function haveSameUses(old: Book, next: Book): boolean {
  if (old.unit !== next.unit || old.decimal !== next.decimal || old.pages.length !== next.pages.length)
    return false;
  const names = namesTogether(old);
  if (names !== namesTogether(next)) return false;
  return old.pages.every((was, page) => {
    const is = next.pages[page]!;
    if (was === is) return true;
    if (was.title !== is.title || was.columns !== is.columns || was.rows.length !== is.rows.length)
      return false;
    return was.rows.every((row, at) => row === is.rows[at] || haveSameStatuses(old, next, page, at));
  });
}

function haveSameStatuses(old: Book, next: Book, page: number, row: number): boolean {
  const [a, b] = [old.pages[page]!.rows[row]!, next.pages[page]!.rows[row]!];
  const was = statusesOfRow(old, old.pages[page]!, a);
  const is = statusesOfRow(next, next.pages[page]!, b);
  return (
    a.length === b.length &&
    a.every((typed, column) => {
      if (typed === b[column]) return true;
      const place = { page, row, column };
      return (
        !isFormula(typed) &&
        !isFormula(typedAt(next, page, row, column)) &&
        was[column] === is[column] &&
        isTypedLength(old, place) === isTypedLength(next, place)
      );
    })
  );
}
