/**
 * Guards within one HyperFormula. Whatever a formula does there, only its own cell suffers: what
 * throws while it is read or calculated becomes an error of that cell in a sentence, and what takes
 * too long is stopped. The guards are set on parts of one instance before it calculates its first cell.
 * DEVELOPERS.md says which parts, and tests/src/engine/guards.test.ts checks that they are there.
 */

import { CellError, ErrorType, SimpleRangeValue } from "hyperformula";
import { phrase } from "../../functions/phrase.ts";
import { alikeKey, cutFormula } from "../book/alike.ts";
import { LONGEST } from "../book/shape.ts";
import { Awaited, Waiting } from "./awaited.ts";
import { withNeededArguments } from "./branches.ts";
import { type Ast, addressKey, type CellAddress, type Inside, type Parsed, type State } from "./inside.ts";
import { indexDependents } from "./many-dependents.ts";
import { argumentFault } from "./too-great.ts";
import { filledOf } from "./whole-columns.ts";
import { matches, search, stretches } from "./wildcard.ts";

/** How long formulas may take, in milliseconds of `clock`. */
export interface TimeLimits {
  /** The time of one cell; after every cell that was stopped, the next ones get half of it. */
  readonly cell: number;
  /** The time of all cells of one change together, those that were stopped left out. */
  readonly work: number;
  readonly clock: () => number;
}

export const USUAL_LIMITS: TimeLimits = { cell: 5000, work: 20_000, clock: () => performance.now() };

/** A cell that was stopped before gets this much when a cell that it rests on changes, in milliseconds. */
const SECOND_TRY = 250;
/** The least that a cell gets, in milliseconds. */
const LEAST = 20;
/** The most parsed formulas that are kept for others that are alike. */
const MOST_SHARED = 50_000;
/** The most values of a list that a function makes. */
const MOST_VALUES = 1_000_000;

class Stopped extends Error {}

export class Guards {
  readonly #limits: TimeLimits;
  /** Cells that were stopped, and whether the time of the whole change was up. */
  readonly #stopped = new Set<string>();
  readonly awaited = new Awaited();
  readonly #onCell: (cell: CellAddress) => void;
  #depth = 0;
  #deadline = Number.POSITIVE_INFINITY;
  #cell = 0;
  #end = 0;
  #tick = 0;
  #inside: Inside | undefined;
  #graph: Inside["dependencyGraph"] | undefined;
  #equal: (left: unknown, right: unknown) => boolean = Object.is;

  /** `onCell` is called with each cell whose formula is about to be calculated. */
  constructor(limits: TimeLimits, onCell: (cell: CellAddress) => void = () => {}) {
    this.#limits = limits;
    this.#onCell = onCell;
    this.begin();
  }

  /** The beginning of a change: its time is counted from here. It may take `times` the usual time. */
  begin(times = 1): void {
    this.#cell = this.#limits.cell * times;
    this.#end = this.#limits.clock() + this.#limits.work * times;
    this.#depth = 0;
  }

  isStopped(cell: CellAddress): boolean {
    return this.#stopped.has(addressKey(cell));
  }

  /** A cell that was stopped gets the whole time again, because its text has changed or its reader asks for it. */
  forget(cell: CellAddress): void {
    this.#stopped.delete(addressKey(cell));
    this.awaited.forget(cell);
  }

  forgetAll(): void {
    this.#stopped.clear();
    this.awaited.forgetAll();
  }

  /** Sets the guards on an instance that is being built. */
  set(inside: Inside): void {
    this.#inside = inside;
    const evaluate = inside.evaluateAst.bind(inside);
    inside.evaluateAst = (ast, state) =>
      this.#depth === 0 ? this.#cellOf(evaluate, ast, state) : this.#partOf(evaluate, ast, state);
    // A cell holds one value: a formula never spills over its neighbours.
    const { arraySizePredictor } = inside;
    const one = arraySizePredictor.checkArraySize({ type: "NUMBER" }, {});
    arraySizePredictor.checkArraySize = () => one;
    this.#graph = inside.dependencyGraph;
    indexDependents(inside.dependencyGraph.graph);
    const { rangeMapping, lazilyTransformingAstService } = inside.dependencyGraph;
    // HyperFormula builds rows 1:5 on rows 1:4, and throws when the page has become wider in the meantime.
    const findSmaller = rangeMapping.findSmallerRange.bind(rangeMapping);
    rangeMapping.findSmallerRange = (range) =>
      Number.isFinite(range.width()) && Number.isFinite(range.height())
        ? findSmaller(range)
        : { restRange: filledOf(range) };
    this.#guardParser(lazilyTransformingAstService.parser);
    this.#guardComparisons(inside.arithmeticHelper);
    const { exporter } = inside.serialization;
    const round = exporter.cellValueRounding.bind(exporter);
    exporter.cellValueRounding = (value) => {
      const rounded = round(value);
      return Number.isFinite(rounded) ? rounded : value;
    };
  }

