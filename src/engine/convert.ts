/**
 * A book converted to another unit of length. The answers do not move: typed lengths and outlines are
 * converted, and a bare number that stands for a length inside a formula gets the name of its unit.
 * What is rounded to the tape's own finest mark follows the new tape.
 */

import { type Decimal, withDecimalMark } from "../../functions/decimal.ts";
import type { Kind } from "../../functions/define.ts";
import { DEFAULT_MARK, markSize, roundTo, tapeText } from "../../functions/fractions.ts";
import { toDigits } from "../../functions/number-text.ts";
import { BOOK_UNITS, convert, fromTape, type Unit } from "../../functions/units.ts";
import { findPlace, type Place } from "../book/address.ts";
import { unclearComma } from "../book/commas.ts";
import { type } from "../book/edit.ts";
import { type Call, formulaTree, isFormula, type Tree, textIn, withSemicolons } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { type Content, namesUnit, understand } from "./content.ts";
import { spread, takesOfCall } from "./expected-kinds.ts";
import { workedBook } from "./fitted-cells.ts";
import { dimension, isBare } from "./kind-of-tree.ts";
import { Kinds } from "./kinds.ts";
import { areaOf, isWide } from "./references.ts";
import { scalePath } from "./rescale.ts";

/** The book in another unit, its finest mark the usual one there. */
export function convertBook(book: Book, unit: Unit): Book {
  if (book.unit === unit) return book;
  const kinds = new Kinds(workedBook(book));
  const pages = book.pages.map((page, index) => ({
    ...page,
    rows: page.rows.map((row, r) =>
      row.map((typed, column) => convertCell(book, kinds, typed, { page: index, row: r, column }, unit)),
    ),
  }));
  const trials = book.trials.map((trial) => {
    const typings = Object.entries(trial.cells).map(([address, typed]) => ({
      address,
      typed,
      place: findPlace(book, address),
    }));
    const tried = type(
      book,
      typings.flatMap(({ place, typed }) => (place ? [{ ...place, typed }] : [])),
    );
    const triedKinds = kinds.follow(workedBook(tried));
    const cells = typings.map(({ address, typed, place }) => [
      address,
      place ? convertCell(tried, triedKinds, typed, place, unit) : typed,
    ]);
    return { ...trial, cells: Object.fromEntries(cells) };
  });
  return { ...book, unit, mark: DEFAULT_MARK[unit], pages, trials };
}

function convertCell(book: Book, kinds: Kinds, typed: string, place: Place, unit: Unit): string {
  if (isFormula(typed))
    return convertFormula(
      typed,
      kinds.of(place),
      book.unit,
      unit,
      kinds.onPage(place.page),
      book.decimal,
      (tree) => refersToBlank(book, tree, place.page),
      isWide(book, place.page),
    );
  const column = book.pages[place.page]?.columns[place.column]?.kind ?? "any";
  return convertTyped(
    typed,
    understand(typed, column, book.unit, book.decimal),
    kinds.of(place),
    book.unit,
    unit,
    book.decimal,
  );
}

/** Whether a part of a formula is a cell in which nothing is typed, or one that only repeats such a cell. */
function refersToBlank(book: Book, tree: Tree, page: number): boolean {
  let [part, on] = [tree, page];
  for (let steps = 0; steps < 20; steps += 1) {
    const area = part.is === "cell" || part.is === "name" ? areaOf(book, part, on) : null;
    if (!area) return false;
    const typed = typedAt(book, area.page, area.top, area.left);
    if (typed.trim() === "") return true;
    if (!isFormula(typed)) return false;
    [part, on] = [formulaTree(typed), area.page];
  }
  return false;
}

