/** A spreadsheet file of ISO/IEC 29500 as plain data. */

import type { CellValue, DataValidation, Sheet, Cell as SheetCell, Workbook } from "hucre/xlsx";
import { phrase, plural } from "../../functions/phrase.ts";
import { cellAddress, columnNumber } from "../book/address.ts";
import type {
  ForeignBook,
  ForeignCell,
  ForeignChoices,
  ForeignSheet,
  Rectangle,
  ShownAs,
} from "./foreign-book.ts";
import { copiedForeign } from "./foreign-formula.ts";
import { BadZip, requireXml, type ZipPart } from "./zip-parts.ts";

/** The size, the entities and the form of each part are checked before the library sees it. Throws `BadZip`. */
export async function readXlsx(bytes: Uint8Array, parts: ReadonlyMap<string, ZipPart>): Promise<ForeignBook> {
  for (const part of parts.values()) if (/\.(?:xml|rels)$/i.test(part.name)) requireXml(part);
  const { readXlsx: read } = await import("hucre/xlsx");
  let workbook: Workbook;
  try {
    workbook = await read(bytes, { readStyles: true });
  } catch (reason) {
    throw new BadZip(whyUnread(reason));
  }
  const names = [...parts.keys()];
  return {
    signs: "29500",
    title: workbook.properties?.title?.trim() || null,
    about: workbook.properties?.description?.trim() || null,
    sheets: workbook.sheets.map((sheet) => sheetOf(sheet, workbook.dateSystem === "1904")),
    names: (workbook.namedRanges ?? []).map(({ name, range, scope }) => ({
      name,
      sheet: scope ?? null,
      formula: range,
    })),
    macros: names.some((name) => /vbaProject|macrosheets\//i.test(name)),
    elsewhere: names.some((name) => /externalLinks\//i.test(name)),
  };
}

/** What the library says is for programmers; where the file is at fault follows in its words, cut short. */
function whyUnread(reason: unknown): string {
  const said = reason instanceof Error ? reason.message : String(reason);
  const size = /spans (\d+) rows x (\d+) columns/.exec(said);
  if (size)
    return phrase`a sheet reaches over ${Number(size[1]).toLocaleString("en")} rows and ${Number(size[2]).toLocaleString("en")} columns, too many to read; delete what stands far out, or save a part of it`;
  return phrase`the spreadsheet in it is damaged (${said.replace(/\s+/g, " ").slice(0, 120)}); save it again in the program it was made with`;
}

function sheetOf(sheet: Sheet, since1904: boolean): ForeignSheet {
  const cells = sheet.cells ?? new Map<string, SheetCell>();
  const notes = new Map<string, string>();
  let links = 0;
  for (const [key, { comment, hyperlink }] of cells) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    if (hyperlink) links += 1;
    if (comment?.text.trim()) notes.set(cellAddress(row, column), comment.text.trim());
  }
  for (const { ref, text } of sheet.threadedComments ?? []) {
    if (ref === undefined) continue;
    const before = notes.get(ref);
    notes.set(ref, before && !before.startsWith("[Threaded comment]") ? `${before}\n${text}` : text);
  }
  const shared = sharedFormulas(cells);
  const rows = sheet.rows.map((row, r) =>
    row.map((value, c) => foreignCell(value, cells.get(`${r},${c}`), r, c, shared, since1904)),
  );
  // A formula without a value may stand beyond the values.
  for (const [key, cell] of cells) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    if (cell.formula === undefined || rows[row]?.[column]) continue;
    while (rows.length <= row) rows.push([]);
    rows[row]![column] = foreignCell(null, cell, row, column, shared, since1904);
  }
  const columns = sheet.columns ?? [];
  const hiddenColumns = columns.flatMap(({ hidden }, i) => (hidden ? [i] : []));
  const counted = (list: readonly unknown[] | undefined, words: (count: number) => string) =>
    list?.length ? [words(list.length)] : [];
  return {
    title: sheet.name,
    hidden: sheet.hidden === true || sheet.veryHidden === true,
    rows,
    merged: (sheet.merges ?? []).map(({ startRow, startCol, endRow, endCol }) => ({
      top: startRow,
      left: startCol,
      bottom: endRow,
      right: endCol,
    })),
    // A width is a number of digits of the usual type, 7 pixels each, with 5 beside them (ISO/IEC 29500-1, 18.3.1.13).
    widths: new Map(
      columns.flatMap(({ width }, i) => (width === undefined ? [] : [[i, Math.round(width * 7)] as const])),
    ),
    hiddenRows: new Set([...(sheet.rowDefs ?? [])].flatMap(([row, { hidden }]) => (hidden ? [row] : []))),
    hiddenColumns: new Set(hiddenColumns),
    notes,
    choices: (sheet.dataValidations ?? []).flatMap(choicesOf),
    frozen: sheet.freezePane?.columns ?? 0,
    links,
    ignored: [
      ...counted(sheet.images, (n) => phrase`${plural(n, "# picture", "# pictures")}`),
      ...counted(sheet.charts, (n) => phrase`${plural(n, "# chart", "# charts")}`),
      ...(sheet.textBoxes?.length ? [phrase`${sheet.textBoxes.length} boxes of text`] : []),
      ...counted(sheet.pivotTables, (n) => phrase`${plural(n, "# pivot table", "# pivot tables")}`),
      ...counted(
        sheet.conditionalRules,
        (n) => phrase`${plural(n, "# rule of colouring", "# rules of colouring")}`,
      ),
    ],
  };
}

