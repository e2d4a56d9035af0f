/**
 * A book as the sheets of another program: formulas that it calculates without Ellwand, values where it can't,
 * notes, choices, widths, names. Every formula is worked once more without the sewing functions; one that gives
 * another figure is written as its value.
 */

import { HyperFormula } from "hyperformula";
import { withDecimalMark } from "../../functions/decimal.ts";
import type { Cell, Kind } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import { cellAddress, fullAddress, type Place, placeKey, rowAndColumn } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { hiddenRows } from "../book/hidden-rows.ts";
import { everyName, nameMeant } from "../book/names.ts";
import { MOST_ROWS, type Page } from "../book/shape.ts";
import { UNIT_WORDS } from "../book/unit-words.ts";
import { cautionsAt } from "../engine/cautions.ts";
import { readChoices } from "../engine/choices.ts";
import type { Engine } from "../engine/engine.ts";
import { estimateText } from "../engine/estimates.ts";
import { fittingOf } from "../engine/fitted-cells.ts";
import { fittedText } from "../engine/fitted-text.ts";
import { areaOf } from "../engine/references.ts";
import { hasAnswer } from "../engine/sentences.ts";
import { dayText, show } from "../engine/show.ts";
import { near } from "./agreement.ts";
import type { Rectangle } from "./foreign-book.ts";
import { FIRST_WORKING, HEADING_LINES, LiveFormulas, NotPlain } from "./live-formula.ts";
import { CARE, NO_ANSWER } from "./note-words.ts";
import { ownMark } from "./own-mark.ts";
import { allowed } from "./xml-text.ts";

/** A cell of a sheet: a formula without "=" in the signs of ISO/IEC 29500, and its value; or a value alone. */
export interface PlainCell {
  readonly formula?: string;
  readonly value: Cell;
  /** The code of its format, as ISO/IEC 29500-1, 18.8.31 has them. */
  readonly format?: string;
  readonly note?: string;
  readonly bold?: true;
}

export interface PlainSheet {
  readonly title: string;
  /** In pixels. */
  readonly widths: readonly number[];
  /** Columns that stay in sight. */
  readonly frozen: number;
  readonly hidden: ReadonlySet<number>;
  /** By row and column. */
  readonly rows: readonly (readonly (PlainCell | undefined)[])[];
  readonly choices: readonly {
    readonly where: Rectangle;
    /** The words, or the cells that hold them, with the name by which the book calls these cells. */
    readonly list: readonly string[] | { readonly area: string; readonly name?: string };
  }[];
}

export interface PlainBook {
  readonly sheets: readonly PlainSheet[];
  readonly names: readonly { readonly name: string; readonly range: string; readonly scope?: string }[];
  /** How many formulas stay alive, and how many cells are fixed values or rest on one. */
  readonly alive: number;
  readonly fixed: number;
}

/** The longest text of a cell of other programs. */
export const LONGEST_TEXT = 32_767;

/** The column of the workings where the formulas stand as they were typed, each after its cell. */
export const ORIGINALS = 5;

/** A cell before its format and notes are known. */
interface Written {
  readonly formula?: string;
  readonly value: Cell;
  /** Why a formula, or a part of it, is a fixed value. */
  readonly fixed?: string;
}

export function plainBook(engine: Engine): PlainBook {
  const { book } = engine;
  const titles = sheetTitles([...book.pages.map(({ title }) => title), WORKINGS]);
  const { pages, live, lines } = agreed(engine, titles);
  let [alive, fixed] = [0, 0];
  const sheets = book.pages.map((page, index): PlainSheet => {
    const cells = pages[index]!.map((row, r) =>
      row.map((cell, c): PlainCell | undefined => {
        const place = { page: index, row: r, column: c };
        const view = engine.view(place);
        const care = cautionsAt(engine, [place]).map((caution) => `${CARE}${caution}`);
        const said = [cell.fixed, estimateText(engine, place), fittedText(engine, place), ...care];
        const note = [page.notes[cellAddress(r, c)], ...said].filter(Boolean).join("\n");
        if (cell.formula !== undefined) alive += 1;
        if (cell.fixed !== undefined) fixed += 1;
        if (cell.value === null && cell.formula === undefined && note === "") return undefined;
        const decimals = page.cells?.[cellAddress(r, c)]?.decimals;
        return {
          value: cell.value,
          ...(cell.formula !== undefined && { formula: cell.formula }),
          format: formatOf(view.kind, view.shown, cell.value, decimals, engine),
          ...(note !== "" && { note: note.slice(0, LONGEST_TEXT) }),
        };
      }),
    );
    const headings = page.columns.map((_, c): PlainCell | undefined => {
      const said = headingOf(page, c, engine);
      return said === "" ? undefined : { value: said, bold: true };
    });
    return {
      title: titles[index]!,
      widths: page.columns.map(({ width }) => width),
      frozen: page.frozen ?? 0,
      hidden: new Set([...hiddenRows(page)].map((row) => row + HEADING_LINES)),
      rows: [headings, ...cells, ...notedBelow(page, cells.length)],
      choices: choicesOf(engine, index, live),
    };
  });
  const names = everyName(book).map(({ name, of, block }) => ({
    name,
    range: live.area(block, [true, true]),
    ...(of !== null && { scope: titles[of]! }),
  }));
  return { sheets: [...sheets, workingsSheet(live, lines, titles.at(-1)!, engine)], names, alive, fixed };
}

