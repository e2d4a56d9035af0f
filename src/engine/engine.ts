/**
 * The calculating side of a book: HyperFormula with the sewing functions, kept equal to a book by
 * looking at what is no longer the same object. The book is the truth; this holds values only.
 */
import { CellError, DetailedCellError, ErrorType, HyperFormula } from "hyperformula";
import type { Kind } from "../../functions/define.ts";
import type { Lay, LayOrigin, LayQuestion, NoLay } from "../../functions/lay.ts";
import { findPlace, fullAddress, nameOf, type Place } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { refused } from "../book/refused.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS, typedAt } from "../book/shape.ts";
import { buildWithout } from "./build.ts";
import { changedCells } from "./changes.ts";
import { engineConfig } from "./config.ts";
import { forEngine, toEngine, understand } from "./content.ts";
import { CANT_BE_WORKED, Guards, type TimeLimits, USUAL_LIMITS } from "./guards.ts";
import { Kinds } from "./kinds.ts";
import { concerned, LaidCells, type LaidLay, leastSearched, pendingOf, pendingText } from "./laid.ts";
import { Oddities, oddities } from "./oddities.ts";
import { precedents } from "./references.ts";
import { type Call, type Context, register } from "./register.ts";
import { type Scene, sentence, unreadable } from "./sentences.ts";
import { show } from "./show.ts";
import { leftOutOf, placeKey, type UncountedCells, uncountedByUser, uncountedCells } from "./uncounted.ts";

register();

const functionNames = new Set(HyperFormula.getRegisteredFunctionNames("enGB"));

/** "Measure!C4" as a name's formula has it: "=Measure!$C$4". */
const fixed = (address: string): string => `=${address.replace(/([A-Za-z]+)(\d+)$/, "$$$1$$$2")}`;

/** Answers a lay question, with the lays that the book keeps at hand. */
export type LayDesk = (question: LayQuestion, found: Book["lays"]) => Lay | NoLay;

/** Something to look at in a cell: an error, a verdict that is not ok, or a typed cell that counts as nothing. */
export interface Look {
  /** A cell that holds something unusual has its answer all the same; the answer of a pending one comes later. */
  readonly is: "error" | "verdict" | "uncounted" | "unusual" | "pending";
  readonly sentence: string;
  /** The cell where it begins; another cell than this one when this one only waits for it. */
  readonly from: Place;
  /** Whether it took too long there: `Engine.again` gives it more time. */
  readonly stopped?: true;
}

export interface CellView {
  readonly typed: string;
  readonly shown: string;
  readonly value: number | string | boolean | null;
  readonly kind: Kind;
  readonly worked: boolean;
  readonly look: Look | null;
  readonly name: string | undefined;
  /** For a cell that lays pieces on cloth: how its lay was found. */
  readonly origin: LayOrigin | null;
}

/** A cell that lays pieces on cloth, with what it asked and was answered. */
export interface Laid {
  readonly place: Place;
  readonly lays: readonly LaidLay[];
}

/** What an engine can't take even after all else was tried stands for this: a formula that is nowhere. */
const ASIDE = "=#N/A";

/** How many times the usual time a formula gets that its reader has worked again. */
const MORE_TIME = 12;

const keyOf = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/**
 * Nothing typed makes an engine throw or leaves it half worked. A formula that HyperFormula can't
 * take is set aside: its cell has an error with a sentence, and what rests on it waits for it.
 */
export class Engine {
  #book: Book;
  #desk: LayDesk;
  #hf: HyperFormula;
  #kinds: Kinds;
  #uncounted: { readonly book: Book; readonly cells: UncountedCells; readonly users: UncountedCells } | null =
    null;
  readonly #context: Context;
  readonly #guards: Guards;
  /** The cells that are set aside as the last resort, and what is typed in them. */
  #aside: ReadonlyMap<string, string> = new Map();
  /** The cells that lay pieces: a better lay is no cell that could wake them. */
  readonly #laid = new LaidCells();
  /** Whether what is worked is no cell of the book. */
  #outside = false;
  readonly #oddities = new Oddities();

