/**
 * A book as a spreadsheet file of ISO/IEC 29500 whose formulas other programs calculate. Every formula is
 * worked once more without the sewing functions; one that gives another figure is written as its value.
 */

import type { CellValue, Cell as SheetCell } from "hucre/xlsx";
import { HyperFormula } from "hyperformula";
import type { Cell, Kind } from "../../functions/define.ts";
import { BOOK_UNITS } from "../../functions/units.ts";
import { cellAddress, type Place, placeKey } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { everyName } from "../book/names.ts";
import type { Page } from "../book/shape.ts";
import type { Engine } from "../engine/engine.ts";
import { estimateText } from "../engine/estimates.ts";
import { fittedText } from "../engine/fitted-text.ts";
import { hasAnswer } from "../engine/sentences.ts";
import { dayText, show } from "../engine/show.ts";
import { FIRST_WORKING, HEADING_LINES, LiveFormulas, NotPlain } from "./live-formula.ts";

/** The longest text of a cell in such a file. */
const LONGEST_TEXT = 32_767;

/** Functions that came to such files after the standard's first list; their names carry this mark. */
const LATER =
  /\b(SWITCH|IFS|MAXIFS|MINIFS|XLOOKUP|TEXTJOIN|CONCAT|XOR|IFNA|DAYS|ISOWEEKNUM|NUMBERVALUE|UNICHAR|UNICODE)\(/g;

/** A cell of a sheet: a formula without "=" and its value, or a value alone. */
interface Written {
  readonly formula?: string;
  readonly value: Cell;
  /** Why a formula, or a part of it, is a fixed value. */
  readonly fixed?: string;
}

export interface Spreadsheet {
  readonly bytes: Uint8Array;
  /** How many formulas stay alive, and how many cells are fixed values or rest on one. */
  readonly alive: number;
  readonly fixed: number;
}

export async function writeXlsx(engine: Engine): Promise<Spreadsheet> {
  const { book } = engine;
  const titles = sheetTitles([...book.pages.map(({ title }) => title), "Workings"]);
  const workings = titles.at(-1)!;
  const { pages, live, lines } = agreed(engine, titles);
  const names = everyName(book).map(({ name, of, block }) => ({
    name,
    range: live.area(block, [true, true]),
    ...(of !== null && { scope: titles[of]! }),
  }));
  const { writeXlsx: write } = await import("hucre/xlsx");
  let [alive, fixed] = [0, 0];
  const sheets = book.pages.map((page, index) => {
    const cells = new Map<string, Partial<SheetCell>>();
    pages[index]!.forEach((row, r) => {
      row.forEach((cell, c) => {
        const view = engine.view({ page: index, row: r, column: c });
        const estimate = estimateText(engine, { page: index, row: r, column: c });
        const fitted = fittedText(engine, { page: index, row: r, column: c });
        const note = [page.notes[cellAddress(r, c)], cell.fixed, estimate, fitted].filter(Boolean).join("\n");
        if (cell.formula !== undefined) alive += 1;
        if (cell.fixed !== undefined) fixed += 1;
        if (cell.value === null && cell.formula === undefined && note === "") return;
        cells.set(`${r + HEADING_LINES},${c}`, {
          ...sheetCell(cell),
          style: { numFmt: formatOf(view.kind, view.shown, cell.value, engine) },
          ...(note !== "" && { comment: { author: "Ellwand", text: note.slice(0, LONGEST_TEXT) } }),
        });
      });
    });
    page.columns.forEach(({ heading }, c) => {
      const said = headingOf(page, c, engine);
      if (heading !== "" || said !== "")
        cells.set(`0,${c}`, { value: said, type: "string", style: { font: { bold: true } } });
    });
    return {
      name: titles[index]!,
      rows: [],
      cells,
      columns: page.columns.map(({ width }) => ({ width: Math.max(2, Math.round(width / 7)) })),
      freezePane: { rows: HEADING_LINES, columns: page.frozen ?? 0 },
    };
  });
  const bytes = await write({
    sheets: [...sheets, workingsSheet(live, lines, workings, engine)],
    namedRanges: names,
    properties: { title: book.title, description: book.about },
  });
  return { bytes, alive, fixed };
}

const sheetCell = ({ formula, value }: Written): Partial<SheetCell> => {
  const kept = (typeof value === "string" ? value.slice(0, LONGEST_TEXT) : value) as CellValue;
  const type = typeof value === "number" ? "number" : typeof value === "boolean" ? "boolean" : "string";
  return formula === undefined
    ? { value: kept, type }
    : { value: kept, type: "formula", formula: formula.replace(LATER, "_xlfn.$1("), formulaResult: kept };
};

/** The workings' title lines, then a line for each argument and step. */
function workingsSheet(live: LiveFormulas, values: readonly Cell[], name: string, { book }: Engine) {
  const cells = new Map<string, Partial<SheetCell>>();
  const put = (row: number, texts: readonly string[]) =>
    texts.forEach((text, column) => {
      cells.set(`${row},${column}`, { value: text, type: "string" });
    });
  put(0, [`Lengths are in ${BOOK_UNITS[book.unit].noun}.`]);
  put(1, [
    "The rules are those for the figures of the day of saving: after a change of kind or style, work the book again in Ellwand.",
  ]);
  put(FIRST_WORKING - 1, ["Cell", "Call", "Figure", "Value", "How"]);
  live.lines.forEach(({ where, call, name: what, content, formula, how }, i) => {
    put(FIRST_WORKING + i, [where, call, what]);
    cells.set(
      `${FIRST_WORKING + i},3`,
      sheetCell(formula ? { formula: String(content).slice(1), value: values[i]! } : { value: content }),
    );
    cells.set(`${FIRST_WORKING + i},4`, { value: how, type: "string" });
  });
  return { name, rows: [], cells, columns: [16, 40, 20, 14, 60].map((width) => ({ width })) };
}

/** The cells of every page, those formulas that give another figure elsewhere written as their values. */
function agreed(engine: Engine, titles: readonly string[]) {
  const asValue = new Set<string>();
  for (;;) {
    const live = new LiveFormulas(engine, titles, titles.at(-1)!);
    const pages = engine.worked.pages.map(({ rows }, page) =>
      rows.map((cells, row) =>
        cells.map((typed, column) => written(engine, live, { page, row, column }, typed, asValue)),
      ),
    );
    const { wrong, lines } = worked(engine, live, pages, titles);
    if (wrong.length === 0) return { pages, live, lines };
    // A cell that only rests on one that gives another figure may be right once that one is.
    const keys = new Set(wrong.map(placeKey));
    const first = wrong.filter((place) => !engine.restsOn(place).some((under) => keys.has(placeKey(under))));
    for (const place of first.length > 0 ? first : wrong) asValue.add(placeKey(place));
  }
}

function written(
  engine: Engine,
  live: LiveFormulas,
  place: Place,
  typed: string,
  asValue: ReadonlySet<string>,
): Written {
  const view = engine.view(place);
  if (!isFormula(typed)) return { value: engine.value(place) };
  const { problem } = view;
  if (view.value === null && problem && !hasAnswer(problem))
    return { value: `check: ${problem.sentence}`, fixed: `${typed}: it has no answer in Ellwand` };
  const value = engine.value(place);
  const fixedBecause = (why: string) => ({ value, fixed: `${typed}: a fixed value, because ${why}` });
  if (asValue.has(placeKey(place))) return fixedBecause("other programs calculate it otherwise");
  try {
    const { text, fixed } = live.write(typed, place.page, engine.address(place));
    if (fixed.length === 0) return { formula: text, value };
    return { formula: text, value, fixed: `From Ellwand, fixed: ${fixed.join("; ")}` };
  } catch (reason) {
    if (reason instanceof NotPlain) return fixedBecause(reason.message);
    throw reason;
  }
}

const near = (a: unknown, b: Cell): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b))
    : (a ?? "") === (b ?? "");

