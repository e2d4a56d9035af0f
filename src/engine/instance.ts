/**
 * One HyperFormula kept equal to a book: built, changed cell by cell, and built anew where it threw.
 * Nothing typed makes it throw or leaves it half calculated. A formula that HyperFormula can't take
 * is set aside: its cell has an error with a sentence, and what rests on it waits for it.
 */
import { ExportedCellChange, HyperFormula } from "hyperformula";
import { type Place, placeKey } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { fixed, lookUp } from "../book/names.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS, typedAt } from "../book/shape.ts";
import { cellNames, contentOf, followNames, formulaOf, formulaPlaces, sheetsOf } from "./book-for-engine.ts";
import { buildWithout } from "./build.ts";
import type { changedCells } from "./changes.ts";
import { engineConfig } from "./config.ts";
import type { forEngine } from "./content.ts";
import { Guards, type TimeLimits } from "./guards.ts";
import type { CellAddress } from "./inside.ts";
import { concerned, isLonger, MOST_BOUNDED } from "./laid.ts";
import { isWhole, lateIn } from "./late.ts";
import type { LayDesk } from "./lay-desk.ts";
import type { PointedAt } from "./pointed.ts";
import { cantBeWorked, type RawValue, threwAt } from "./raw-value.ts";
import { ReadLists } from "./read-lists.ts";
import { type Laid, Records } from "./records.ts";
import { sourceOf } from "./references.ts";
import { type Call, type Context, register } from "./register.ts";

register();

export class Instance {
  #book: Book;
  #hf: HyperFormula;
  readonly #context: Context;
  readonly #guards: Guards;
  /** The cells that are set aside as the last resort, and what is typed in them. */
  #aside: ReadonlyMap<string, string> = new Map();
  /** The titles of the pages as HyperFormula numbers them. */
  #titles: readonly string[] = [];
  /** Whether every function was there when HyperFormula was built: it learns of no others afterwards. */
  #knowsAll = isWhole();
  /** The cells that the present change gave to HyperFormula. */
  #entered: CellAddress[] = [];
  /** What HyperFormula was built with: formulas that were left out then are entered later (prepare.ts). */
  has: "all" | "values";
  /** What the formulas said beside their values. */
  readonly records = new Records(this);

  constructor(book: Book, desk: LayDesk, limits: TimeLimits, has: "all" | "values" = "all") {
    this.has = has;
    this.#guards = new Guards(limits, (cell) => this.records.forget(cell));
    this.#context = {
      unit: book.unit,
      mark: book.mark,
      decimal: book.decimal,
      plan: (question) => {
        const answer = desk(question, this.#book.lays);
        if ("refusal" in answer && answer.pending) this.#guards.awaited.add(answer.refusal);
        return answer;
      },
      ...(desk.joins && { joins: desk.joins }),
      inside: (interpreter) => this.#guards.set(interpreter),
      named: (name) => {
        const place = lookUp(this.#book, name);
        const sheet = place ? this.#titles.indexOf(this.#book.pages[place.page]!.title) : -1;
        return place && sheet >= 0 ? { sheet, row: place.row, col: place.column } : null;
      },
      headings: (sheet, column, wide) => {
        const page = this.#book.pages.find(({ title }) => title === this.#titles[sheet]);
        return Array.from({ length: wide }, (_, i) => page?.columns[column + i]?.heading ?? "");
      },
      lists: new ReadLists(),
      ...this.records.listeners(),
    };
    this.#book = book;
    this.#hf = this.#build();
    this.#takeBounds();
  }

  get book(): Book {
    return this.#book;
  }

  /** The setting the functions work in: unit, mark, lay planner. */
  get setting(): Context {
    return this.#context;
  }

  /** The beginning of a change: nothing read before it is used again. */
  #begin(times = 1): void {
    this.#context.lists!.begin();
    this.#guards.begin(times);
  }

