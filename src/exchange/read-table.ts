/** A table of another program, whatever its kind, as pages of a book. Nothing in it is run, and no other file is opened. */

import type { Decimal } from "../../functions/decimal.ts";
import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";
import { blankBook, LONGEST } from "../book/shape.ts";
import type { LayDesk } from "../engine/lay-desk.ts";
import { agreed } from "./agreement.ts";
import { MOST_BYTES, type Refused, tooLarge } from "./decode.ts";
import type { ForeignBook } from "./foreign-book.ts";
import { withKnownHeadings } from "./foreign-headings.ts";
import { markOf, type Originals, restored } from "./own-file.ts";
import { readCsv } from "./read-csv.ts";
import { type Laidout, sheetsToBook } from "./sheets-to-book.ts";
import type { TableForm, Understood } from "./table-form.ts";
import { BadZip, zipParts } from "./zip-parts.ts";

/** What a file is read into. */
export interface Receiver {
  /** The decimal mark of the book that its figures are typed into; null for a book of its own, which keeps the mark it was written with. */
  readonly decimal: Decimal | null;
  /** The unit that lengths are taken to be in when the file does not say. */
  readonly unit: Unit;
  /** Answers the lays of formulas that Ellwand wrote itself. */
  readonly desk: LayDesk;
}

/** A file whose parts are read, so that it can be understood in another way without reading it again. */
export type ReadTable =
  | { readonly sheets: ForeignBook; readonly title: string }
  | { readonly separated: Uint8Array; readonly title: string };

/** The title of what is read from a file: its name without folders, its ending, and signs that a title can't have. */
export const titleOf = (name: string): string =>
  name
    .replace(/^.*[\\/]/, "")
    .replace(/\.[^.]*$/, "")
    .replace(/[[\]:*?/\\']|\p{Cc}/gu, " ")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, LONGEST.pageTitle - 5) || "Imported";

/** Reads a file's bytes; a file of too many bytes is refused before they are looked at. */
export async function readTable(bytes: Uint8Array, name: string): Promise<ReadTable | Refused> {
  if (bytes.length > MOST_BYTES) return { refusal: tooLarge(bytes.length) };
  const title = titleOf(name);
  const signs = String.fromCharCode(...bytes.subarray(0, 4));
  if (signs.startsWith("\u00d0\u00cf\u0011\u00e0")) return { refusal: oldContainer(bytes) };
  if (!signs.startsWith("PK")) return { separated: bytes, title };
  try {
    const parts = zipParts(bytes);
    const has = (pattern: RegExp) => [...parts.keys()].some((part) => pattern.test(part));
    if (has(/^xl\/workbook\.bin$/i))
      return {
        refusal: phrase`it is a spreadsheet in a binary form that is not read here; save it as .xlsx or .ods`,
      };
    if (has(/^xl\//i)) {
      const { readXlsx } = await import("./read-xlsx.ts");
      return { sheets: await readXlsx(bytes, parts), title };
    }
    if (parts.has("content.xml")) {
      const { readOds } = await import("./read-ods.ts");
      return { sheets: readOds(parts), title };
    }
    return { refusal: phrase`it is a packed file with no spreadsheet in it; choose the table itself` };
  } catch (reason) {
    if (reason instanceof BadZip) return { refusal: reason.message };
    throw reason;
  }
}

/** The container of old spreadsheets, and of new ones behind a password: its directory names the stream in UTF-16. */
function oldContainer(bytes: Uint8Array): string {
  const name = [..."EncryptedPackage"].flatMap((sign) => [sign.charCodeAt(0), 0]);
  const at = bytes.findIndex((_, i) => name.every((byte, k) => bytes[i + k] === byte));
  return at >= 0
    ? phrase`it is encrypted; open it with its password and save it without one`
    : phrase`it is a spreadsheet or a document of an old kind; save it as .xlsx, .ods or CSV`;
}

/** What was read, understood as `form` says or as can be found out. */
export function understandTable(read: ReadTable, form: TableForm, receiver: Receiver): Understood | Refused {
  const understood = "separated" in read ? understandSeparated(read, form, receiver) : understandSheets(read, form, receiver);
  return "refusal" in understood || ("sheets" in read && markOf(read.sheets)) ? understood : calledKnown(understood, form);
} // biome-ignore format: choices

/** The same with headings of another language as the functions know them. */
function calledKnown(understood: Understood, form: TableForm): Understood {
  const { book, sheets } = understood;
  const pages = [...book.pages];
  const done = sheets.map((sheet) => {
    if (sheet.page === null || !sheet.headings) return sheet;
    const { page, called, said } = withKnownHeadings(pages[sheet.page]!, form.sheets?.[sheet.sheet]?.called);
    pages[sheet.page] = page;
    return { ...sheet, called, said: [...sheet.said, ...said] };
  });
  return { ...understood, book: { ...book, pages }, sheets: done };
}

function understandSheets(
  read: Extract<ReadTable, { readonly sheets: ForeignBook }>,
  form: TableForm,
  receiver: Receiver,
): Understood | Refused {
  const { sheets: file } = read;
  const title = (file.title ?? read.title).slice(0, LONGEST.title);
  const mark = markOf(file);
  const last = file.sheets.length - 1;
  // A file of Ellwand's own needs its workings only where its own formulas are not sure.
  if (mark && form.sheets?.[last]?.take !== true) {
    const lay = (originals: Originals) => sheetsToBook(file, title, receiver, form, { mark, originals });
    const back = restored(file, mark, lay, receiver.desk);
    if (back) return understoodSheets(file, back.laid, receiver.desk, back.said);
  }
  const laid = sheetsToBook(file, title, receiver, form, mark && { mark });
  if ("refusal" in laid) return laid;
  return understoodSheets(file, laid, receiver.desk);
}

function understoodSheets(
  file: ForeignBook,
  laid: Laidout,
  desk: LayDesk,
  more: readonly string[] = [],
): Understood {
  const { book, said } = agreed(laid.book, laid.revived, desk);
  return {
    what: phrase`a spreadsheet of ISO/IEC ${file.signs}`,
    book,
    sheets: laid.sheets.map((sheet) => ({
      ...sheet,
      said: [...sheet.said, ...(said.get(sheet.page ?? -1) ?? [])],
    })),
    said: [...laid.said, ...more],
  };
}

function understandSeparated(
  { separated, title }: { readonly separated: Uint8Array; readonly title: string },
  form: TableForm,
  { decimal: given, unit: usual }: Receiver,
): Understood | Refused {
  const decimal = given ?? "point";
  const own = form.sheets?.[0];
  const { delimiter, encoding } = form;
  const read = readCsv(separated, title, decimal, {
    delimiter,
    encoding,
    decimal: form.decimal,
    dates: form.dates,
    unit: form.unit,
    usual,
    headings: own?.headings,
    kinds: own?.kinds,
  });
  if ("refusal" in read) return read;
  const { page, understood, found } = read;
  const { unit } = found;
  return {
    what: phrase`separated values`,
    book: {
      ...blankBook(title, unit, DEFAULT_MARK[unit]),
      ...(decimal === "comma" && { decimal }),
      pages: [page],
    },
    sheets: [
      { sheet: 0, title, take: true, headings: found.headings, rows: page.rows.length, columns: page.columns.length, page: 0, said: [] },
    ],
    said: understood,
    ...found,
  }; // biome-ignore format: a list
}
