/** What is done with the pages of a book, each act with the sentence that it ends in. */

import { useRef, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { fittingsOfPage } from "../../book/copy-page.ts";
import { photographCount, photographsLeftOut } from "../../book/photographs.ts";
import { blankPage, type Page, STAGES, type Stage } from "../../book/shape.ts";
import { labelOf } from "../../engine/label.ts";
import { typedLengths } from "../../engine/typed-lengths.ts";
import type { Figures } from "../../exchange/page-csv.ts";
import { addPage, copyPage, removePage, renamePage } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import type { AnswerTo, BookOrder, SpreadsheetEnding } from "../../worker/book-work.ts";
import { reasonOf } from "../faults/in-time.ts";
import { fileName, saveText } from "../files/disk.ts";
import { sessionOf } from "../grid/edit-session.ts";
import { MANY_CELLS } from "../progress/large-steps.ts";
import { deletedText, runPageMove, type Target } from "./page-moves.ts";

export interface PagesOf {
  readonly store: Store;
  /** The page in sight, counted from 0. */
  readonly page: number;
  /** With `anew` at its first cell, as of a page that was just added. */
  readonly onPage: (page: number, anew?: boolean) => void;
  /** Hears what was done, in a sentence. */
  readonly onSaid: (text: string) => void;
  /** Hears why something was refused. */
  readonly onRefused: (text: string) => void;
}

/** The first of "Draft", "Draft 2", "Draft 3" that no page has for its title. */
export function freeTitle(pages: readonly Page[], wanted: string): string {
  const taken = new Set(pages.map(({ title }) => title.toLowerCase()));
  const titles = [wanted, ...Array.from({ length: pages.length + 1 }, (_, i) => `${wanted} ${i + 2}`)];
  return titles.find((title) => !taken.has(title.toLowerCase()))!;
}

/** "waist", "waist and hip", "waist, hip, depth and 6 more". */
export function listed(words: readonly string[], most = 3): string {
  const shown = words.length > most + 1 ? words.slice(0, most) : words.slice(0, -1);
  const last = words.length > most + 1 ? phrase`${words.length - most} more` : (words.at(-1) ?? "");
  return shown.length === 0 ? last : phrase`${shown.join(", ")} and ${last}`;
}

const SAVED_FIGURES: Readonly<Record<Figures, string>> = {
  shown: phrase`with its figures as shown`,
  full: phrase`with its figures in full`,
};

/** "; 3 photographs are left out, …" behind the sentence of an export; "" when none is. */
const leftOut = (count: number, holder: string): string => {
  const sentence = photographsLeftOut(count, holder);
  return sentence && `; ${sentence}`;
};

/** What a worker writes, while the page says so; null when it was stopped. */
const writtenApart = async <Order extends BookOrder>(
  order: Order,
  what: string,
): Promise<AnswerTo<Order> | null> => (await import("../progress/apart.ts")).doneApart(order, what);

/** What becomes of the measurements of a copied page that follow the fittings of its first wearer. */
export const noFittings = (count: number): string =>
  phrase`${plural(count, "One measurement of the page follows", "# measurements of the page follow")} fittings, which are the first wearer's: on the copy ${plural(count, "it follows", "they follow")} none, until the copy has a log of its own with the name fitting_log.`;

/** What becomes of the lengths that are typed on a copied page, by the words of their rows. */
export const keptLengths = (labels: readonly string[]): string =>
  phrase`${plural(labels.length, "One length is typed on the page and is copied as it stands", "# lengths are typed on the page and are copied as they stand")} (${listed(labels, 4)}): type over what is the first wearer's.`;

/** The button of the page in sight; the keyboard comes back to it. */
export const focusPage = () => document.querySelector<HTMLElement>(".page[aria-current]")?.focus();

/** The types of the spreadsheets that a book is saved as, as ISO/IEC 29500 and 26300 name them. */
const SPREADSHEETS: Readonly<Record<SpreadsheetEnding, string>> = {
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ods: "application/vnd.oasis.opendocument.spreadsheet",
};

export function usePageActs({ store, page, onPage, onSaid, onRefused }: PagesOf) {
  const { pages } = store.shown;
  const [renaming, setRenaming] = useState(false);
  const added = useRef(false);

  const add = (stage: Stage) => {
    const title = freeTitle(pages, stage);
    const order = STAGES.indexOf(stage);
    const after = pages.findLastIndex((one) => STAGES.indexOf(one.stage) <= order) + 1;
    const refusal = store.run(addPage(blankPage(title, stage), after));
    if (refusal) return onRefused(refusal);
    onPage(after, true);
    setRenaming(true);
    added.current = true;
  };
  const rename = (title: string) => {
    setRenaming(false);
    // The field goes, and the keyboard with it: on to the cells of a new page, or back to the page's button.
    const isNew = added.current;
    added.current = false;
    setTimeout(() => {
      if (document.activeElement !== document.body) return;
      if (isNew) sessionOf(store).grid?.take({ page, row: 0, column: 0 });
      else focusPage();
    });
    if (title === pages[page]!.title) return;
    const refusal = store.run(renamePage(page, title));
    if (refusal) onRefused(refusal);
  };
  /** Copies the page with its names, for another wearer where one is named. Returns null, or the reason why it can't be copied. */
  const copy = (
    title: string,
    wearer?: { row: number; column: number; typed: string },
    isForAnother = false,
  ): string | null => {
    const from = pages[page]!.title;
    const followed = isForAnother ? fittingsOfPage(store.book, page).length : 0;
    const typed = isForAnother ? typedLengths(store.engine, page) : [];
    const labels = typed.map((place) => labelOf(store.book, place) ?? store.engine.address(place));
    const refusal = store.run(copyPage(page, title, wearer, isForAnother));
    if (refusal) return refusal;
    onPage(page + 1);
    const names = Object.keys(store.shown.pages[page + 1]!.names ?? {});
    const own =
      names.length === 0
        ? ""
        : phrase` ${listed(names)} ${plural(names.length, "is a name", "are names")} of its own cells there; on other pages they mean what they meant.`;
    const fitted = followed === 0 ? "" : ` ${noFittings(followed)}`;
    const made = wearer
      ? phrase`The page ${title} is a copy of ${from}, drawn for ${wearer.typed}.`
      : phrase`The page ${title} is a copy of ${from}.`;
    const kept = labels.length === 0 ? "" : ` ${keptLengths(labels)}`;
    onSaid(`${made}${kept}${own}${fitted}`);
    return null;
  };
  const copyPlainly = () => {
    const refusal = copy(freeTitle(pages, pages[page]!.title));
    if (refusal) onRefused(refusal);
    else setRenaming(true);
  };
  const deletePage = () => {
    const deleted = deletedText(store.book, page);
    const refusal = store.run(removePage(page));
    if (refusal) return onRefused(refusal);
    onPage(Math.min(page, store.shown.pages.length - 1));
    onSaid(deleted);
  };
  const move = (index: number, target: Target) => {
    const moved = runPageMove(store, index, target);
    if (typeof moved === "string") onRefused(moved);
    else onPage(moved);
  };
  /** Saves the page as a file of comma-separated values; what writes it is loaded only now. */
  const saveCsv = async (figures: Figures) => {
    const { engine, shown } = store;
    try {
      const { title, rows, columns } = shown.pages[page]!;
      const text =
        rows.length * columns.length < MANY_CELLS
          ? (await import("../../exchange/page-csv.ts")).pageCsv(engine, page, figures)
          : await writtenApart(
              { is: "table", book: shown, page, figures },
              phrase`Writing the page ${title} as CSV`,
            ).then((written) => written?.text);
      if (text === undefined) return onSaid(phrase`The page ${title} was not written as CSV: it was stopped`);
      const name = fileName(`${shown.title} ${title}`, ".csv");
      saveText(text, name, "text/csv");
      onSaid(
        phrase`The page ${title} is saved as ${name}, ${SAVED_FIGURES[figures]}${leftOut(photographCount(shown, page), phrase`a table`)}`,
      );
    } catch {
      onRefused(phrase`the page could not be saved as CSV; load the page of Ellwand again and try once more`);
    }
  };
  /** Saves the whole book as a spreadsheet, which a worker writes. */
  const saveSpreadsheet = async (ending: SpreadsheetEnding) => {
    const book = store.shown;
    try {
      const what = phrase`Writing the book as a spreadsheet`;
      const written = await writtenApart({ is: "spreadsheet", book, ending }, what);
      if (!written) return onSaid(phrase`The spreadsheet was not written: it was stopped`);
      const { bytes, alive, fixed } = written;
      const name = fileName(book.title, `.${ending}`);
      saveText(bytes as BlobPart, name, SPREADSHEETS[ending]);
      onSaid(
        phrase`The book is saved as ${name}: ${alive} formulas stay alive, ${fixed} cells are fixed values or rest on one, each with a note${leftOut(photographCount(book), phrase`a spreadsheet`)}`,
      );
    } catch (fault) {
      onRefused(phrase`the book could not be saved as a spreadsheet (${reasonOf(fault)}); try once more`);
    }
  };
  return {
    renaming,
    saveSpreadsheet,
    saveCsv,
    add,
    rename,
    copy,
    copyPlainly,
    deletePage,
    move,
    beginRenaming: () => setRenaming(true),
  };
}
