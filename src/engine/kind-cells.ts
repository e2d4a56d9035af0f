/**
 * The cells of a book as far as their kinds go: what each holds, which cells a formula names, which formulas
 * name a cell, and an order in which every formula comes after those that it rests on. A cell is a number, so
 * that what is known of a large book stands in a few arrays.
 */
import { alikeKey, cutFormula } from "../book/alike.ts";
import { treeOf } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { type At, CellNumbers } from "./cell-numbers.ts";
import { Growing } from "./growing.ts";
import { type Holds, holdsAt, isFormulaHeld } from "./kind-content.ts";
import { type Asked, askedOfColumns, MOST_CELLS } from "./kind-lists.ts";
import { orderOf } from "./kind-order.ts";
import { KindPattern } from "./kind-pattern.ts";
import { NamedAreas } from "./named-areas.ts";
import { type Area, isIn, isSingle } from "./references.ts";

/** A part of a formula that means no cell. */
const NOWHERE = -1;

/** How many formulas a slice has. */
const SLICE = 5000;

/** What an edit may have changed. */
export interface Changed {
  readonly formulas: ReadonlySet<number>;
  readonly cells: ReadonlySet<number>;
}

/** Whether an area may hold more cells than are looked at. */
const isLong = ({ top, left, bottom, right }: Area): boolean =>
  (bottom - top + 1) * (right - left + 1) > MOST_CELLS;

export class KindCells {
  #book: Book;
  readonly #numbers: CellNumbers;
  #holds: Uint8Array;
  readonly patterns: (KindPattern | undefined)[];
  readonly #patternsKnown = new Map<string, KindPattern>();
  /** By cell, where its parts begin among `#parts`: the number of a cell, or −2 − that of an area. */
  #partsFrom: Int32Array;
  readonly #parts = new Growing(1024);
  readonly #areas = new NamedAreas();
  /** Formulas that name a cell, as chains: by cell the first link, by link a formula and the next link. */
  #firstLink: Int32Array;
  readonly #linkTo = new Growing(1024);
  readonly #linkNext = new Growing(1024);
  /** With more links everything is found anew: those of formulas that are gone stay. */
  #mostLinks = 0;
  readonly #lists = new Map<number, readonly Asked[]>();
  #order: Float64Array;
  /** The formulas of the book at first, each after those it rests on. */
  inOrder: readonly number[] = [];
  /** By formula, the number of the circle it is part of; formulas that are part of none are missing. */
  circles: ReadonlyMap<number, number> = new Map();

  constructor(book: Book) {
    this.#book = book;
    this.#numbers = new CellNumbers(book);
    const count = this.size;
    const room = Math.ceil(count * 1.05) + 64;
    this.#holds = new Uint8Array(room);
    this.patterns = new Array(count);
    this.#partsFrom = new Int32Array(room);
    this.#firstLink = new Int32Array(room).fill(-1);
    this.#order = new Float64Array(room);
  }

