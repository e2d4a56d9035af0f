/**
 * Formulas of a book as other spreadsheet programs calculate them. A call of a sewing function becomes its
 * steps in plain arithmetic, in cells of a sheet of workings; what a curve or a lay gave stands there as a value.
 */
import { type Argument, defaultValue } from "../../functions/arguments.ts";
import { asBlock } from "../../functions/block.ts";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell, Declaration } from "../../functions/define.ts";
import { readTape } from "../../functions/fractions.ts";
import { explain, isRefused, type Step } from "../../functions/run.ts";
import { columnLetters } from "../book/address.ts";
import { type Call, formulaTree, type Tree, treeOf } from "../book/formula.ts";
import { isCell, nameMeant } from "../book/names.ts";
import { MOST_ROWS } from "../book/shape.ts";
import type { Engine } from "../engine/engine.ts";
import { type Area, areaOf } from "../engine/references.ts";

/** A line of the sheet of workings. `content` is a formula when it begins with "=" and `formula` is set. */
export interface WorkingsLine {
  readonly where: string;
  readonly call: string;
  readonly name: string;
  readonly content: Cell;
  readonly formula: boolean;
  /** The rule over names, or why the value is fixed. */
  readonly how: string;
}

/** Why a formula can't be written for other programs. */
export class NotPlain extends Error {}

/** Pages have one line of headings above their rows on a sheet. */
export const HEADING_LINES = 1;

/** The first line of the workings after what is said above them. */
export const FIRST_WORKING = 4;

const quoted = (title: string): string => `'${title.replaceAll("'", "''")}'`;

export const literal = (value: Cell): string => {
  if (value === null) return '""';
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE()" : "FALSE()";
  return value < 0 ? `(${value})` : String(value);
};

/** Writes the formulas of a book, and gathers the lines of its workings. */
export class LiveFormulas {
  readonly lines: WorkingsLine[] = [];
  /** Why parts of the formula that is being written are fixed values. */
  #fixed: string[] = [];
  #where = "";
  readonly #engine: Engine;
  readonly #sheets: readonly string[];
  readonly #workings: string;

  /** `sheets`: the title of each page's sheet; `workings`: that of the sheet of workings. */
  constructor(engine: Engine, sheets: readonly string[], workings: string) {
    this.#engine = engine;
    this.#sheets = sheets;
    this.#workings = workings;
  }