  #build(): HyperFormula {
    this.#knowsAll = isWhole();
    this.#guards.forgetAll();
    const { names } = this.#book;
    const things = () => [...formulaPlaces(this.#book).map(placeKey), ...Object.keys(names)];
    const { hf, without } = buildWithout(things, (leave) => {
      this.#begin();
      return this.#attempt(leave);
    });
    const typedOf = (key: string) =>
      typedAt(this.#book, ...(key.split(".").map(Number) as [number, number, number]));
    const aside = [...without].filter((key) => !Object.hasOwn(names, key));
    this.#aside = new Map(aside.map((key) => [key, typedOf(key)]));
    return hf;
  }

  /** A HyperFormula of the book without the given cells and names. */
  #attempt(leave: ReadonlySet<string>): HyperFormula {
    const sheets = sheetsOf(this.#book, leave, this.has);
    this.#titles = Object.keys(sheets);
    const expressions = cellNames(this.#book)
      .filter(([name]) => !leave.has(name))
      .map(([name, address]) => ({ name, expression: `=${fixed(address)}` }));
    this.records.clear();
    const limits = { maxRows: MOST_ROWS, maxColumns: MOST_COLUMNS, undoLimit: 0 };
    const hf = HyperFormula.buildFromSheets(
      sheets,
      { ...engineConfig(this.#context), ...limits },
      expressions,
    );
    this.#guards.built();
    return hf;
  }

  /** Whether a formula names a function that came after HyperFormula was built. */
  #cameSince(formula: string): boolean {
    return !this.#knowsAll && isWhole() && lateIn(formula) !== null;
  }

  /** Before a formula is calculated that names such a function, everything is built anew with it. */
  #learnFor(formula: string): void {
    if (!this.#cameSince(formula)) return;
    this.#rebuild();
    this.#takeBounds();
  }

  /** A HyperFormula that threw in the middle of a calculation is never used again. */
  #rebuild(): void {
    try {
      this.#hf.destroy();
    } catch {
      // It is discarded either way.
    }
    this.has = "all";
    this.#hf = this.#build();
  }

  /** Takes a book. `changed`: the cells that differ from the former book, or null to build everything anew. */
  take(next: Book, changed: ReturnType<typeof changedCells>): void {
    const old = this.#book;
    this.#book = next;
    this.records.oddities.forget();
    if (!changed || changed.some(({ typed }) => this.#cameSince(typed))) {
      Object.assign(this.#context, { unit: next.unit, mark: next.mark, decimal: next.decimal });
      this.#rebuild();
      this.#takeBounds();
      return;
    }
    this.#change(() => {
      followNames(this.#hf, old, next);
      for (const { typed, ...place } of changed) {
        this.#type(place, contentOf(this.#book, typed, place));
      }
      if (old.lays !== next.lays) this.#wakeLays(old.lays, next.lays);
    });
    this.#takeBounds();
  }

  /**
   * A lay bounds those of smaller jobs: a cell that was calculated before a cell with such a lay is
   * calculated once more.
   */
  #takeBounds(): void {
    if (!this.records.newlyLaid) return;
    this.records.laidSeen();
    const laid = this.records.laid();
    if (laid.length < 2 || laid.length > MOST_BOUNDED) return;
    const plan = this.#context.plan!;
    const longer = laid.filter(({ lays }) =>
      // What has no lay is not asked for once more.
      lays.some(({ question, answer }) => !("refusal" in answer) && isLonger(answer, plan(question))),
    );
    if (longer.length === 0) return;
    this.#change(() => this.#enterAgain(longer));
    this.records.laidSeen();
  }

  /**
   * Makes changes and calculates them together; where they throw, everything is built anew from the
   * present book. HyperFormula's own batch is not used: its history goes through the whole batch at
   * each change in it.
   */
  #change(change: () => void, times = 1): void {
    this.#begin(times);
    try {
      this.#hf.suspendEvaluation();
      this.#entered = [];
      change();
      for (const one of this.#hf.resumeEvaluation())
        if (one instanceof ExportedCellChange) this.records.calculated(one.address);
      if (this.#entered.some((address) => this.#threwAt(address))) this.#rebuild();
    } catch {
      this.#rebuild();
    }
  }

  #threwAt(address: CellAddress): boolean {
    return threwAt(this.#hf.getCellValue(address));
  }

  /** Enters the formulas of cells and calculates them together; they get so many times the usual time. */
  enter(places: readonly Place[], times = 1): void {
    this.#change(() => {
      for (const place of places) {
        const typed = this.#typed(place);
        if (isFormula(typed)) this.#type(place, contentOf(this.#book, typed, place));
      }
    }, times);
  }

  #type(place: Place, content: ReturnType<typeof forEngine>): void {
    const address = this.address(place);
    this.#guards.forget(address);
    this.records.forget(address);
    this.#enter(address, content);
  }

  #enter(address: CellAddress, content: ReturnType<typeof forEngine>): void {
    this.#hf.setCellContents(address, content);
    this.#entered.push(address);
  }

