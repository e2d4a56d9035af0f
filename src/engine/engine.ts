/**
 * The calculating side of a book: HyperFormula with the sewing functions, kept equal to a book by
 * looking at what is no longer the same object. The book is the truth; this holds values only.
 */
import { DetailedCellError, HyperFormula } from "hyperformula";
import type { Kind } from "../../functions/define.ts";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { findPlace, fullAddress, nameOf, type Place } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS, typedAt } from "../book/shape.ts";
import { engineConfig } from "./config.ts";
import { forEngine, toEngine, understand } from "./content.ts";
import { Kinds } from "./kinds.ts";
import { precedents } from "./references.ts";
import { type Call, type Context, register } from "./register.ts";
import { type Scene, sentence, unreadable } from "./sentences.ts";
import { show } from "./show.ts";
import { placeKey, type Uncounted, type UncountedCells, uncountedCells } from "./uncounted.ts";

register();

const functionNames = new Set(HyperFormula.getRegisteredFunctionNames("enGB"));

/** "Measure!C4" as a name's formula has it: "=Measure!$C$4". */
const fixed = (address: string): string => `=${address.replace(/([A-Za-z]+)(\d+)$/, "$$$1$$$2")}`;

/** Answers a lay question, with the lays that the book keeps at hand. */
export type LayDesk = (question: LayQuestion, found: Book["lays"]) => Lay | { readonly refusal: string };

/** Something to look at in a cell: an error, a verdict that is not ok, or a typed cell that counts as nothing. */
export interface Look {
  readonly is: "error" | "verdict" | "uncounted";
  readonly sentence: string;
  /** The cell where it begins; another cell than this one when this one only waits for it. */
  readonly from: Place;
}

export interface CellView {
  readonly typed: string;
  readonly shown: string;
  readonly value: number | string | boolean | null;
  readonly kind: Kind;
  readonly worked: boolean;
  readonly look: Look | null;
  readonly name: string | undefined;
}

const lookAt = ({ place, sentence }: Uncounted): Look => ({ is: "uncounted", sentence, from: place });

export class Engine {
  #book: Book;
  #desk: LayDesk;
  #hf: HyperFormula;
  #kinds: Kinds;
  #uncounted: { readonly book: Book; readonly cells: UncountedCells } | null = null;
  readonly #context: Context;
  /** The cells that lay pieces, by sheet, row and column: a better lay is no cell that could wake them. */
  readonly #laid = new Map<string, { readonly sheet: number; readonly row: number; readonly col: number }>();