  constructor(book: Book, desk: LayDesk, limits: TimeLimits = USUAL_LIMITS) {
    this.#desk = desk;
    this.#guards = new Guards(limits);
    this.#context = {
      unit: book.unit,
      mark: book.mark,
      decimal: book.decimal,
      plan: (question) => this.#desk(question, this.#book.lays),
      laid: (cell, lay) => {
        // A formula that is worked outside the book is worked as if it stood in the first cell.
        if (!this.#outside) this.#laid.note(cell, lay);
      },
      inside: (interpreter) => this.#guards.set(interpreter),
      unusual: (cell) => this.#oddities.note(cell),
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
    this.#guards.forgetAll();
    const { pages, names } = this.#book;
    const formulas = () =>
      pages.flatMap((page, index) =>
        page.rows.flatMap((cells, row) =>
          cells.flatMap((typed, column) => (isFormula(typed) ? [keyOf({ page: index, row, column })] : [])),
        ),
      );
    const things = () => [...formulas(), ...Object.keys(names)];
    const { hf, without } = buildWithout(things, (leave) => {
      this.#guards.begin();
      return this.#attempt(leave);
    });
    const typedOf = (key: string) =>
      typedAt(this.#book, ...(key.split(".").map(Number) as [number, number, number]));
    const aside = [...without].filter((key) => !Object.hasOwn(names, key));
    this.#aside = new Map(aside.map((key) => [key, typedOf(key)]));
    return hf;
  }

  /** A HyperFormula of the book without the cells and names given. */
  #attempt(leave: ReadonlySet<string>): HyperFormula {
    const { pages, unit, decimal, names } = this.#book;
    const sheets = Object.fromEntries(
      pages.map((page, index) => [
        page.title,
        page.rows.map((cells, row) =>
          cells.map((typed, column) =>
            leave.size > 0 && leave.has(keyOf({ page: index, row, column }))
              ? ASIDE
              : forEngine(understand(typed, page.columns[column]?.kind ?? "any", unit, decimal)),
          ),
        ),
      ]),
    );
    const expressions = Object.entries(names)
      .filter(([name]) => !leave.has(name))
      .map(([name, address]) => ({ name, expression: fixed(address) }));
    this.#laid.clear();
    this.#oddities.clear();
    const limits = { maxRows: MOST_ROWS, maxColumns: MOST_COLUMNS, undoLimit: 0 };
    return HyperFormula.buildFromSheets(sheets, { ...engineConfig(this.#context), ...limits }, expressions);
  }

  /** An engine that threw in the midst of its work is never worked with again. */
  #rebuild(): void {
    try {
      this.#hf.destroy();
    } catch {
      // It is thrown away either way.
    }
    this.#hf = this.#build();
  }

  /** Follows the book to `next`. Only what changed is calculated anew, unless that is much. */
  become(next: Book): void {
    if (next !== this.#book) this.#take(next, changedCells(this.#book, next));
  }

  /** Takes another book, however like the former it is, and builds it anew. */
  open(next: Book): void {
    this.#take(next, null);
  }

  #take(next: Book, changed: ReturnType<typeof changedCells>): void {
    const old = this.#book;
    try {
      this.#follow(old, next, changed);
    } catch (reason) {
      // Out of all foresight: the former book stands, worked anew.
      this.#book = old;
      this.#kinds = new Kinds(old);
      Object.assign(this.#context, { unit: old.unit, mark: old.mark, decimal: old.decimal });
      this.#rebuild();
      throw reason;
    }
  }

  /** `changed`: the cells that differ, or null to build the book anew. */
  #follow(old: Book, next: Book, changed: ReturnType<typeof changedCells>): void {
    this.#book = next;
    this.#oddities.forget();
    this.#kinds = this.#kinds.follow(next);
    if (!changed) {
      Object.assign(this.#context, { unit: next.unit, mark: next.mark, decimal: next.decimal });
      this.#rebuild();
      return;
    }
    this.#change(() => {
      this.#followNames(old.names, next.names);
      for (const { typed, ...place } of changed) {
        const kind = next.pages[place.page]!.columns[place.column]?.kind ?? "any";
        this.#type(place, forEngine(understand(typed, kind, next.unit, next.decimal)));
      }
      if (old.lays !== next.lays) this.#wakeLays(old.lays, next.lays);
    });
  }

  /**
   * Makes changes and works them out together; where they throw, an engine of the book as it is now
   * is built anew. Not in a batch of HyperFormula's, whose history looks through the whole batch at
   * each of its changes.
   */
  #change(change: () => void, times = 1): void {
    this.#guards.begin(times);
    this.#laid.begin();
    try {
      this.#hf.suspendEvaluation();
      change();
      for (const one of this.#hf.resumeEvaluation())
        if ("address" in one) this.#laid.forget(one.address, true);
    } catch {
      this.#rebuild();
    }
  }

  /** Works cells again that took too long, with more time than before. */
  again(places: readonly Place[]): void {
    this.#change(() => {
      for (const place of places) {
        const typed = typedAt(this.#book, place.page, place.row, place.column);
        if (isFormula(typed)) this.#type(place, toEngine(typed, this.#book.unit, this.#book.decimal));
      }
    }, MORE_TIME);
  }

  #type(place: Place, content: ReturnType<typeof forEngine>): void {
    const address = this.#address(place);
    this.#guards.forget(address);
    this.#laid.forget(address);
    this.#hf.setCellContents(address, content);
  }