/** A typed figure or outline; one that names its unit stands as it is. */
function convertTyped(
  typed: string,
  content: Content,
  kind: Kind,
  from: Unit,
  to: Unit,
  decimal?: Decimal,
): string {
  const factor = convert(1, from, to);
  if (content.is === "text")
    return kind === "piece" || /^\s*[Mm][\s\d.+-]/.test(typed) ? (scalePath(typed, factor) ?? typed) : typed;
  if (content.is !== "length" && content.is !== "number") return typed;
  if (kind === "area" && content.is === "number")
    return withDecimalMark(figureText(content.value * factor ** 2), decimal);
  if (kind !== "length" || (content.is === "length" && namesUnit(typed))) return typed;
  const value = convert(content.value, from, to);
  const figure = withDecimalMark(BOOK_UNITS[to].tape === "in" ? inchText(value) : figureText(value), decimal);
  // A fraction alone counts as a length; a decimal needs its unit to count as one.
  return content.is === "length" && !content.sure && !figure.includes("/") ? `${figure} ${to}` : figure;
}

/** Rounded to twelve digits, or to eight where the difference is rounding error only: 93 cm converted to inches and back is 93. */
function figureText(value: number): string {
  const short = toDigits(value, 8);
  const near = Math.abs(short - value) <= 6e-12 * Math.abs(value);
  return String(near ? short : toDigits(value, 12));
}

/** A value on a mark of the tape is written as a fraction, any other in decimals. */
function inchText(value: number): string {
  const step = markSize("1/32", "in");
  return Math.abs(roundTo(value, step) - value) < 1e-11 * Math.max(1, Math.abs(value))
    ? tapeText(value, "in", "1/32")
    : figureText(value);
}

/** Functions that go by steps: of whole numbers and decimals, or of their second argument. */
const STEPPING: Record<string, "whole" | "second"> = {
  ROUND: "whole", ROUNDUP: "whole", ROUNDDOWN: "whole", INT: "whole", TRUNC: "whole", EVEN: "whole", ODD: "whole",
  CEILING: "second", FLOOR: "second", MROUND: "second", MOD: "second", QUOTIENT: "second",
}; // biome-ignore format: a table

/** Bare figures that stand for lengths get their unit's name: 54 → IN(54). */
export function convertFormula(
  formula: string,
  want: Kind,
  from: Unit,
  to: Unit,
  kindOf: (tree: Tree) => Kind,
  decimal?: Decimal,
  isBlank: (tree: Tree) => boolean = () => false,
  isBlock: (tree: Tree) => boolean = () => false,
): string {
  const one = `${from.toUpperCase()}(1)`;
  const edits = new Edits();
  const stays = new Set<Tree>();
  /** A function that goes by steps keeps the steps of the old unit; the rounding error of the conversion is removed first. */
  const step = (call: Call): void => {
    const kind = call.args.map((arg) => (arg && !isBare(arg) ? kindOf(arg) : "figure")).find(dimension);
    const unit = kind === "length" ? one : kind === "area" ? `${one}^2` : null;
    const keepsUnit = unit !== null && call.name !== "QUOTIENT";
    if (keepsUnit) edits.around(call.span, "(", `*${unit})`);
    const count = unit !== null && STEPPING[call.name] === "second" ? 2 : 1;
    call.args.slice(0, count).forEach((arg, i) => {
      if (!arg || isRounded(arg) || !hasLength(arg, kindOf)) {
        if (arg && isBare(arg)) stays.add(arg);
        return;
      }
      edits.around(call.spans[i]!, unit ? "ROUND((" : "ROUND(", unit ? `)/${unit};9)` : ";9)");
    });
  };
  /**
   * The default of a length that is left out differs from tape to tape, so the old default is written
   * into the formula. Where the argument is a blank cell, the default is written beside the cell,
   * which may be filled later.
   */
  const writeDefaults = (call: Call): void => {
    const leftOut = Object.values(takesOfCall(call, isBlock) ?? {}).flatMap((take, i) => {
      if (typeof take.otherwise !== "object" || take.otherwise === null) return [];
      const text = `${from.toUpperCase()}(${fromTape(take.otherwise, from)})`;
      const arg = call.args[i] ?? null;
      if (arg === null) return [{ at: i, text }];
      if (!isBlank(arg)) return [];
      const cell = formula.slice(...call.spans[i]!);
      edits.around(call.spans[i]!, `IF(ISBLANK(${cell});${text};`, ")");
      return [];
    });
    let written = call.spans.length;
    let after = "";
    for (const { at, text } of leftOut) {
      if (at < call.spans.length) edits.around(call.spans[at]!, text, "");
      else {
        after += ";".repeat(at - written + 1) + text;
        written = at + 1;
      }
    }
    if (after) edits.around([call.span[1] - 1, call.span[1] - 1], after, "");
  };
  const visit = (tree: Tree | null): void => {
    if (!tree) return;
    if (tree.is === "list") tree.items.forEach(visit);
    if (tree.is !== "call" && tree.is !== "sign") return;
    const first = tree.args[0];
    if (tree.is === "call" && STEPPING[tree.name]) step(tree);
    if (tree.is === "call") writeDefaults(tree);
    // TAPE reads a text, in which a number without a unit is in the book's unit.
    if (
      tree.is === "call" &&
      tree.name === "TAPE" &&
      first?.is === "text" &&
      isUnnamed(first.text, from, decimal)
    )
      edits.around([first.token.at, first.token.at + first.token.text.length - 1], "", ` ${from}`);
    tree.args.forEach(visit);
  };
  const tree = formulaTree(formula);
  visit(tree);
  spread(tree, want, {
    kindOf,
    isWide: isBlock,
    stays: (part) => stays.has(part),
    expect: (leaf, kind) => {
      if (leaf.is === "text" && kind === "piece") {
        const scaled = scalePath(textIn(leaf.token), convert(1, from, to));
        if (scaled) edits.instead(leaf.token, `"${scaled}"`);
      }
      if ((leaf.is !== "number" && leaf.is !== "tape") || !isBare(leaf) || Number(leaf.text) === 0) return;
      const { at, text } = leaf.token;
      if (kind === "length") edits.around([at, at + text.length], `${from.toUpperCase()}(`, ")");
      if (kind === "area") edits.around([at, at + text.length], "(", `*${one}^2)`);
    },
  });
  const done = edits.done(formula);
  // An inserted ; must not give a comma of the formula two readings.
  return unclearComma(done) ? edits.done(withSemicolons(formula)) : done;
}

