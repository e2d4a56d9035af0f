/**
 * The calculating side of a book: values, kinds, problems and questions about formulas. The book is
 * the truth; this holds values only, and follows the book by comparing objects.
 */
import { DetailedCellError } from "hyperformula";
import type { Kind } from "../../functions/define.ts";
import { comparePlaces, findPlace, fullAddress, type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { refused } from "../book/refused.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { changedCells } from "./changes.ts";
import { fittingFault, workedBook } from "./fitted-cells.ts";
import { isFunction } from "./function-names.ts";
import { CANT_BE_WORKED, type TimeLimits, USUAL_LIMITS } from "./guards.ts";
import { Instance } from "./instance.ts";
import { Kinds } from "./kinds.ts";
import { cellText } from "./label.ts";
import { type LayDesk, withOwnTime } from "./lay-desk.ts";
import { type CellInList, takenFrom } from "./list-cells.ts";
import { oddities } from "./oddities.ts";
import { hasOwnProblem, type PointedAt, type Said, saidOf } from "./pointed.ts";
import type { Prepared, Preparing } from "./prepare.ts";
import { rarelyAsked } from "./rarely-asked.ts";
import type { Laid } from "./records.ts";
import { precedents } from "./references.ts";
import type { Call, Context } from "./register.ts";
import { causeOf, type Scene, sentence, unreadable } from "./sentences.ts";
import { leftOutOf, type UncountedCells, uncountedByUser, uncountedCells } from "./uncounted.ts";
import { Unmatched } from "./unmatched.ts";
import { KeptUses } from "./uses-to-look-at.ts";
import { type CellView, cellView, type Sources } from "./view.ts";

interface Uncounted {
  readonly book: Book;
  readonly cells: UncountedCells;
  readonly users: UncountedCells;
}

/** A formula that its reader asks to calculate again gets this many times the usual time. */
const MORE_TIME = 12;

export class Engine {
  #book: Book;
  #instance: Instance;
  #kinds: Kinds;
  #uncounted: Uncounted | null = null;
  #uses = new KeptUses();
  readonly #desk: LayDesk;
  readonly #limits: TimeLimits;
  /** What was built for a book that is about to be taken. */
  #prepared: (Prepared & { readonly book: Book }) | null = null;
  #said: { readonly book: Book; readonly cells: ReadonlyMap<string, readonly Said[]> } | null = null;
  #unmatched: { readonly book: Book; readonly words: Unmatched } | null = null;

  constructor(book: Book, desk: LayDesk, limits: TimeLimits = USUAL_LIMITS) {
    const worked = workedBook(book);
    this.#book = book;
    this.#desk = desk;
    this.#limits = limits;
    this.#kinds = new Kinds(worked);
    const own = withOwnTime(desk, limits);
    this.#instance = new Instance(worked, own.desk, own.limits);
  }

  /** The book as it is typed. */
  get book(): Book {
    return this.#book;
  }

  /** The book as it is calculated: in it, cells that follow the fittings are formulas. */
  get worked(): Book {
    return this.#instance.book;
  }

  get kinds(): Kinds {
    return this.#kinds;
  }

  /** The setting the functions work in: unit, mark, lay planner. */
  get setting(): Context {
    return this.#instance.setting;
  }

  /** Follows the book to `next`. Calculates only what changed, unless more than half of the cells did. */
  become(next: Book): void {
    if (next !== this.book && !this.#takeUp(next))
      this.#take(next, changedCells(this.worked, workedBook(next)));
  }

  /** Takes another book and builds everything anew, however like the former book it is. */
  open(next: Book): void {
    if (this.#takeUp(next)) return;
    this.letGo();
    this.#take(next, null);
  }

  /**
   * Builds all that is needed for a book in slices, and gives after each which share is done. `become` and `open`
   * take it up when they are called with that book; until then the former book stands, and may be changed.
   */
  *prepare(next: Book, by: Preparing): Generator<number, void> {
    this.letGo();
    this.#prepared = { book: next, ...(yield* by(workedBook(next), this.#desk, this.#limits)) };
  }

  /** Gives up what was prepared and is not needed any more. */
  letGo(): void {
    this.#prepared?.instance.destroy();
    this.#prepared = null;
  }

  /** Takes up what was prepared for a book; false when that is another book. */
  #takeUp(next: Book): boolean {
    const prepared = this.#prepared;
    if (prepared?.book !== next) return false;
    this.#prepared = null;
    this.#instance.destroy();
    this.#instance = prepared.instance;
    this.#kinds = prepared.kinds;
    this.#uses = prepared.uses;
    this.#book = next;
    return true;
  }

  #take(next: Book, changed: ReturnType<typeof changedCells>): void {
    const old = this.worked;
    const worked = workedBook(next);
    try {
      this.#kinds = this.#kinds.follow(worked);
      this.#instance.take(worked, changed);
      this.#book = next;
    } catch (reason) {
      // Nothing is known to lead here: the former book stands, built anew.
      this.#kinds = new Kinds(old);
      this.#instance.take(old, null);
      throw reason;
    }
  }

  /** Calculates cells again that took too long, with more time than before. */
  again(places: readonly Place[]): void {
    this.#said = null;
    this.#instance.enter(places, MORE_TIME);
  }

  /** The bare value of a cell; an error is null. */
  value(place: Place): number | string | boolean | null {
    const raw = this.#instance.raw(place);
    return raw instanceof DetailedCellError ? null : raw;
  }

  /** Everything a screen or a list needs to know about a cell. */
  view(place: Place): CellView {
    return cellView(place, this.#sources);
  }

  get #sources(): Sources {
    return {
      book: this.#book,
      instance: this.#instance,
      kinds: this.#kinds,
      uncounted: () => this.#uncountedNow(),
      sentence: (error, from) => this.#sentence(error, from),
      cause: (error, from) => causeOf(error, this.#scene(this.#typed(from), from.page, from)),
      unusual: (place) => this.#unusualAt(place),
    };
  }

  /** What the problems of formulas say about a cell of their lists. */
  saidOf(place: Place): readonly Said[] {
    return this.#saidNow().get(placeKey(place)) ?? [];
  }

  /** What the problem of a formula says about cells of its lists. */
  pointedAt(place: Place): readonly PointedAt<Place>[] {
    return this.#instance.pointedAt(place);
  }

  #saidNow(): ReadonlyMap<string, readonly Said[]> {
    if (this.#said?.book !== this.book) {
      const pointing = this.#instance.records
        .pointing()
        .filter((by) => hasOwnProblem(by, this.view(by)))
        .sort(comparePlaces);
      const cells = saidOf(pointing.map((by) => ({ by, at: this.pointedAt(by) })));
      this.#said = { book: this.book, cells };
    }
    return this.#said.cells;
  }

  #unusualAt(place: Place): string | null {
    const typed = this.#typed(place);
    const find = () => this.#unusualIn(typed, place.page);
    const odd = this.#instance.records.oddities.text(this.#instance.address(place), find);
    return [...(odd === null ? [] : [odd]), ...this.unmatched(typed, place.page)].join("; ") || null;
  }

  /** The criteria of a formula whose words stand in no cell of their ranges, in sentences. */
  unmatched(formula: string, page: number): readonly string[] {
    if (this.#unmatched?.book !== this.book) {
      const calculate = (part: string, on: number) => this.#instance.calculate(part, on);
      const asked = { book: this.worked, value: (place: Place) => this.value(place), calculate };
      this.#unmatched = { book: this.book, words: new Unmatched(asked) };
    }
    return isFormula(formula) ? this.#unmatched.words.in(formula, page) : [];
  }

  /** The cells that have an error, a verdict that is not ok, a lay or perhaps something unusual. */
  standingOut(): Place[] {
    const laid = this.#instance.records.laid().map(({ place }) => place);
    return [...this.#instance.standingOut(), ...laid, ...this.#instance.records.odd()];
  }

  /** The cells whose formulas give a function something unusual, with the sentence of each. */
  odd(): { readonly place: Place; readonly sentence: string }[] {
    return this.#instance.records.odd().flatMap((place) => {
      const sentence = this.#unusualAt(place);
      return sentence === null ? [] : [{ place, sentence }];
    });
  }

  /** The typed cells that count as nothing in formulas that need a number from them. */
  get uncounted(): UncountedCells {
    return this.#uncountedNow().cells;
  }

  #uncountedNow(): Uncounted {
    if (this.#uncounted?.book !== this.book) {
      const works = (formula: Place) => {
        const raw = this.#instance.raw(formula);
        // A formula that answers with nothing, as in a line still to be filled, has counted nothing.
        return !(raw instanceof DetailedCellError) && raw !== "";
      };
      const fails = (formula: Place) => this.#instance.raw(formula) instanceof DetailedCellError;
      const uses = this.#uses.of(this.worked);
      const cells = uncountedCells(this.worked, this.#kinds, works, uses, { fails });
      this.#uncounted = { book: this.book, cells, users: uncountedByUser(cells) };
    }
    return this.#uncounted;
  }

  #typed({ page, row, column }: Place): string {
    return typedAt(this.worked, page, row, column);
  }

  /** The sentence of an error, as seen from the cell where it began. */
  #sentence(error: DetailedCellError, { page, row, column }: Place): string {
    const place = { page, row, column };
    if (this.#instance.isSetAside(place)) return CANT_BE_WORKED;
    return fittingFault(this.book, place) ?? sentence(error, this.#scene(this.#typed(place), page, place));
  }

  #scene(formula: string, page: number, place?: Place): Scene {
    const value = (one: Place) => this.value(one);
    const circular = () => rarelyAsked.circularCells?.(this.#instance) ?? [];
    return { book: this.worked, formula, page, place, isFunction, value, circular };
  }

  /**
   * Calculates a formula as if it stood on `page`, changing nothing. `unusual` says what is unusual
   * in it and which cells it leaves out.
   */
  evaluate(
    formula: string,
    page = 0,
  ): { value: number | string | boolean | null; kind: Kind; unusual: string | null } | { problem: string } {
    const raw = this.#instance.calculate(formula, page);
    if (raw === undefined) return { problem: unreadable(this.#scene(formula, page)) };
    if (raw instanceof DetailedCellError) {
      const from = raw.address ? findPlace(this.book, raw.address) : null;
      if (!from) return { problem: sentence(raw, this.#scene(formula, page)) };
      const where = cellText(this.book, from);
      return { problem: `${where}: ${this.#sentence(raw, from)}` };
    }
    const left = leftOutOf(this.worked, this.#kinds, formula, page);
    const unusual =
      [this.#unusualIn(formula, page) ?? [], this.unmatched(formula, page), left].flat().join("; ") || null;
    return { value: raw, kind: this.#kinds.ofTree(formulaTree(formula), page), unusual };
  }

  /** Why a formula on `page` can't be read at all, in a sentence; null when it can. Nothing is calculated. */
  unreadable(formula: string, page = 0): string | null {
    const refusal = refused(formula, this.book.decimal);
    return (
      refusal ?? (this.#instance.canParse(formula, page) ? null : unreadable(this.#scene(formula, page)))
    );
  }

  /** The sewing functions called while the formula of a cell is calculated, innermost first. */
  calls(place: Place): readonly Call[] {
    const typed = this.#typed(place);
    if (!isFormula(typed) || this.#instance.isStopped(place)) return [];
    return this.#instance.callsOf(typed, place.page);
  }

  /** What is unusual in a formula, in sentences, or null; the formula is calculated once more to find out. */
  #unusualIn(formula: string, page: number): string | null {
    if (!isFormula(formula)) return null;
    const value = (part: string) => this.#instance.calculate(`=${part}`, page);
    return oddities(formula, this.#instance.callsOf(formula, page), this.setting, value).join(" ") || null;
  }

  /** The cells that lay pieces on cloth, in the order in which they were calculated. */
  laid(): Laid[] {
    return this.#instance.records.laid();
  }

  /** The cells that a cell's answer rests on, in the order of the formula; ranges cell by cell, and of a chart only what was taken from it. */
  restsOn(place: Place): Place[] {
    const typed = this.#typed(place);
    if (!isFormula(typed)) return [];
    const taken = this.#instance.records.takenBy(place);
    return precedents(this.worked, typed, place.page, (area) => takenFrom(area, taken));
  }

  /** The cells of lists that the answer of a cell rests on, for the lists of which that is known. */
  takenBy(place: Place): readonly CellInList<Place>[] {
    return this.#instance.records.takenBy(place);
  }

  /** The cells that estimate something, and what each says. */
  estimates(): readonly { readonly place: Place; readonly sentence: string }[] {
    return this.#instance.records.estimates();
  }

  address(place: Place): string {
    return fullAddress(this.book, place);
  }

  destroy(): void {
    this.letGo();
    this.#instance.destroy();
  }
}