/**
 * All formulas worked without the sewing functions: the cells whose formulas give another value so, and
 * the values of the workings' lines.
 */
function worked(
  engine: Engine,
  live: LiveFormulas,
  pages: readonly (readonly (readonly Written[])[])[],
  titles: readonly string[],
): { readonly wrong: readonly Place[]; readonly lines: readonly Cell[] } {
  const raw = ({ formula, value }: Written) =>
    formula !== undefined ? `=${formula}` : typeof value === "string" ? `'${value}` : value;
  const above = Array.from({ length: FIRST_WORKING }, () => []);
  const sheets = Object.fromEntries([
    ...pages.map((rows, i) => [titles[i], [[], ...rows.map((row) => row.map(raw))]]),
    [
      titles.at(-1),
      [...above, ...live.lines.map(({ content, formula }) => [
        null, null, null, formula ? content : raw({ value: content }),
      ])],
    ],
  ]); // biome-ignore format: a table
  const names = everyName(engine.book).flatMap(({ name, of, block }) =>
    of === null ? [{ name, expression: `=${live.area(block, [true, true])}` }] : [],
  );
  const hf = HyperFormula.buildFromSheets(sheets, { licenseKey: "gpl-v3" }, names);
  const wrong = pages.flatMap((rows, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap(({ formula, value }, column) => {
        if (formula === undefined) return [];
        const sheet = hf.getSheetId(titles[page]!)!;
        const found = hf.getCellValue({ sheet, row: row + HEADING_LINES, col: column });
        return near(found, value) ? [] : [{ page, row, column }];
      }),
    ),
  );
  const sheet = hf.getSheetId(titles.at(-1)!)!;
  const lines = live.lines.map((_, i) => {
    const value = hf.getCellValue({ sheet, row: FIRST_WORKING + i, col: 3 });
    return typeof value === "object" ? null : value;
  });
  hf.destroy();
  return { wrong, lines };
}

/** Titles of at most 31 letters, each once. */
function sheetTitles(titles: readonly string[]): string[] {
  const used = new Set<string>();
  return titles.map((title) => {
    let found = title.slice(0, 31).replace(/^'|'$/g, " ");
    for (let i = 2; used.has(found.toLowerCase()); i += 1) found = `${title.slice(0, 27)} ${i}`;
    used.add(found.toLowerCase());
    return found;
  });
}

/** A column's heading, with the unit of lengths. */
function headingOf({ columns }: Page, column: number, { book }: Engine): string {
  const { heading, kind } = columns[column]!;
  return kind === "length" ? `${heading} (${book.unit})`.trim() : heading;
}

function formatOf(kind: Kind, shown: string, value: Cell, { book }: Engine): string {
  if (typeof value !== "number") return "General";
  if (kind === "days") return shown === dayText(value) ? "yyyy-mm-dd" : "General";
  if (kind === "money") return "0.00";
  const under = kind === "length" ? /\/(\d+)/.exec(show(value, kind, book))?.[1] : undefined;
  if (under !== undefined) return `# ${"?".repeat(under.length)}/${under}`;
  return "General";
}