/** Whether a part is rounded to nine places already. */
const isRounded = (tree: Tree): boolean =>
  tree.is === "call" && tree.name === "ROUND" && tree.args[1]?.is === "number" && tree.args[1].text === "9";

/** Whether a length stands anywhere in a part. */
function hasLength(tree: Tree, kindOf: (tree: Tree) => Kind): boolean {
  if (isBare(tree)) return false;
  const kind = kindOf(tree);
  if (kind === "length" || kind === "area") return true;
  return (
    (tree.is === "call" || tree.is === "sign") &&
    tree.args.some((arg) => arg !== null && hasLength(arg, kindOf))
  );
}

function isUnnamed(text: string, unit: Unit, decimal: Decimal | undefined): boolean {
  const content = understand(text, "any", unit, decimal);
  return content.is === "number" || (content.is === "length" && !content.sure);
}

/** Texts put into a formula: before and after its parts, the outer ones first. */
class Edits {
  readonly #before = new Map<number, string>();
  readonly #after = new Map<number, string>();
  readonly #instead = new Map<number, { readonly length: number; readonly text: string }>();

  around([from, to]: readonly [number, number], before: string, after: string): void {
    this.#before.set(from, (this.#before.get(from) ?? "") + before);
    this.#after.set(to, after + (this.#after.get(to) ?? ""));
  }

  instead({ at, text: old }: { readonly at: number; readonly text: string }, text: string): void {
    this.#instead.set(at, { length: old.length, text });
  }

  done(formula: string): string {
    let out = "";
    for (let i = 0; i <= formula.length; i += 1) {
      out += (this.#after.get(i) ?? "") + (this.#before.get(i) ?? "");
      const other = this.#instead.get(i);
      out += other ? other.text : (formula[i] ?? "");
      if (other) i += other.length - 1;
    }
    return out;
  }
}