  /** A formula of a page without "=", and what in it is a fixed value. Throws NotPlain. */
  write(formula: string, page: number, where: string): { readonly text: string; readonly fixed: string[] } {
    this.#fixed = [];
    this.#where = where;
    const before = this.lines.length;
    try {
      return { text: this.#text(formulaTree(formula), formula, page), fixed: this.#fixed };
    } catch (reason) {
      this.lines.length = before;
      throw reason;
    }
  }

  /** A block of cells as sheets have it. */
  area({ page, top, left, bottom, right }: Area, signs: readonly boolean[] = []): string {
    const end = (column: number, row: number, [across, down]: readonly (boolean | undefined)[]) =>
      `${across ? "$" : ""}${columnLetters(column)}${down ? "$" : ""}${row + 1 + HEADING_LINES}`;
    const last = Math.min(bottom, MOST_ROWS - 1);
    const first = end(left, top, signs);
    const sheet = quoted(this.#sheets[page]!);
    return top === bottom && left === right
      ? `${sheet}!${first}`
      : `${sheet}!${first}:${end(right, last, signs)}`;
  }

  #text(tree: Tree, formula: string, page: number, names?: ReadonlyMap<string, string>): string {
    const part = (one: Tree) => this.#text(one, formula, page, names);
    if ("text" in tree && tree.is !== "text" && names?.has(tree.text)) return names.get(tree.text)!;
    switch (tree.is) {
      case "number":
        return String(Number(tree.text));
      case "tape": {
        const read = readTape(tree.text, this.#engine.book.unit);
        if (!read) throw new NotPlain(`${tree.text} is not a number for other programs`);
        return literal(read.length);
      }
      case "text":
        return literal(tree.text);
      case "name": {
        if (/^(true|false)$/i.test(tree.text)) return `${tree.text.toUpperCase()}()`;
        const meant = nameMeant(this.#engine.book, tree.text, page);
        if (!meant) throw new NotPlain(`${tree.text} is not known`);
        return meant.of === null && isCell(meant.block) ? meant.name : this.area(meant.block, [true, true]);
      }
      case "cell":
      case "columns":
      case "rows":
      case "range": {
        const area = areaOf(this.#engine.book, tree, page);
        if (!area) throw new NotPlain("a reference of the formula has no cells");
        return this.area(area, tree.is === "cell" ? dollars(tree.text) : []);
      }
      case "sign": {
        const [a, b] = tree.args.map(part);
        if (tree.sign === "%") return `(${a}%)`;
        return b === undefined ? `(${tree.sign}${a})` : `(${a}${tree.sign}${b})`;
      }
      case "call": {
        if (catalogue.has(tree.name)) return this.#sewing(tree, formula, page);
        return `${tree.name}(${tree.args.map((one) => (one ? part(one) : "")).join(",")})`;
      }
      default:
        throw new NotPlain("the formula has a part that other programs write otherwise");
    }
  }

  #argument(tree: Tree | null, text: string, page: number): Argument {
    if (!tree) return null;
    const area = areaOf(this.#engine.book, tree, page);
    if (!area) {
      const answer = this.#engine.evaluate(`=${text}`, page);
      return "problem" in answer ? null : answer.value;
    }
    const { rows, columns } = this.#engine.book.pages[area.page]!;
    const cells: Cell[] = [];
    for (let row = area.top; row <= Math.min(area.bottom, Math.max(area.top, rows.length - 1)); row += 1)
      for (let column = area.left; column <= area.right; column += 1)
        cells.push(this.#engine.value({ page: area.page, row, column }));
    if (area.top === area.bottom && area.left === area.right) return cells[0]!;
    const wide = area.right - area.left + 1;
    const headings = Array.from({ length: wide }, (_, i) => columns[area.left + i]?.heading ?? "");
    return wide > 1 ? asBlock(cells, wide, headings) : cells;
  }

  /** A call as the cell of the workings that holds its answer. */
  #sewing(call: Call, formula: string, page: number): string {
    const declaration = catalogue.get(call.name)!;
    const texts = call.spans.map(([from, to]) => formula.slice(from, to));
    const args = call.args.map((arg, i) => this.#argument(arg, texts[i]!, page));
    const { answer, steps } = explain(declaration, args, this.#engine.setting);
    const shown = formula.slice(...call.span);
    if (isRefused(answer)) return "NA()";
    const last = steps.findLastIndex(({ value }) => value === answer);
    if (declaration.returns === "piece" || last < 0 || !steps[last]!.formula)
      return this.#value(
        shown,
        "answer",
        answer,
        FIXED[declaration.returns] ?? "a curve, a list or a lay gives it",
      );
    const known = new Map<string, string>();
    const before = this.lines.length;
    try {
      return this.#step(
        steps,
        last,
        (name) => this.#given(declaration, call, name, args, formula, page, shown, known),
        shown,
        known,
      );
    } catch (reason) {
      if (!(reason instanceof NotPlain)) throw reason;
      this.lines.length = before;
      return this.#value(shown, "answer", answer, "its rule reads a list that other programs read otherwise");
    }
  }

  /** A step and the steps that it needs, each a line; the cell of the step. */
  #step(
    steps: readonly Step[],
    at: number,
    given: (name: string) => string,
    shown: string,
    known: Map<string, string>,
  ): string {
    const { name, rule, value, formula } = steps[at]!;
    const key = `step ${at}`;
    const done = known.get(key);
    if (done !== undefined) return done;
    if (!formula) {
      const cell = this.#value(shown, name, value, rule);
      known.set(key, cell);
      return cell;
    }
    const names = new Map<string, string>();
    for (const word of wordsIn(treeOf(rule))) {
      const earlier = steps.findLastIndex((one, i) => i < at && one.name === word);
      names.set(word, earlier < 0 ? given(word) : this.#step(steps, earlier, given, shown, known));
    }
    const cell = this.#line(shown, name, `=${this.#text(treeOf(rule), rule, 0, names)}`, true, rule);
    known.set(key, cell);
    return cell;
  }

  /** An argument as a formula refers to it. */
  #given(
    declaration: Declaration,
    call: Call,
    name: string,
    args: readonly Argument[],
    formula: string,
    page: number,
    shown: string,
    known: Map<string, string>,
  ): string {
    const done = known.get(name);
    if (done !== undefined) return done;
    const index = Object.keys(declaration.takes).indexOf(name);
    const take = declaration.takes[name];
    if (!take) throw new NotPlain(`${name} is not an argument`);
    const tree = call.args[index] ?? null;
    const area = tree && areaOf(this.#engine.book, tree, page);
    if (take.many || Array.isArray(args[index])) {
      if (!area) throw new NotPlain("a list that stands in no cells");
      return this.area(area, [true, true]);
    }
    const left = take.otherwise === undefined ? null : literal(defaultValue(take, this.#engine.book.unit));
    let text = left ?? '""';
    if (tree) {
      const own = this.#text(tree, formula, page);
      text = left === null ? own : `IF(${own}="",${left},${own})`;
    }
    const cell = this.#line(shown, name, `=${text}`, true, take.about);
    known.set(name, cell);
    return cell;
  }

  #value(shown: string, name: string, value: Cell, why: string): string {
    this.#fixed.push(`${shown}: ${name}, ${why}`);
    return this.#line(shown, name, value, false, `a fixed value: ${why}`);
  }

  #line(call: string, name: string, content: Cell, formula: boolean, how: string): string {
    this.lines.push({ where: this.#where, call, name, content, formula, how });
    return `${quoted(this.#workings)}!$D$${FIRST_WORKING + this.lines.length}`;
  }
}

const FIXED: Readonly<Record<string, string>> = {
  piece: "the outline of a piece is drawn by Ellwand",
  verdict: "Ellwand's check looks at more than plain arithmetic",
};

const dollars = (text: string): boolean[] => {
  const [, column, row] = /(\$?)[A-Za-z]{1,3}(\$?)\d+$/.exec(text)!;
  return [column === "$", row === "$"];
};

/** The names in a rule, each once. */
function wordsIn(tree: Tree, words = new Set<string>()): Set<string> {
  if (tree.is === "name" || tree.is === "cell") words.add(tree.text);
  if (tree.is === "call" || tree.is === "sign") for (const arg of tree.args) if (arg) wordsIn(arg, words);
  return words;
}
