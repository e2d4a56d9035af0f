/** Finding a text in what is typed in a book, and putting another in its place. */
import type { Place } from "./address.ts";
import { isFormula, tokens } from "./formula.ts";
import { isOnPage, namesMeant } from "./names.ts";
import { afterRemoval } from "./references.ts";
import type { Book } from "./shape.ts";

/** What is looked for, and where. */
export interface Wanted {
  readonly text: string;
  /** Whether capitals and small letters differ. */
  readonly exactCase: boolean;
  /** Whether the text must be the whole of what is typed. */
  readonly wholeCell: boolean;
  /** The page to look on; the whole book when null. */
  readonly page: number | null;
  readonly within: "all" | "texts" | "formulas";
}

export interface Found {
  readonly place: Place;
  readonly typed: string;
}

function patternOf({ text, exactCase, wholeCell }: Wanted): RegExp {
  const letters = text.replace(/[.*+?^${}()|[\]\\/-]/g, String.raw`\$&`);
  return new RegExp(wholeCell ? `^\\s*${letters}\\s*$` : letters, exactCase ? "gu" : "giu");
}

/** The cells in which the text is typed, page by page, row by row. */
export function findCells(book: Book, wanted: Wanted): Found[] {
  if (wanted.text === "") return [];
  const pattern = patternOf(wanted);
  const found: Found[] = [];
  for (const [page, { rows }] of book.pages.entries()) {
    if (wanted.page !== null && wanted.page !== page) continue;
    for (const [row, cells] of rows.entries()) {
      for (const [column, typed] of cells.entries()) {
        if (typed === "" || (wanted.within !== "all" && isFormula(typed) !== (wanted.within === "formulas")))
          continue;
        pattern.lastIndex = 0;
        if (pattern.test(typed)) found.push({ place: { page, row, column }, typed });
      }
    }
  }
  return found;
}

/** What is typed with every place of the wanted text replaced. */
export const replacedIn = (typed: string, wanted: Wanted, by: string): string =>
  typed.replace(patternOf(wanted), () => by);

/** The cells of other pages whose formulas use a page, by its title or by a name of its cells, in the order of the book. */
export function usersOfPage(book: Book, index: number): Place[] {
  const { title } = book.pages[index]!;
  const named = (typed: string, page: number) =>
    isFormula(typed) &&
    tokens(typed).some(
      ({ kind, text }) => kind === "name" && namesMeant(book, text, page).some((one) => isOnPage(one, index)),
    );
  return book.pages.flatMap(({ title: home, rows }, page) =>
    page === index
      ? []
      : rows.flatMap((cells, row) =>
          cells.flatMap((typed, column) =>
            afterRemoval(typed, home, title) !== typed || named(typed, page) ? [{ page, row, column }] : [],
          ),
        ),
  );
}