  /** Calculates the cells again that a better lay concerns: all that it bounds, unless there are very many. */
  #wakeLays(old: Book["lays"], next: Book["lays"]): void {
    this.#enterAgain(concerned(this.records.laid(), old, next));
  }

  #enterAgain(cells: readonly Laid[]): void {
    for (const { place } of cells) {
      const typed = this.#typed(place);
      if (isFormula(typed)) this.#enter(this.address(place), formulaOf(this.#book, typed, place.page));
    }
  }

  #typed({ page, row, column }: Place): string {
    return typedAt(this.#book, page, row, column);
  }

  #sheet(page: number): number {
    return this.#hf.getSheetId(this.#book.pages[page]!.title)!;
  }

  /** Where HyperFormula has a cell of the book. */
  address({ page, row, column }: Place) {
    return { sheet: this.#sheet(page), row, col: column };
  }

  raw(place: Place): RawValue {
    return this.#rawAt(this.address(place));
  }

  #rawAt(cell: CellAddress): RawValue {
    try {
      return this.#hf.getCellValue(cell);
    } catch {
      return cantBeWorked();
    }
  }

  /** Whether a cell's formula was stopped because it took too long. */
  isStopped(place: Place): boolean {
    return this.#guards.isStopped(this.address(place));
  }

  /** Whether a cell's formula is left out because HyperFormula can't take it. */
  isSetAside(place: Place): boolean {
    const key = placeKey(place);
    return this.#aside.has(key) && this.#aside.get(key) === this.#typed(place);
  }

  /** Where the book has a cell of HyperFormula; null for a page that is gone. */
  placeOf({ sheet, row, col }: CellAddress): Place | null {
    const page = this.#book.pages.findIndex((_, index) => this.#sheet(index) === sheet);
    return page < 0 ? null : { page, row, column: col };
  }

  /** The cells whose formulas have an error or a verdict that is not ok as their value. */
  standingOut(): Place[] {
    return this.records.standingOut(
      () => formulaPlaces(this.#book),
      (cell) => this.#rawAt(cell),
    );
  }

  /** The cells of lists that the formula of a cell said something about: those that were typed, where a list copies others. */
  pointedAt(place: Place): readonly PointedAt<Place>[] {
    return this.records
      .pointedAt(place)
      .map(({ at, sentence }) => ({ at: sourceOf(this.#book, at), sentence }));
  }

  /** Whether HyperFormula can parse a formula as typed. */
  canParse(formula: string, page: number): boolean {
    this.#learnFor(formula);
    return this.#hf.validateFormula(formulaOf(this.#book, formula, page));
  }

  /** Calculates a formula as if it stood on a page, changing nothing; undefined when it can't be parsed. */
  calculate(formula: string, page: number): RawValue | undefined {
    this.#learnFor(formula);
    const read = formulaOf(this.#book, formula, page);
    this.#begin();
    this.records.outside = true;
    try {
      if (!this.#hf.validateFormula(read)) return undefined;
      const value = this.#hf.calculateFormula(read, this.#sheet(page));
      return Array.isArray(value) ? undefined : value;
    } catch {
      return cantBeWorked();
    } finally {
      this.records.outside = false;
    }
  }

  /** The sewing functions that a formula calls when it is calculated on a page, innermost first. */
  callsOf(formula: string, page: number): readonly Call[] {
    const calls: Call[] = [];
    this.#context.heard = (call) => calls.push(call);
    try {
      this.calculate(formula, page);
    } finally {
      this.#context.heard = undefined;
    }
    return calls;
  }

  destroy(): void {
    this.#hf.destroy();
  }
}