  /** An instance was built. All of it is calculated, but HyperFormula would calculate all that uses names once more at the first change. */
  built(): void {
    this.#graph?.clearDirtyVertices();
  }

  #guardParser(parser: { parse(text: string, at: CellAddress): Parsed }): void {
    const parse = parser.parse.bind(parser);
    const shared = new Map<string, Parsed>();
    parser.parse = (text, at) => {
      // HyperFormula parses formulas that are alike to trees of the same signs, each a copy of its own.
      const cut = cutFormula(text);
      const key = cut && `${at.sheet} ${alikeKey(cut, at.row, at.col)}`;
      const known = key === null ? undefined : shared.get(key);
      if (known) return known;
      try {
        const parsed = parse(text, at);
        if (key !== null && parsed.errors.length === 0) {
          if (shared.size >= MOST_SHARED) shared.clear();
          shared.set(key, parsed);
        }
        return parsed;
      } catch (reason) {
        const ast = { type: "ERROR", error: failure(reason) };
        return {
          ast,
          errors: [],
          dependencies: [],
          hasVolatileFunction: false,
          hasStructuralChangeFunction: false,
        };
      }
    };
  }

  /** Wildcards are matched in bounded time, and functions that compare every value with every other look at the clock. */
  #guardComparisons(helper: Inside["arithmeticHelper"]): void {
    const pause = () => this.#pause();
    this.#equal = (left, right) => helper.eq(left, right);
    for (const sign of ["eq", "lt", "gt"] as const) {
      const compare = helper[sign].bind(helper);
      helper[sign] = (left, right) => {
        this.#pause();
        return compare(left, right);
      };
    }
    const matcher = (pattern: string): ((value: unknown) => boolean) => {
      const parts = stretches(helper.normalizeString(pattern));
      return (value) => {
        this.#pause();
        return typeof value === "string" && matches(parts, helper.normalizeString(value), pause);
      };
    };
    helper.eqMatcherFunction = matcher;
    helper.neqMatcherFunction = (pattern) => {
      const equal = matcher(pattern);
      return (value) => !equal(value);
    };
    helper.searchString = (pattern, text) => search(stretches(helper.normalizeString(pattern)), text, pause);
  }

  /** A function that is calculated for each value of a range looks at the clock at each. */
  #guardFunctions(inside: Inside): void {
    for (const plugin of new Set([...inside.functionRegistry.functions.values()].map(([, one]) => one))) {
      const calculate = plugin.calculateSingleCellOfResultArray.bind(plugin);
      plugin.calculateSingleCellOfResultArray = (...args) => {
        this.#look();
        return calculate(...args);
      };
    }
  }

  /** The formula of a cell. */
  #cellOf(evaluate: Inside["evaluateAst"], ast: Ast, state: State): unknown {
    if (this.#inside) {
      this.#guardFunctions(this.#inside);
      this.#inside = undefined;
    }
    const at = state.formulaAddress;
    if (state.formulaVertex !== undefined) {
      this.#onCell(at);
      this.awaited.forget(at);
    }
    const again =
      this.#stopped.size > 0 && state.formulaVertex !== undefined && this.#stopped.has(addressKey(at));
    const begun = this.#limits.clock();
    const allowed = again ? Math.min(SECOND_TRY, this.#cell) : this.#cell;
    this.#deadline = begun >= this.#end ? Number.NEGATIVE_INFINITY : begun + allowed;
    this.#depth = 1;
    try {
      const value = this.#partOf(evaluate, ast, state);
      if (again) this.#stopped.delete(addressKey(at));
      if (value instanceof CellError) return rooted(value, state);
      // HyperFormula does not check whether the number in a list of one value is finite.
      if (typeof value === "number" && !Number.isFinite(value))
        return rooted(new CellError(ErrorType.NUM, "NaN or infinite value encountered."), state);
      if (!(value instanceof SimpleRangeValue)) return value;
      return rooted(new CellError(ErrorType.VALUE, RANGE_OF_ANSWERS), state);
    } catch (reason) {
      if (reason instanceof Waiting) {
        if (state.formulaVertex !== undefined) this.awaited.wait(at);
        return rooted(reason.error, state);
      }
      if (!(reason instanceof Stopped)) return rooted(failure(reason), state);
      const late = this.#deadline === Number.NEGATIVE_INFINITY;
      if (!late && !again) this.#cell = Math.max(LEAST, this.#cell / 2);
      if (!late) this.#end += this.#limits.clock() - begun;
      // A formula that stands in no cell is not remembered as stopped.
      if (state.formulaVertex !== undefined) this.#stopped.add(addressKey(at));
      const why = late
        ? phrase`this formula was not calculated, because the book had already taken ${seconds(this.#limits.work)}; calculate it again, or make the book's largest ranges smaller`
        : phrase`this formula was stopped after ${seconds(allowed)}; give it fewer cells or smaller numbers, or calculate it again with more time`;
      return rooted(new CellError(ErrorType.VALUE, why), state);
    } finally {
      this.#depth = 0;
    }
  }

  /** A part of a formula. */
  #partOf(evaluate: Inside["evaluateAst"], ast: Ast, state: State): unknown {
    let part = ast;
    if (ast.type === "FUNCTION_CALL") {
      this.#look();
      const fault = argumentFault(ast.procedureName!);
      if (fault) {
        const values = ast.args!.map((arg) => this.#partOf(evaluate, arg, state));
        const refusal = fault(values);
        if (refusal) return new CellError(ErrorType.VALUE, refusal);
        // Each argument is calculated once: the node of a number gives back whatever value it holds.
        const args = ast.args!.map((arg, i) =>
          arg.type === "EMPTY" ? arg : { type: "NUMBER", value: values[i] },
        );
        part = { ...ast, args };
      }
      const valueAt = (arg: Ast) => this.#partOf(evaluate, arg, state);
      part = withNeededArguments(part, valueAt, this.#equal);
      this.awaited.stopAtRanges(part.args!, state.formulaAddress.sheet, (arg) => evaluate(arg, state));
    }
    const value = evaluate(part, state);
    this.awaited.stopAt(value);
    if (typeof value === "string" && value.length > LONGEST.typed)
      return new CellError(
        ErrorType.VALUE,
        phrase`this gives a text of ${value.length} characters and a cell holds at most ${LONGEST.typed}; make it shorter`,
      );
    if (value instanceof SimpleRangeValue && value.isAdHoc() && value.width() * value.height() > MOST_VALUES)
      return new CellError(
        ErrorType.VALUE,
        phrase`this makes a list of ${value.width() * value.height()} values and the most is ${MOST_VALUES}; make it smaller`,
      );
    return value;
  }

  /** Looks at the clock. */
  #look(): void {
    if (this.#depth > 0 && this.#limits.clock() > this.#deadline) throw new Stopped();
  }

  /** Looks at the clock once in 1024 calls, for use within loops. */
  #pause(): void {
    this.#tick += 1;
    if (this.#tick % 1024 === 0) this.#look();
  }
}

/** The sentence of a formula that makes HyperFormula throw. */
export const CANT_BE_WORKED = phrase`this formula can't be calculated; check what each of its functions is given, or calculate its parts in cells of their own`;

export const RANGE_OF_ANSWERS = phrase`this formula gives a range of answers; Ellwand keeps one value in a cell`;

const rooted = (error: CellError, { formulaVertex }: State): CellError =>
  formulaVertex === undefined ? error : error.attachRootVertex(formulaVertex);

const seconds = (milliseconds: number): string =>
  milliseconds < 950
    ? `${Number((milliseconds / 1000).toPrecision(1))} s`
    : `${Number((milliseconds / 1000).toPrecision(2))} s`;

/** What was thrown, in a sentence. */
function failure(reason: unknown): CellError {
  const text = reason instanceof Error ? reason.message : "";
  const why =
    reason instanceof RangeError && /length|size|memory/i.test(text)
      ? phrase`this formula makes a text or a list too long to hold; give it smaller numbers`
      : reason instanceof RangeError
        ? phrase`this formula is too deep or takes too many values to be calculated; calculate a part of it in a cell of its own`
        : CANT_BE_WORKED;
  return new CellError(ErrorType.VALUE, why);
}
