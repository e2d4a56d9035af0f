/**
 * A spreadsheet that Ellwand wrote, read again. Its sheet of workings has each formula as it was typed, and each figure
 * that was typed in its own way, such as 1 1/2. A
 * formula comes back where the book, written once more, gives the very formula that stands in the file; where
 * another program changed the file, what it has now is read like any foreign sheet.
 */
import { phrase, plural } from "../../functions/phrase.ts";
import { findPlace, fullAddress, type Place, placeKey, rowAndColumn } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { Engine } from "../engine/engine.ts";
import type { LayDesk } from "../engine/lay-desk.ts";
import { near } from "./agreement.ts";
import { addresses, counted } from "./cell-report.ts";
import type { ForeignBook, ForeignCell } from "./foreign-book.ts";
import { bookFormula, foreignParts, openFormula } from "./foreign-formula.ts";
import { FIRST_WORKING, HEADING_LINES } from "./live-formula.ts";
import { CARE, NO_ANSWER } from "./note-words.ts";
import { type OwnMark, readOwnMark } from "./own-mark.ts";
import { ORIGINALS, type PlainBook, type PlainCell, plainBook } from "./plain-book.ts";
import type { Laidout } from "./sheets-to-book.ts";

/** What the file says about its book; null for a file that Ellwand did not write. */
export function markOf({ sheets }: ForeignBook): OwnMark | null {
  const text = sheets.at(-1)?.rows[FIRST_WORKING - 2]?.[0]?.value;
  const mark = typeof text === "string" ? readOwnMark(text) : null;
  return mark && mark.pages.length === sheets.length - 1 ? mark : null;
}

export interface Restored {
  /** The pages, those formulas of the file that are not Ellwand's own among the revived ones. */
  readonly laid: Laidout;
  readonly said: readonly string[];
}

/** Rounds of writing the book again; each gives up the formulas that were changed elsewhere. */
const MOST_ROUNDS = 3;

/** The formulas, and the figures that their values do not tell, as they were typed, by the key of their cell. */
export type Originals = ReadonlyMap<string, string>;

function originalsOf(file: ForeignBook, mark: OwnMark): Map<string, string> {
  const found = new Map<string, string>();
  for (const row of file.sheets.at(-1)!.rows.slice(FIRST_WORKING)) {
    const [where, typed] = [row[ORIGINALS]?.value, row[ORIGINALS + 1]?.value];
    const place = typeof where === "string" && typeof typed === "string" ? findPlace(mark, where) : null;
    if (place) found.set(placeKey(place), typed as string);
  }
  return found;
}

/**
 * The book with its formulas as they were typed. Returns null when the file was changed so much that only its
 * plain formulas can be trusted. `lay` makes the pages with the formulas that are still trusted.
 */
export function restored(
  file: ForeignBook,
  mark: OwnMark,
  lay: (originals: Originals) => Laidout | { readonly refusal: string },
  desk: LayDesk,
): Restored | null {
  const originals = originalsOf(file, mark);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const laid = lay(originals);
    if (
      "refusal" in laid ||
      laid.sheets.slice(0, -1).some(({ page, headings }) => page === null || !headings)
    )
      return null;
    const engine = new Engine(laid.book, desk);
    const plain = plainBook(engine);
    const changed = changedCells(file, plain, originals);
    engine.destroy();
    if (changed === null) return null;
    if (changed.formulas.length === 0) return done(laid, plain, originals, changed.values);
    for (const place of changed.formulas) {
      const cell = file.sheets[place.page]!.rows[place.row + HEADING_LINES]?.[place.column];
      if (!originals.delete(placeKey(place)) || namesWorkings(file, cell)) return null;
    }
  }
  return null;
}

