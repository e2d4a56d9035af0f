/** What is kept by cell address on a page, notes and settings: it follows its cells wherever they go. */
import { cellAddress, type Place } from "./address.ts";
import type { Book, CellSettings, Page } from "./shape.ts";

/** New settings of a cell; undefined takes one away, and what is left out stays. */
export type SettingsChange = { readonly [K in keyof CellSettings]?: CellSettings[K] | undefined };

/** What is set for a cell. */
export const settingsAt = (book: Book, { page, row, column }: Place): CellSettings | undefined => {
  const cells = book.pages[page]?.cells;
  return cells?.[cellAddress(row, column)];
};

/** What a cell's photograph is, in words; "" when it has none. */
export function photographText(book: Book, place: Place): string {
  const { photograph, photographWords = "" } = settingsAt(book, place) ?? {};
  return photograph ? `photograph${photographWords && `: ${photographWords}`}` : "";
}

type ByCell<T> = Readonly<Record<string, T>>;

/** The page with the notes and settings given; no settings at all leave the field out. */
export function withMarks(page: Page, notes: ByCell<string>, cells: ByCell<CellSettings>): Page {
  const { cells: _, ...rest } = page;
  return Object.keys(cells).length > 0 ? { ...rest, notes, cells } : { ...rest, notes };
}

/** The page with each note and setting at the address that `to` gives for its own; null takes it away. */
export function marksMoved(page: Page, to: (address: string) => string | null): Page {
  const moved = <T>(marks: ByCell<T>): ByCell<T> =>
    Object.fromEntries(
      Object.entries(marks).flatMap(([address, mark]) => {
        const next = to(address);
        return next === null ? [] : [[next, mark] as const];
      }),
    );
  return withMarks(page, moved(page.notes), moved(page.cells ?? {}));
}

/** The settings of a cell after a change; a setting that is undefined is taken away, and a cell without any is left out. */
export function withSettings(page: Page, address: string, change: SettingsChange): Page {
  const entries = Object.entries({ ...page.cells?.[address], ...change }).filter(
    ([, value]) => value !== undefined,
  );
  const rest = Object.fromEntries(Object.entries(page.cells ?? {}).filter(([one]) => one !== address));
  return withMarks(
    page,
    page.notes,
    entries.length > 0 ? { ...rest, [address]: Object.fromEntries(entries) } : rest,
  );
}