  /** Reads all formulas, in slices; before that nothing is known. */
  *read(): Generator<void> {
    const formulas: number[] = [];
    for (const [page, { rows }] of this.#book.pages.entries())
      for (const [r, row] of rows.entries())
        for (let column = 0; column < row.length; column += 1) {
          if (!row[column]!.includes("=")) continue;
          const cell = this.number(page, r, column);
          if (isFormulaHeld(this.holds(cell, { page, row: r, column }))) formulas.push(cell);
        }
    for (const [i, cell] of formulas.entries()) {
      this.#read(cell);
      if (i % SLICE === 0) yield;
    }
    this.#mostLinks = this.#linkTo.length * 2 + 1000;
    const { order, circles } = orderOf(formulas, this.size, (formula) => this.#restsOf(formula));
    for (const [i, formula] of order.entries()) this.#order[formula] = i + 1;
    this.inOrder = order;
    this.circles = circles;
  }

  /** Whether a part may hold more cells than are looked at. */
  isLong(part: number): boolean {
    return part < NOWHERE && isLong(this.#areas.at(-2 - part));
  }

  /** How many cells have numbers, those that are in no row yet included. */
  get size(): number {
    return this.#numbers.size;
  }

  /** The number of a cell; a cell beyond the rows gets one when it is first asked for. */
  number(page: number, row: number, column: number): number {
    const cell = this.#numbers.number(page, row, column);
    if (cell >= this.#holds.length) this.#makeRoom();
    return cell;
  }

  /** The number of a cell, or undefined for one beyond the rows that no formula names. */
  known(page: number, row: number, column: number): number | undefined {
    return this.#numbers.known(page, row, column);
  }

  #makeRoom(): void {
    const room = this.size * 2;
    const holds = new Uint8Array(room);
    holds.set(this.#holds);
    this.#holds = holds;
    const from = new Int32Array(room);
    from.set(this.#partsFrom);
    this.#partsFrom = from;
    const links = new Int32Array(room).fill(-1);
    links.set(this.#firstLink);
    this.#firstLink = links;
    const order = new Float64Array(room);
    order.set(this.#order);
    this.#order = order;
  }

  at(cell: number): At {
    return this.#numbers.at(cell);
  }

  /** What a cell holds. */
  holds(cell: number, at?: At): Holds {
    let holds = this.#holds[cell]!;
    if (holds === 0) {
      const { page, row, column } = at ?? this.at(cell);
      holds = holdsAt(this.#book, page, row, column);
      this.#holds[cell] = holds;
    }
    return holds as Holds;
  }

  isFormula(cell: number): boolean {
    return this.patterns[cell] !== undefined;
  }

  order(cell: number): number {
    return this.#order[cell]!;
  }

  /** Reads the formula of a cell: its pattern, its parts, and what it expects of lists. */
  #read(cell: number): void {
    const { page, row, column } = this.at(cell);
    const typed = typedAt(this.#book, page, row, column);
    const cut = cutFormula(typed);
    const key = cut ? `${page} ${alikeKey(cut, row, column)}` : `${page}.${row}.${column} ${typed}`;
    let pattern = this.#patternsKnown.get(key);
    if (!pattern) {
      pattern = new KindPattern(this.#book, treeOf(typed), { page, row, column });
      this.#patternsKnown.set(key, pattern);
    }
    this.patterns[cell] = pattern;
    this.#partsFrom[cell] = this.#parts.length;
    for (const part of pattern.parts) {
      const area = pattern.areaFor(part, row, column);
      if (!area) this.#parts.push(NOWHERE);
      else if (isSingle(area)) {
        const named = this.number(area.page, area.top, area.left);
        this.#parts.push(named);
        this.#linkTo.push(cell);
        this.#linkNext.push(this.#firstLink[named]!);
        this.#firstLink[named] = this.#linkTo.length - 1;
      } else {
        this.#parts.push(-2 - this.#areas.add(area, cell));
      }
    }
    if (pattern.lists.length > 0) this.#lists.set(cell, this.#askedOfLists(pattern, row, column));
  }

  /** A part of a formula: the number of a cell, of an area as `cellsOfPart` takes it, or −1. */
  part(cell: number, index: number): number {
    return this.#parts.at(this.#partsFrom[cell]! + index);
  }

  /** Calls with each cell of a part in which something is typed, at most `most` of them, and with a single cell in any case, until `look` answers true. */
  eachOfPart(part: number, most: number, look: (cell: number) => unknown): void {
    if (part >= 0) look(part);
    if (part >= NOWHERE) return;
    const { page, top, left, bottom, right } = this.#areas.at(-2 - part);
    const rows = this.#book.pages[page]?.rows ?? [];
    let seen = 0;
    for (let row = top; row <= Math.min(bottom, rows.length - 1); row += 1) {
      const typed = rows[row]!;
      for (let column = left; column <= Math.min(right, typed.length - 1); column += 1) {
        if (!typed[column]) continue;
        if (seen === most || look(this.number(page, row, column)) === true) return;
        seen += 1;
      }
    }
  }

  /** Calls with each formula that names a cell, and perhaps with some that named it before. */
  eachUser(cell: number, look: (formula: number) => unknown): void {
    for (let link = this.#firstLink[cell]!; link >= 0; link = this.#linkNext.at(link))
      if (this.patterns[this.#linkTo.at(link)] && look(this.#linkTo.at(link)) === true) return;
    if (this.#areas.size > 0)
      this.#areas.eachUser(this.at(cell), (formula) => this.patterns[formula] && look(formula));
  }

  /** Whether a formula names a cell, which stands at `at`. */
  names(formula: number, cell: number, at: At): boolean {
    return this.patterns[formula]!.parts.some((_, i) => this.isInPart(this.part(formula, i), cell, at));
  }

  /** Whether a cell in which something is typed, or a single one in any case, is of a part. */
  isInPart(part: number, cell: number, at: At): boolean {
    if (part >= NOWHERE) return part === cell;
    const area = this.#areas.at(-2 - part);
    if (!isIn(area, at) || typedAt(this.#book, at.page, at.row, at.column) === "") return false;
    if (!isLong(area)) return true;
    let found = false;
    this.eachOfPart(part, MOST_CELLS, (one) => {
      found = one === cell;
      return found;
    });
    return found;
  }

  /**
   * Follows the book to the next one, in which these cells are typed otherwise. Answers with the formulas that
   * must be looked at again and the cells of which something else may be expected; or null when everything is to
   * be found anew, because the formulas' order does not stay or more changed than is worth following.
   */
  change(next: Book, edits: readonly At[]): Changed | null {
    if (this.circles.size > 0 || this.#linkTo.length > this.#mostLinks) return null;
    const [formulas, cells] = [new Set<number>(), new Set<number>()];
    const edited = edits.map((at) => ({ at, cell: this.number(at.page, at.row, at.column) }));
    for (const { at, cell } of edited) {
      if (this.patterns[cell]) this.eachTarget(cell, (one) => cells.add(one));
      // An area with more cells than are looked at loses or gains others than the edited ones.
      if (
        this.#areas.someWith(
          at,
          (area, i) => isLong(area) && this.#count(-2 - i) + edits.length >= MOST_CELLS,
        )
      )
        return null;
      this.patterns[cell] = undefined;
      this.#lists.delete(cell);
      this.#holds[cell] = 0;
      cells.add(cell);
    }
    this.#book = next;
    for (const { at, cell } of edited) if (isFormulaHeld(this.holds(cell, at))) this.#read(cell);
    for (const { cell } of edited) {
      if (this.patterns[cell]) formulas.add(cell);
      this.eachUser(cell, (user) => formulas.add(user));
    }
    for (const formula of formulas) this.#readLists(formula, cells);
    for (const { at, cell } of edited) if (this.patterns[cell] && !this.#place(cell, at)) return null;
    return edited.every(({ at, cell }) => !this.patterns[cell] || this.#isPlaced(cell, at))
      ? { formulas, cells }
      : null;
  }

  #count(part: number): number {
    let count = 0;
    this.eachOfPart(part, MOST_CELLS, () => {
      count += 1;
    });
    return count;
  }

  /** Follows the book to the next one, in which no cell differs as far as kinds go. */
  take(next: Book): void {
    this.#book = next;
  }

  /** Calls with each cell of which a formula may expect a kind. */
  eachTarget(formula: number, hear: (cell: number) => unknown): void {
    const { parts } = this.patterns[formula]!;
    for (let i = 0; i < parts.length; i += 1)
      this.eachOfPart(this.part(formula, i), MOST_CELLS, (cell) => void hear(cell));
    for (const { cell } of this.askedOf(formula)) hear(cell);
  }

  /** Reads again what a formula expects of lists; the cells of which it did so or does now are added to `cells`. */
  #readLists(formula: number, cells: Set<number>): void {
    const pattern = this.patterns[formula]!;
    if (pattern.lists.length === 0) return;
    const { row, column } = this.at(formula);
    const asked = this.#askedOfLists(pattern, row, column);
    for (const one of [...this.askedOf(formula), ...asked]) cells.add(one.cell);
    this.#lists.set(formula, asked);
  }

  /** The place in the order after all that a formula names and before all that name it: greater than the one, less than the other. */
  #between(formula: number, at: At): readonly [number, number] {
    let [low, high] = [0, Number.POSITIVE_INFINITY];
    for (const rest of this.#restsOf(formula))
      low = Math.max(low, rest === formula ? Number.POSITIVE_INFINITY : this.#order[rest]!);
    this.eachUser(formula, (user) => {
      if (this.names(user, formula, at)) high = Math.min(high, this.#order[user]!);
    });
    return [low, high];
  }

  #isPlaced(formula: number, at: At): boolean {
    const [low, high] = this.#between(formula, at);
    return low < this.#order[formula]! && this.#order[formula]! < high;
  }

  #place(formula: number, at: At): boolean {
    const [low, high] = this.#between(formula, at);
    const place = high === Number.POSITIVE_INFINITY ? Math.floor(low) + 1 : (low + high) / 2;
    this.#order[formula] = place;
    return low < place && place < high;
  }

  /** What a formula expects of the columns of lists. */
  askedOf(formula: number): readonly Asked[] {
    return this.#lists.get(formula) ?? NOTHING;
  }

  /** What the columns of lists hold, by their headings. */
  #askedOfLists(pattern: KindPattern, row: number, column: number): Asked[] {
    return pattern.lists.flatMap(({ part, form }) => {
      const area = pattern.areaFor(pattern.parts[part]!, row, column);
      return area && area.right > area.left ? askedOfColumns(this.#book, area, form, this) : [];
    });
  }

  /** The formulas that a formula names, in lists at most `MOST_CELLS` of each. */
  #restsOf(cell: number): number[] {
    const rests: number[] = [];
    const pattern = this.patterns[cell]!;
    for (let i = 0; i < pattern.parts.length; i += 1)
      this.eachOfPart(this.part(cell, i), MOST_CELLS, (one) => {
        if (this.patterns[one]) rests.push(one);
      });
    return rests;
  }
}

const NOTHING: readonly Asked[] = [];