/** The first cell of each shared formula: the others have only its number. */
function sharedFormulas(cells: ReadonlyMap<string, SheetCell>) {
  const found = new Map<number, { formula: string; row: number; column: number }>();
  for (const [key, { formula, formulaSharedIndex }] of cells) {
    if (!formula || formulaSharedIndex === undefined) continue;
    const [row, column] = key.split(",").map(Number) as [number, number];
    found.set(formulaSharedIndex, { formula, row, column });
  }
  return found;
}

function foreignCell(
  value: CellValue | undefined,
  cell: SheetCell | undefined,
  row: number,
  column: number,
  shared: ReturnType<typeof sharedFormulas>,
  since1904: boolean,
): ForeignCell | undefined {
  const formula = formulaOf(cell, row, column, shared);
  const blank = value === null || value === undefined || value === "";
  if (formula === undefined && blank) return undefined;
  const format = cell?.style?.numFmt ?? "";
  const isTime =
    value instanceof Date && format !== "" && !/[yd]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ""));
  // A duration is the number of the file itself, from whichever day the file counts.
  const from = isTime && since1904 ? DAYS_TO_1904 : 0;
  const plain = value instanceof Date ? serialOf(value, since1904) - from : (value ?? null);
  const as: ShownAs =
    cell?.type === "error" ||
    (formula !== undefined && typeof plain === "string" && /^#[A-Z/0!?]+$/.test(plain))
      ? "error"
      : value instanceof Date
        ? isTime
          ? "time"
          : "date"
        : typeof plain === "number"
          ? shownAs(format)
          : typeof plain === "boolean"
            ? "flag"
            : "text";
  const places = as === "plain" || as === "money" ? placesOf(format) : 0;
  return { value: plain, as, ...(places > 0 && { places }), ...(formula !== undefined && { formula }) };
}

function formulaOf(
  cell: SheetCell | undefined,
  row: number,
  column: number,
  shared: ReturnType<typeof sharedFormulas>,
): string | undefined {
  if (cell?.formula === undefined) return undefined;
  if (cell.formula !== "") return cell.formula;
  const first = shared.get(cell.formulaSharedIndex ?? -1);
  return first && copiedForeign(first.formula, row - first.row, column - first.column);
}

const DAY = 86_400_000;
/** From 30 December 1899 to 1 January 1904. */
const DAYS_TO_1904 = 1462;

/** A date as a number of days since 30 December 1899; before March 1900 such files count a day more than there was. */
function serialOf(date: Date, since1904: boolean): number {
  const days = (date.getTime() - Date.UTC(1899, 11, 30)) / DAY;
  const serial = !since1904 && days < 61 ? days - 1 : days;
  return Math.round(serial * DAY) / DAY;
}

/** What a number is shown as, by its format's code (ISO/IEC 29500-1, 18.8.31). */
export function shownAs(format: string): ShownAs {
  const plain = format.replace(/"[^"]*"|\\./g, "");
  if (plain.includes("%")) return "share";
  if (/\?+\s*\/\s*(?:\?|\d)/.test(plain)) return "fraction";
  if (/[$€£¥₣₤]|\[\$[^\]-]/.test(format) || /"(?:EUR|USD|GBP|CHF|kr|zł|Kč)\.?\s*"/.test(format))
    return "money";
  return "plain";
}

/** The decimal places that a format always shows: two of `#,##0.00 "EUR"`. */
export function placesOf(format: string): number {
  const bare = format.split(";")[0]!.replace(/"[^"]*"|\\./g, "");
  const [, zeros = ""] = /0\.(0+)(?![#?0])/.exec(bare) ?? [];
  return Math.min(6, zeros.length);
}

/** The list of a validation: its words, or the cells that hold them. */
function choicesOf({ type, range, values, formula1 }: DataValidation): ForeignChoices[] {
  if (type !== "list") return [];
  const words = values ?? (formula1?.startsWith('"') ? formula1.slice(1, -1).split(",") : undefined);
  const list = words ?? (formula1 ? { formula: formula1 } : undefined);
  if (!list) return [];
  return range.split(/\s+/).flatMap((one) => {
    const where = rectangle(one);
    return where ? [{ where, list }] : [];
  });
}

/** "B2:C9" or "B2". */
export function rectangle(text: string): Rectangle | null {
  const found = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i.exec(text.trim());
  if (!found) return null;
  const [, left, top, right = left, bottom = top] = found;
  return {
    top: Number(top) - 1,
    left: columnNumber(left!),
    bottom: Number(bottom) - 1,
    right: columnNumber(right!),
  };
}
