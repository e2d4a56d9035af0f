/** A book as a spreadsheet file of ISO/IEC 29500 whose formulas other programs calculate. */

import type { CellValue, Cell as SheetCell } from "hucre/xlsx";
import { cellAddress } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { HEADING_LINES } from "./live-formula.ts";
import { LONGEST_TEXT, type PlainCell, type PlainSheet, plainBook } from "./plain-book.ts";
import { allowed } from "./xml-text.ts";

/** Functions that came to such files after the standard's first list; their names carry this mark. */
const LATER =
  /\b(SWITCH|IFS|MAXIFS|MINIFS|XLOOKUP|TEXTJOIN|CONCAT|XOR|IFNA|DAYS|ISOWEEKNUM|NUMBERVALUE|UNICHAR|UNICODE)\(/g;

/** The longest list of words that may stand in a validation itself, in characters (ISO/IEC 29500-1, 18.3.1.32). */
const LONGEST_LIST = 250;

export interface Spreadsheet {
  readonly bytes: Uint8Array;
  /** How many formulas stay alive, and how many cells are fixed values or rest on one. */
  readonly alive: number;
  readonly fixed: number;
}

export async function writeXlsx(engine: Engine): Promise<Spreadsheet> {
  const { book } = engine;
  const { sheets, names, alive, fixed } = plainBook(engine);
  const lists = new Lists(sheets.at(-1)!.title);
  const { writeXlsx: write } = await import("hucre/xlsx");
  const written = sheets.map((sheet, index) => sheetOf(sheet, lists, index < sheets.length - 1));
  for (const [key, cell] of lists.cells) written.at(-1)!.cells.set(key, cell);
  const bytes = await write({
    sheets: written,
    namedRanges: [...names],
    properties: { title: allowed(book.title), description: allowed(book.about) },
  });
  return { bytes, alive, fixed };
}

/** The column of the workings where lists of choices begin. */
const FIRST_LIST = 9;

/** Lists of words that are too long for a validation, or have a comma, stand at the right of the workings. */
class Lists {
  readonly cells = new Map<string, Partial<SheetCell>>();
  readonly #sheet: string;
  readonly #known = new Map<string, string>();

  constructor(sheet: string) {
    this.#sheet = sheet;
  }

  /** The cells of a list, as a formula names them. */
  area(words: readonly string[]): string {
    const key = words.join("\n");
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const column = FIRST_LIST + this.#known.size;
    words.forEach((value, row) => {
      this.cells.set(`${row},${column}`, { value: allowed(value), type: "string" });
    });
    const ends = [cellAddress(0, column), cellAddress(words.length - 1, column)];
    const area = `'${this.#sheet}'!${ends.map((end) => end.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2")).join(":")}`;
    this.#known.set(key, area);
    return area;
  }
}

function sheetOf(sheet: PlainSheet, lists: Lists, hasHeadings: boolean) {
  const cells = new Map<string, Partial<SheetCell>>();
  sheet.rows.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell) cells.set(`${r},${c}`, sheetCell(cell));
    });
  });
  return {
    name: sheet.title,
    rows: [],
    cells,
    columns: sheet.widths.map((width) => ({ width: Math.max(2, Math.round(width / 7)) })),
    ...(hasHeadings && { freezePane: { rows: HEADING_LINES, columns: sheet.frozen } }),
    ...(sheet.hidden.size > 0 && {
      rowDefs: new Map([...sheet.hidden].map((row) => [row, { hidden: true }])),
    }),
    dataValidations: sheet.choices.map(({ where, list }) => {
      const fits =
        !("area" in list) && list.join(",").length <= LONGEST_LIST && !list.some((word) => /[,"]/.test(word));
      const from =
        "area" in list
          ? { formula1: list.name ?? list.area }
          : fits
            ? { values: list.map(allowed) }
            : { formula1: lists.area(list) };
      const range = `${cellAddress(where.top, where.left)}:${cellAddress(where.bottom, where.right)}`;
      return { type: "list" as const, range, allowBlank: true, showErrorMessage: false, ...from };
    }),
  };
}

function sheetCell({ formula, value, format, note, bold }: PlainCell): Partial<SheetCell> {
  const kept = (typeof value === "string" ? cellText(value) : value) as CellValue;
  const type = typeof value === "number" ? "number" : typeof value === "boolean" ? "boolean" : "string";
  const style = { ...(format !== undefined && { numFmt: format }), ...(bold && { font: { bold } }) };
  return {
    ...(formula === undefined
      ? { value: kept, type }
      : {
          value: kept,
          type: "formula",
          formula: allowed(formula).replace(LATER, "_xlfn.$1("),
          formulaResult: kept,
        }),
    ...(Object.keys(style).length > 0 && { style }),
    ...(note !== undefined && { comment: { author: "Ellwand", text: allowed(note) } }),
  };
}

/** What reads like an escaped sign is escaped itself (ISO/IEC 29500-1, 22.9.2.19). */
const cellText = (text: string): string =>
  allowed(text.slice(0, LONGEST_TEXT)).replace(/_x(?=[0-9a-f]{4}_)/gi, "_x005F_x");
