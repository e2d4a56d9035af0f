/** Two books that have much in common: rows that are alike become the same objects, and a page that was copied is recognised. */
import { phrase, plural } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { copyPage } from "../book/copy-page.ts";
import { isFormula } from "../book/formula.ts";
import type { Book, Page } from "../book/shape.ts";

type Row = Page["rows"][number];

const sameRow = (a: Row, b: Row): boolean => a.length === b.length && a.every((typed, i) => typed === b[i]);

/** `book` with the rows of `other` in place of its own wherever they are alike: the engine compares rows by their objects. */
export function sharingRows(book: Book, other: Book): Book {
  const pages = book.pages.map((page) => {
    const there = other.pages.find(({ title }) => title === page.title);
    if (!there) return page;
    const rows = page.rows.map((row, i) => {
      const at = there.rows[i];
      return at && sameRow(row, at) ? at : row;
    });
    return { ...page, rows };
  });
  return { ...book, pages };
}

/** A page that only one of two books has, and what of it is the same as on the page that it was copied from. */
export interface CopiedPage {
  /** The page that it was copied from. */
  readonly title: string;
  /** The cells that are the same, "row column", and the names of the page. */
  readonly cells: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}

/** The answer of a cell as its book shows it. */
export type Shown = (place: Place) => string;

/**
 * What page `index` of `book` has in common with the page of `other` that it was copied from: typed texts, formulas
 * that say the same and give the same, and names. Null where no page of `other` has half of its rows.
 */
export function copiedFrom(
  { book, index, shown }: { readonly book: Book; readonly index: number; readonly shown: Shown },
  { book: other, shown: otherShown }: { readonly book: Book; readonly shown: Shown },
): CopiedPage | null {
  const page = book.pages[index]!;
  const labelOf = ({ rows }: Page, row: number) => rows[row]?.[0] ?? "";
  const labelled = page.rows.flatMap((_, row) => (labelOf(page, row) === "" ? [] : [row]));
  const likeness = other.pages.map(
    (one) => labelled.filter((row) => labelOf(one, row) === labelOf(page, row)).length,
  );
  const most = Math.max(...likeness);
  if (most < 3 || most * 2 < labelled.length) return null;
  const from = likeness.indexOf(most);
  const copy = copyPage(other, from, page.title).pages[from + 1]!;
  const cells = page.rows.flatMap((texts, row) =>
    texts.flatMap((typed, column) => {
      if (typed.trim() === "" || typed !== copy.rows[row]?.[column]) return [];
      const isSame =
        !isFormula(typed) || shown({ page: index, row, column }) === otherShown({ page: from, row, column });
      return isSame ? [`${row} ${column}`] : [];
    }),
  );
  const names = Object.entries(page.names ?? {}).filter(([name, at]) => copy.names?.[name] === at);
  return {
    title: other.pages[from]!.title,
    cells: new Set(cells),
    names: new Set(names.map(([name]) => name)),
  };
}

/** "Draft; 118 cells and 44 names as on Lady" */
export const copiedText = (stage: string, { title, cells, names }: CopiedPage): string =>
  phrase`${stage}; ${plural(cells.size, "# cell", "# cells")} and ${plural(names.size, "# name", "# names")} as on ${title}`;