  constructor(book: Book, desk: LayDesk) {
    this.#desk = desk;
    this.#context = {
      unit: book.unit,
      mark: book.mark,
      plan: (question) => this.#desk(question, this.#book.lays),
      laid: (cell) => this.#laid.set(`${cell.sheet}.${cell.row}.${cell.col}`, cell),
    };
    this.#book = book;
    this.#kinds = new Kinds(book);
    this.#hf = this.#build();
  }

  get book(): Book {
    return this.#book;
  }

  get kinds(): Kinds {
    return this.#kinds;
  }

  #build(): HyperFormula {
    const { pages, unit, decimal, names } = this.#book;
    const sheets = Object.fromEntries(
      pages.map((page) => [
        page.title,
        page.rows.map((row) =>
          row.map((typed, i) => forEngine(understand(typed, page.columns[i]?.kind ?? "any", unit, decimal))),
        ),
      ]),
    );
    const expressions = Object.entries(names).map(([name, address]) => ({
      name,
      expression: fixed(address),
    }));
    this.#laid.clear();
    const limits = { maxRows: MOST_ROWS, maxColumns: MOST_COLUMNS, undoLimit: 0 };
    return HyperFormula.buildFromSheets(sheets, { ...engineConfig(this.#context), ...limits }, expressions);
  }

  /** Follows the book to `next`. Only what changed is calculated anew, unless the pages themselves changed. */
  become(next: Book): void {
    const old = this.#book;
    if (next === old) return;
    this.#book = next;
    this.#kinds = this.#kinds.follow(next);
    const samePages =
      old.pages.length === next.pages.length &&
      old.pages.every((page, i) => page.title === next.pages[i]!.title);
    if (!samePages || old.unit !== next.unit || old.mark !== next.mark || old.decimal !== next.decimal) {
      Object.assign(this.#context, { unit: next.unit, mark: next.mark });
      this.#hf.destroy();
      this.#hf = this.#build();
      return;
    }
    this.#hf.batch(() => {
      this.#followNames(old.names, next.names);
      next.pages.forEach((page, index) => {
        this.#followPage(old, page, index);
      });
      if (old.lays !== next.lays) this.#wakeLays();
    });
  }

  #followNames(old: Book["names"], next: Book["names"]): void {
    if (old === next) return;
    for (const name of Object.keys(old)) if (!Object.hasOwn(next, name)) this.#hf.removeNamedExpression(name);
    for (const [name, address] of Object.entries(next)) {
      if (!Object.hasOwn(old, name)) this.#hf.addNamedExpression(name, fixed(address));
      else if (old[name] !== address) this.#hf.changeNamedExpression(name, fixed(address));
    }
  }

  #followPage(old: Book, page: Book["pages"][number], index: number): void {
    const before = old.pages[index]!;
    if (before === page) return;
    const kindsChanged =
      before.columns.length !== page.columns.length ||
      before.columns.some(({ kind }, i) => kind !== page.columns[i]!.kind);
    const rows = Math.max(before.rows.length, page.rows.length);
    for (let row = 0; row < rows; row += 1) {
      const was = before.rows[row] ?? [];
      const is = page.rows[row] ?? [];
      if (was === is && !kindsChanged) continue;
      for (let column = 0; column < Math.max(was.length, is.length); column += 1) {
        const typed = is[column] ?? "";
        if (typed === (was[column] ?? "") && !kindsChanged) continue;
        const content = understand(
          typed,
          page.columns[column]?.kind ?? "any",
          this.#book.unit,
          this.#book.decimal,
        );
        this.#hf.setCellContents({ sheet: this.#sheet(index), row, col: column }, forEngine(content));
      }
    }
  }

  #wakeLays(): void {
    for (const { sheet, row, col } of [...this.#laid.values()]) {
      const page = this.#book.pages.findIndex((_, index) => this.#sheet(index) === sheet);
      const typed = typedAt(this.#book, page, row, col);
      if (isFormula(typed))
        this.#hf.setCellContents({ sheet, row, col }, toEngine(typed, this.#book.unit, this.#book.decimal));
    }
  }

  #sheet(page: number): number {
    return this.#hf.getSheetId(this.#book.pages[page]!.title)!;
  }

  #address({ page, row, column }: Place) {
    return { sheet: this.#sheet(page), row, col: column };
  }

  #raw(place: Place): number | string | boolean | null | DetailedCellError {
    return this.#hf.getCellValue(this.#address(place));
  }

  /** The bare value of a cell; an error is null. */
  value(place: Place): number | string | boolean | null {
    const raw = this.#raw(place);
    return raw instanceof DetailedCellError ? null : raw;
  }

  /** Everything a screen or a list needs to know of a cell. */
  view(place: Place): CellView {
    const typed = typedAt(this.#book, place.page, place.row, place.column);
    const kind = this.#kinds.of(place);
    const worked = isFormula(typed);
    const common = { typed, kind, worked, name: nameOf(this.#book, place) };
    const raw = this.#raw(place);
    if (raw instanceof DetailedCellError) {
      const from = (raw.address && findPlace(this.#book, raw.address)) || place;
      const text = raw.type === "VALUE" ? this.#textNeeded(from) : undefined;
      if (text) return { ...common, value: null, shown: "look", look: lookAt(text) };
      const look: Look = { is: "error", sentence: this.#sentence(raw, from), from };
      return { ...common, value: null, shown: "look", look };
    }
    const verdict = typeof raw === "string" && worked && raw.startsWith("look: ");
    const missing = worked ? undefined : this.uncounted.get(placeKey(place));
    const look: Look | null = verdict
      ? { is: "verdict", sentence: raw.slice(6), from: place }
      : missing
        ? lookAt(missing)
        : null;
    const rule = this.#book;
    return {
      ...common,
      value: raw,
      look,
      // The list of things to look at goes through all cells and shows few.
      get shown() {
        return show(raw, kind, rule);
      },
    };
  }

  /** The typed cells that count as nothing in formulas that need a figure from them. */
  get uncounted(): UncountedCells {
    if (this.#uncounted?.book !== this.#book) {
      const works = (formula: Place) => !(this.#raw(formula) instanceof DetailedCellError);
      this.#uncounted = { book: this.#book, cells: uncountedCells(this.#book, this.#kinds, works) };
    }
    return this.#uncounted.cells;
  }

  /** The first text in a formula's cells that looks like a figure and is none, when the formula needs one. */
  #textNeeded(formula: Place): Uncounted | undefined {
    const here = placeKey(formula);
    for (const one of this.uncounted.values())
      if (one.is === "text" && one.users.some((user) => placeKey(user) === here)) return one;
    return undefined;
  }

  /** An error in words, told of the cell where it began. */
  #sentence(error: DetailedCellError, { page, row, column }: Place): string {
    const place = { page, row, column };
    return sentence(error, this.#scene(typedAt(this.#book, page, row, column), page, place));
  }

  #scene(formula: string, page: number, place?: Place): Scene {
    return {
      book: this.#book,
      formula,
      page,
      place,
      isFunction: (name) => functionNames.has(name),
      value: (one) => this.value(one),
    };
  }

  /** Works a formula as if it stood on `page`, changing nothing. */
  evaluate(
    formula: string,
    page = 0,
  ): { value: number | string | boolean | null; kind: Kind } | { problem: string } {
    const read = toEngine(formula, this.#book.unit, this.#book.decimal);
    if (!this.#hf.validateFormula(read)) return { problem: unreadable(this.#scene(formula, page)) };
    const raw = this.#hf.calculateFormula(read, this.#sheet(page));
    if (raw instanceof DetailedCellError) {
      const from = raw.address ? findPlace(this.#book, raw.address) : null;
      if (!from) return { problem: sentence(raw, this.#scene(formula, page)) };
      const told = nameOf(this.#book, from) ?? this.address(from);
      return { problem: `${told}: ${this.#sentence(raw, from)}` };
    }
    if (Array.isArray(raw))
      return { problem: "this formula gives a range of answers; Ellwand keeps one value in a cell" };
    return { value: raw, kind: this.#kinds.ofTree(formulaTree(formula), page) };
  }

  /** Why a formula on `page` can't be read at all, in a sentence; null when it can. Nothing is worked out. */
  unreadable(formula: string, page = 0): string | null {
    const read = toEngine(formula, this.#book.unit);
    return this.#hf.validateFormula(read) ? null : unreadable(this.#scene(formula, page));
  }

  /** The sewing functions called while the formula of a cell is worked, innermost first. */
  calls(place: Place): readonly Call[] {
    const typed = typedAt(this.#book, place.page, place.row, place.column);
    if (!isFormula(typed)) return [];
    const heard: Call[] = [];
    this.#context.heard = (call) => heard.push(call);
    try {
      const read = toEngine(typed, this.#book.unit, this.#book.decimal);
      if (this.#hf.validateFormula(read)) this.#hf.calculateFormula(read, this.#sheet(place.page));
    } finally {
      this.#context.heard = undefined;
    }
    return heard;
  }

  /** The setting the functions work in: unit, mark, lay planner. */
  get setting(): Context {
    return this.#context;
  }

  /** The cells that a cell's formula names, in the order of the book; ranges cell by cell. */
  restsOn(place: Place): Place[] {
    const typed = typedAt(this.#book, place.page, place.row, place.column);
    return isFormula(typed) ? precedents(this.#book, typed, place.page) : [];
  }

  address(place: Place): string {
    return fullAddress(this.#book, place);
  }

  destroy(): void {
    this.#hf.destroy();
  }
}