  #followNames(old: Book["names"], next: Book["names"]): void {
    if (old === next) return;
    for (const name of Object.keys(old)) if (!Object.hasOwn(next, name)) this.#hf.removeNamedExpression(name);
    for (const [name, address] of Object.entries(next)) {
      if (!Object.hasOwn(old, name)) this.#hf.addNamedExpression(name, fixed(address));
      else if (old[name] !== address) this.#hf.changeNamedExpression(name, fixed(address));
    }
  }

  /** Works the cells anew that a better lay concerns: all that are bounded by it, unless there are very many. */
  #wakeLays(old: Book["lays"], next: Book["lays"]): void {
    for (const { place } of concerned(this.laid(), old, next)) {
      const typed = typedAt(this.#book, place.page, place.row, place.column);
      if (isFormula(typed))
        this.#hf.setCellContents(this.#address(place), toEngine(typed, this.#book.unit, this.#book.decimal));
    }
  }

  #sheet(page: number): number {
    return this.#hf.getSheetId(this.#book.pages[page]!.title)!;
  }

  #address({ page, row, column }: Place) {
    return { sheet: this.#sheet(page), row, col: column };
  }

  #raw(place: Place): number | string | boolean | null | DetailedCellError {
    try {
      return this.#hf.getCellValue(this.#address(place));
    } catch {
      return new DetailedCellError(new CellError(ErrorType.VALUE, CANT_BE_WORKED), "#VALUE!");
    }
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
    const origin = worked ? leastSearched(this.#laid.lays(this.#address(place))) : null;
    const common = { typed, kind, worked, name: nameOf(this.#book, place), origin };
    const raw = this.#raw(place);
    const failed = raw instanceof DetailedCellError;
    const from = (failed && raw.address && findPlace(this.#book, raw.address)) || place;
    const awaited = worked ? pendingOf(this.#laid.lays(this.#address(from))) : null;
    if (awaited) {
      const { sentence, shown } = pendingText(awaited, kind, this.#book);
      const own = keyOf(from) === keyOf(place);
      return { ...common, value: null, shown: own ? shown : "…", look: { is: "pending", sentence, from } };
    }
    if (failed) {
      const stopped = this.#guards.isStopped(this.#address(from));
      const text =
        raw.type === "VALUE" && !stopped ? this.#uncountedNow().users.get(placeKey(from)) : undefined;
      if (text) {
        const look: Look = { is: "error", sentence: text.sentence, from: text.place };
        return { ...common, value: null, shown: "look", look };
      }
      const look: Look = {
        is: "error",
        sentence: this.#sentence(raw, from),
        from,
        ...(stopped && { stopped: true }),
      };
      return { ...common, value: null, shown: "look", look };
    }
    const verdict = typeof raw === "string" && worked && raw.startsWith("look: ");
    const look: Look | null = verdict
      ? { is: "verdict", sentence: raw.slice(6), from: place }
      : (this.#uncountedLook(place, worked) ?? this.#unusualLook(place));
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
    return this.#uncountedNow().cells;
  }

  #uncountedNow() {
    if (this.#uncounted?.book !== this.#book) {
      const works = (formula: Place) => !(this.#raw(formula) instanceof DetailedCellError);
      const cells = uncountedCells(this.#book, this.#kinds, works);
      this.#uncounted = { book: this.#book, cells, users: uncountedByUser(cells) };
    }
    return this.#uncounted;
  }

  /** A typed cell that counts as nothing, or a formula whose answer leaves one out. */
  #uncountedLook(place: Place, worked: boolean): Look | null {
    const { cells, users } = this.#uncountedNow();
    const own = (worked ? users : cells).get(placeKey(place));
    if (!own) return null;
    const where = nameOf(this.#book, own.place) ?? this.address(own.place);
    return { is: "uncounted", sentence: worked ? `${where}: ${own.sentence}` : own.sentence, from: place };
  }

  #unusualLook(place: Place): Look | null {
    const typed = typedAt(this.#book, place.page, place.row, place.column);
    const sentence = this.#oddities.text(this.#address(place), () => this.#oddText(typed, place.page));
    return sentence === null ? null : { is: "unusual", sentence, from: place };
  }

  /** An error in words, told of the cell where it began. */
  #sentence(error: DetailedCellError, { page, row, column }: Place): string {
    const place = { page, row, column };
    if (
      this.#aside.has(keyOf(place)) &&
      this.#aside.get(keyOf(place)) === typedAt(this.#book, page, row, column)
    )
      return CANT_BE_WORKED;
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

  /** Works a formula as if it stood on `page`, changing nothing. `unusual` says what is unusual in it and what it leaves out. */
  evaluate(
    formula: string,
    page = 0,
  ): { value: number | string | boolean | null; kind: Kind; unusual: string | null } | { problem: string } {
    const raw = this.#work(formula, page);
    if (raw === undefined) return { problem: unreadable(this.#scene(formula, page)) };
    if (raw instanceof DetailedCellError) {
      const from = raw.address ? findPlace(this.#book, raw.address) : null;
      if (!from) return { problem: sentence(raw, this.#scene(formula, page)) };
      const told = nameOf(this.#book, from) ?? this.address(from);
      return { problem: `${told}: ${this.#sentence(raw, from)}` };
    }
    const left = leftOutOf(this.#book, this.#kinds, formula, page);
    const unusual = [this.#oddText(formula, page) ?? [], left].flat().join("; ") || null;
    return { value: raw, kind: this.#kinds.ofTree(formulaTree(formula), page), unusual };
  }

  /** Why a formula on `page` can't be read at all, in a sentence; null when it can. Nothing is worked out. */
  unreadable(formula: string, page = 0): string | null {
    const { unit, decimal } = this.#book;
    const read = toEngine(formula, unit, decimal);
    const refusal = refused(formula, decimal);
    return refusal ?? (this.#hf.validateFormula(read) ? null : unreadable(this.#scene(formula, page)));
  }

  /** What a formula on a page gives; undefined when it can't be read. */
  #work(formula: string, page: number): number | string | boolean | null | DetailedCellError | undefined {
    const read = toEngine(formula, this.#book.unit, this.#book.decimal);
    this.#guards.begin();
    this.#outside = true;
    try {
      if (!this.#hf.validateFormula(read)) return undefined;
      const value = this.#hf.calculateFormula(read, this.#sheet(page));
      return Array.isArray(value) ? undefined : value;
    } catch {
      return new DetailedCellError(new CellError(ErrorType.VALUE, CANT_BE_WORKED), "#VALUE!");
    } finally {
      this.#outside = false;
    }
  }

  /** The sewing functions called while the formula of a cell is worked, innermost first. */
  calls(place: Place): readonly Call[] {
    const typed = typedAt(this.#book, place.page, place.row, place.column);
    if (!isFormula(typed) || this.#guards.isStopped(this.#address(place))) return [];
    return this.#heard(typed, place.page);
  }

  #heard(formula: string, page: number): readonly Call[] {
    const heard: Call[] = [];
    this.#context.heard = (call) => heard.push(call);
    try {
      this.#work(formula, page);
    } finally {
      this.#context.heard = undefined;
    }
    return heard;
  }

  /** What is unusual in a formula, in sentences, or null; it is worked once more to find out. */
  #oddText(formula: string, page: number): string | null {
    if (!isFormula(formula)) return null;
    const value = (part: string) => this.#work(`=${part}`, page);
    return oddities(formula, this.#heard(formula, page), this.#context, value).join(" ") || null;
  }

  /** The cells that lay pieces on cloth, in the order in which they were worked. */
  laid(): Laid[] {
    return this.#laid.all.flatMap(({ address: { sheet, row, col }, lays }) => {
      const page = this.#book.pages.findIndex((_, index) => this.#sheet(index) === sheet);
      return page < 0 ? [] : [{ place: { page, row, column: col }, lays }];
    });
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