/** Rows beyond the last typed cell that have notes only. */
function notedBelow({ notes, rows }: Page, from: number): (PlainCell | undefined)[][] {
  const below: (PlainCell | undefined)[][] = [];
  for (const [address, note] of Object.entries(notes)) {
    const { row, column } = rowAndColumn(address)!;
    if (row < rows.length) continue;
    while (below.length <= row - from) below.push([]);
    below[row - from]![column] = { value: null, note };
  }
  return below;
}

/** What the cells of a page are chosen from. */
function choicesOf(engine: Engine, index: number, live: LiveFormulas): PlainSheet["choices"] {
  const page = engine.book.pages[index]!;
  const shown = (place: Place) => engine.view(place).shown;
  const listOf = (written: string): PlainSheet["choices"][number]["list"] | null => {
    if (!isFormula(written)) return readChoices(engine.book, index, written, shown);
    const tree = formulaTree(written);
    const area = areaOf(engine.book, tree, index);
    const called = tree.is === "name" && nameMeant(engine.book, tree.text, index);
    const name = called && called.of === null ? { name: called.name } : {};
    return area && { area: live.area(area, [true, true]), ...name };
  };
  const last = Math.min(MOST_ROWS, Math.max(page.rows.length, 1) + 100);
  const columns = page.columns.flatMap(({ choices }, column) => {
    const list = choices === undefined ? null : listOf(choices);
    const where = { top: HEADING_LINES, left: column, bottom: last, right: column };
    return list ? [{ where, list }] : [];
  });
  const cells = Object.entries(page.cells ?? {}).flatMap(([address, { choices }]) => {
    const list = choices === undefined ? null : listOf(choices);
    const { row, column } = rowAndColumn(address)!;
    const line = row + HEADING_LINES;
    return list ? [{ where: { top: line, left: column, bottom: line, right: column }, list }] : [];
  });
  return [...columns, ...cells];
}

/**
 * The title of the sheet of workings. In every language it is the same, as are the names of its lines and what is
 * added to notes: `own-file.ts` writes the book once more and compares.
 */
const WORKINGS = "Workings";

/** The workings' title lines, then a line for each argument and step; beside them, what was typed in Ellwand. */
function workingsSheet(
  live: LiveFormulas,
  values: readonly Cell[],
  title: string,
  engine: Engine,
): PlainSheet {
  const { book } = engine;
  const line = (...texts: string[]) => texts.map((value): PlainCell => ({ value }));
  const rows: (PlainCell | undefined)[][] = [
    line(phrase`Lengths are in ${UNIT_WORDS[book.unit]}.`),
    line(
      phrase`The rules are those for the figures of the day of saving: after a change of kind or style, work the book again in Ellwand.`,
    ),
    line(ownMark(book).slice(0, LONGEST_TEXT)),
    line(
      ...[phrase`Cell`, phrase`Call`, phrase`Figure`, phrase`Value`, phrase`How`],
      ...[phrase`Formula of`, phrase`As typed in Ellwand`],
    ),
  ];
  live.lines.forEach(({ where, call, name, content, formula, how }, i) => {
    const cell = formula ? { formula: String(content).slice(1), value: values[i]! } : { value: content };
    rows.push([...line(where, call, name), cell, ...line(how)]);
  });
  let row = FIRST_WORKING;
  for (const [page, { rows: typed }] of book.pages.entries())
    for (const [r, cells] of typed.entries())
      for (const [column, text] of cells.entries()) {
        const place = { page, row: r, column };
        const fitted = text !== "" && fittingOf(book, place) !== undefined;
        const kept = isFormula(text) || fitted || isTypedOtherwise(engine, place, text);
        if (!kept || text.length > LONGEST_TEXT) continue;
        while (rows.length <= row) rows.push([]);
        while (rows[row]!.length < ORIGINALS) rows[row]!.push(undefined);
        rows[row]!.push(...line(fullAddress(book, place), text));
        row += 1;
      }
  return {
    title,
    widths: [112, 280, 140, 98, 420, 112, 420],
    frozen: 0,
    hidden: new Set(),
    rows,
    choices: [],
  };
}

/** Whether a figure is typed in a way that its value does not tell, such as 1 1/2, 18.00 or 42 cm in a book of inches. */
function isTypedOtherwise(engine: Engine, place: Place, text: string): boolean {
  const figure = engine.value(place);
  if (typeof figure !== "number") return false;
  return text !== withDecimalMark(String(figure), engine.book.decimal) && text !== dayText(figure);
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
    return { value: `check: ${problem.sentence}`, fixed: `${typed}: ${NO_ANSWER}` };
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
    let found = allowed(title).slice(0, 31).replace(/^'|'$/g, " ");
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

function formatOf(
  kind: Kind,
  shown: string,
  value: Cell,
  decimals: number | undefined,
  { book }: Engine,
): string {
  if (typeof value !== "number") return "General";
  if (kind === "days") return shown === dayText(value) ? "yyyy-mm-dd" : "General";
  if (decimals !== undefined) return decimals === 0 ? "0" : `0.${"0".repeat(decimals)}`;
  if (kind === "money") return "0.00";
  if (shown.endsWith("%")) return "0.##%";
  const under = kind === "length" ? /\/(\d+)/.exec(show(value, kind, book))?.[1] : undefined;
  if (under !== undefined) return `# ${"?".repeat(under.length)}/${under}`;
  return "General";
}
