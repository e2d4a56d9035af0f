/**
 * What a question is asked of: an engine of its own over the same book, with only the
 * formulas that the watched cells rest on. The open book is never touched.
 */
import { withDecimalMark } from "../../functions/decimal.ts";
import type { LayOrigin } from "../../functions/lay.ts";
import { type Place, placeKey } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import type { Ahead, StepTaken } from "./ahead.ts";
import { Engine } from "./engine.ts";
import { cellKey, cellText } from "./label.ts";
import { type LaidLay, leastSearched } from "./laid.ts";
import type { LayDesk } from "./lay-desk.ts";
import type { Odd } from "./odd-steps.ts";
import { Upstream } from "./references.ts";
import { dayText } from "./show.ts";
import { clean, type VariedCell } from "./varied-cell.ts";

/** What a watched cell holds at a setting, or why it holds nothing. */
export type Reading = { readonly value: number | string | boolean | null } | { readonly sentence: string };

export const numberOf = (reading: Reading | undefined): number | null =>
  reading && "value" in reading && typeof reading.value === "number" ? reading.value : null;

/** The book with the formulas that the watched cells do not rest on left blank: nothing that is asked changes by it. */
function lean(book: Book, upstream: Upstream): Book {
  const pages = book.pages.map((page, index) => ({
    ...page,
    rows: page.rows.map((row, r) =>
      row.map((typed, column) =>
        isFormula(typed) && !upstream.has({ page: index, row: r, column }) ? "" : typed,
      ),
    ),
  }));
  return { ...book, pages };
}

/** Threads that work settings ahead, and whether a lay of theirs is the lay that this thread's desk gives. */
export interface Help {
  readonly ahead: Ahead;
  agrees(lay: LaidLay): boolean;
}

export class QuestionEngine {
  readonly book: Book;
  readonly varied: readonly VariedCell[];
  readonly watched: readonly Place[];
  readonly upstream: Upstream;
  readonly #lean: Book;
  readonly #engine: Engine;
  readonly #help: Help | null;
  /** What was read last, when it was worked by another thread. */
  #taken: StepTaken | null = null;

  constructor(
    book: Book,
    desk: LayDesk,
    varied: readonly VariedCell[],
    watched: readonly Place[],
    help: Help | null = null,
  ) {
    this.book = book;
    this.varied = varied;
    this.watched = watched;
    this.upstream = new Upstream(book, watched);
    this.#lean = lean(book, this.upstream);
    this.#engine = new Engine(this.#lean, desk);
    this.#help = help;
  }

  /** The settings that will be read next, in this order, all of them or up to some: others may work some meanwhile. */
  expect(settings: readonly (readonly number[])[], areAllRead: boolean): void {
    this.#help?.ahead.expect(settings, areAllRead);
  }

  /** The watched cells with these figures in the varied cells, in their order. */
  read(figures: readonly number[]): readonly Reading[] {
    this.#taken = this.#takenAt(figures);
    if (this.#taken) return this.#taken.readings;
    const typings = this.varied.map((cell, i) => ({ ...cell.place, typed: this.#typed(cell, figures[i]!) }));
    this.#engine.become(type(this.#lean, typings));
    return this.watched.map((place) => this.#reading(place));
  }

  /** What is unusual in the formulas below the watched cells, at the figures that were read last. */
  get odd(): readonly Odd[] {
    if (this.#taken) return this.#taken.odd;
    return this.#engine.odd().map(({ place, sentence }) => ({ label: cellKey(this.book, place), sentence }));
  }

  /** The watched cells as the book stands. */
  now(): readonly Reading[] {
    this.#taken = null;
    this.#engine.become(this.#lean);
    return this.watched.map((place) => this.#reading(place));
  }

  /** The cells that the watched cells rest on as the book stands; of a chart, only the figures that were taken from it. */
  under(): Place[] {
    this.#taken = null;
    this.#engine.become(this.#lean);
    const found = new Map<string, Place>();
    const waiting = [...this.watched];
    for (let place = waiting.pop(); place; place = waiting.pop()) {
      if (found.has(placeKey(place))) continue;
      found.set(placeKey(place), place);
      waiting.push(...this.#engine.restsOn(place));
    }
    return [...found.values()];
  }

  /** Whether what is watched rests on pieces laid on cloth. */
  get lays(): boolean {
    return this.laid.length > 0;
  }

  /** The lays that what is watched rests on. */
  get laid(): readonly LaidLay[] {
    return this.#taken ? this.#taken.laid : this.#engine.laid().flatMap(({ lays }) => lays);
  }

  /** How the least searched of all lays was found that the watched cells rest on; null when they rest on none. */
  get origin(): LayOrigin | null {
    return this.#taken ? this.#taken.origin : leastSearched(this.laid);
  }

  /** What another thread found at these figures, if this thread's lays are the same; every lay is asked for, so that they are known from now on as if this thread had worked the setting. */
  #takenAt(figures: readonly number[]): StepTaken | null {
    const help = this.#help;
    const step = help?.ahead.take(figures);
    return step?.laid.every((lay) => help!.agrees(lay)) ? step : null;
  }

  #typed(cell: VariedCell, figure: number): string {
    return cell.kind === "days" && figure > 20_000
      ? dayText(figure)
      : withDecimalMark(String(clean(figure)), this.book.decimal);
  }

  #reading(place: Place): Reading {
    const value = this.#engine.value(place);
    if (value !== null) return { value };
    const { problem } = this.#engine.view(place);
    if (!problem) return { value };
    const elsewhere = placeKey(problem.from) !== placeKey(place);
    return {
      sentence: elsewhere ? `${cellText(this.book, problem.from)}: ${problem.sentence}` : problem.sentence,
    };
  }

  destroy(): void {
    this.#help?.ahead.end();
    this.#engine.destroy();
  }
}