function done(laid: Laidout, plain: PlainBook, originals: Originals, values: readonly Place[]): Restored {
  const { book } = laid;
  const pages = book.pages.map((page, index) => {
    const notes = { ...page.notes };
    for (const [address, note] of Object.entries(page.notes)) {
      const { row, column } = rowAndColumn(address)!;
      const again = plain.sheets[index]!.rows[row + HEADING_LINES]?.[column]?.note ?? "";
      // What the writer adds to a note stands twice now: in the note that was read, and again behind it.
      const added = again.slice(note.length + 1);
      if (added === "") continue;
      // Files of earlier versions have no cautions.
      const earlier = added
        .split("\n")
        .filter((line) => !line.startsWith(CARE))
        .join("\n");
      for (const one of [added, earlier].filter(Boolean)) {
        if (note === one) delete notes[address];
        else if (note.endsWith(`\n${one}`)) notes[address] = note.slice(0, -one.length - 1);
        else continue;
        break;
      }
    }
    return { ...page, notes };
  });
  const count = [...originals.values()].filter((text) => isFormula(text)).length;
  const where = values.map((place) => fullAddress(book, place));
  return {
    laid: { ...laid, book: { ...book, pages } },
    said: [
      ...(count > 0 ? [phrase`${counted(count)} ${plural(count, "formula", "formulas")} of Ellwand ${plural(count, "comes", "come")} back as ${plural(count, "it was", "they were")} typed.`] : []),
      ...(where.length > 0 ? [phrase`${counted(where.length)} ${plural(where.length, "value", "values")} that other programs can't calculate ${plural(where.length, "differs", "differ")} now and ${plural(where.length, "is", "are")} calculated again: ${addresses(where)}.`] : []),
      phrase`What does not come back from a spreadsheet: trials, lays that were searched for, the units of single cells and what else a sheet has no place for.`,
    ],
  }; // biome-ignore format: sentences
}

/** A formula without blanks and marks, so that two of them can be compared. */
function bare(formula: string, signs: ForeignBook["signs"]): string {
  const text = signs === "26300" ? formula.replace(/^of:=/, "") : formula;
  return foreignParts(text, signs)
    .map((part) =>
      part.is === "space" ? "" : part.is === "call" ? part.text.replace(/^_xlfn\./, "") : part.text,
    )
    .join("");
}

interface Changed {
  /** Cells whose formula has changed; where no formula was written, whose value has changed. */
  readonly formulas: readonly Place[];
  /** Fixed values that have changed. */
  readonly values: readonly Place[];
}

/** Where the file differs from the book written again. Returns null when the lines of the workings differ. */
function changedCells(file: ForeignBook, plain: PlainBook, originals: Originals): Changed | null {
  const written = (formula: string) => (file.signs === "26300" ? openFormula(formula) : formula);
  const same = (cell: ForeignCell | undefined, again: PlainCell | undefined) =>
    cell?.formula === undefined || again?.formula === undefined
      ? cell?.formula === again?.formula
      : bare(cell.formula, file.signs) === bare(written(again.formula), file.signs);
  const lines = plain.sheets.at(-1)!.rows;
  const workings = file.sheets.at(-1)!.rows;
  for (const [i, line] of lines.entries()) {
    if (i < FIRST_WORKING || line[0] === undefined) continue;
    const texts = [0, 1, 2].every(
      (column) => (workings[i]?.[column]?.value ?? "") === (line[column]?.value ?? ""),
    );
    if (!texts || !same(workings[i]?.[3], line[3])) return null;
  }
  const [formulas, values]: [Place[], Place[]] = [[], []];
  for (const [page, sheet] of plain.sheets.slice(0, -1).entries()) {
    const rows = file.sheets[page]!.rows;
    for (let row = 0; row < Math.max(rows.length, sheet.rows.length) - HEADING_LINES; row += 1) {
      const [cells, again] = [rows[row + HEADING_LINES] ?? [], sheet.rows[row + HEADING_LINES] ?? []];
      for (let column = 0; column < Math.max(cells.length, again.length); column += 1) {
        const place = { page, row, column };
        if (!originals.has(placeKey(place))) continue;
        const [was, is] = [cells[column]?.value ?? null, again[column]?.value ?? null];
        if (!same(cells[column], again[column])) formulas.push(place);
        else if (again[column]?.formula === undefined && !near(was, is) && !isUnanswered(was, again[column]))
          // A figure that was typed over in the file is the file's now.
          (isFormula(originals.get(placeKey(place))!) ? values : formulas).push(place);
      }
    }
  }
  return { formulas, values };
}

/** Whether a cell has no answer here and had none there: the reasons may be in two languages. */
const isUnanswered = (was: unknown, again: PlainCell | undefined): boolean =>
  typeof was === "string" && was.startsWith("check: ") && again?.note?.includes(NO_ANSWER) === true;

/** Whether a formula of the file rests on its sheet of workings. */
const namesWorkings = (file: ForeignBook, cell: ForeignCell | undefined): boolean => {
  if (cell?.formula === undefined) return false;
  const workings = file.sheets.at(-1)!.title;
  const nowhere = { why: "" };
  let found = false;
  bookFormula(cell.formula, file.signs, {
    isFunction: () => true,
    name: () => ({ text: "" }),
    reference: (sheet) => {
      found ||= sheet === workings;
      return found ? nowhere : { text: "" };
    },
  });
  return found;
};
