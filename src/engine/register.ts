/** Teaches a HyperFormula every sewing function of the catalogue. */

import {
  CellError,
  ErrorType,
  FunctionPlugin,
  type FunctionPluginDefinition,
  HyperFormula,
  SimpleRangeValue,
} from "hyperformula";
import { argumentsNamed } from "../../functions/arguments-named.ts";
import { asBlock } from "../../functions/block.ts";
import { catalogue } from "../../functions/catalogue.ts";
import type { Block, Cell, Declaration } from "../../functions/define.ts";
import type { JoinQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import type { CellOfCall } from "../../functions/refusal.ts";
import { type Argument, isRefused, run, type Setting } from "../../functions/run.ts";
import { unusualAt } from "../../functions/to-look-at.ts";
import { givenCells } from "./given-cell.ts";
import type { CellAddress, Inside } from "./inside.ts";
import type { LaidLay } from "./laid.ts";
import type { CellInList } from "./list-cells.ts";
import { cellInList, headingsOver, joinedParts, listKey, PARTS_OF_LIST, partOfList } from "./list-parts.ts";
import type { PointedAt } from "./pointed.ts";
import type { ReadLists } from "./read-lists.ts";

/** A call that was calculated while an engine recorded calls: for the Working panel. */
export interface Call {
  readonly declaration: Declaration;
  readonly args: readonly Argument[];
}

/** What the functions need to know of an engine, given as HyperFormula's `context`. */
export interface Context extends Setting {
  /** Where the cell of a name of the book stands. */
  named?: (name: string) => CellAddress | null;
  /** The headings of `wide` columns of a page from a column on. */
  headings?: (sheet: number, column: number, wide: number) => readonly string[];
  heard?: ((call: Call) => void) | undefined;
  /** Where lists with headings are kept while they are the same: many formulas read the same one. */
  lists?: ReadLists;
  /** Called with every cell whose formula lays pieces on cloth, with its question and the answer. */
  laid?: ((cell: CellAddress, lay: LaidLay) => void) | undefined;
  /** Called with every cell that waits for joins to be found, and with its question. */
  awaitsJoins?: ((cell: CellAddress, joins: JoinQuestion) => void) | undefined;
  /** Given the interpreter of an instance before its first cell is worked. */
  inside?: ((interpreter: Inside) => void) | undefined;
  /** Called with every cell whose formula has a problem that is about one of the cells it is given. */
  pointed?: ((cell: CellAddress, at: PointedAt<CellAddress>) => void) | undefined;
  /** Called with every cell whose formula takes its answer from one cell of a list. */
  took?: ((cell: CellAddress, from: CellInList<CellAddress>) => void) | undefined;
  /** Called with every cell whose formula estimates something. */
  estimated?: ((cell: CellAddress, sentence: string) => void) | undefined;
  /** Called with every cell whose formula gives a function something unusual, or gets an uncertain answer from it. */
  unusual?: ((cell: CellAddress) => void) | undefined;
}

/**
 * Lays that a function's answer rests on: the pieces on the cloth, and the same once more without an
 * end to the cloth, or shared out between the cloth in stock and cloth to buy. Lays in passing are trials.
 */
const OWN_LAYS = 3;

type Value = ReturnType<FunctionPlugin["evaluateAst" & keyof FunctionPlugin]> | unknown;

/** A cell's value from the interpreter's: dates and the like are numbers, the empty value is null. */
function plain(value: Value): Cell {
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "object" && value !== null && "val" in value) return (value as { val: number }).val;
  return null;
}

/** The values of a range row by row; the first error where there is one. */
function plainCells(range: SimpleRangeValue): Cell[] | CellError {
  const cells: Cell[] = [];
  for (const row of range.data) {
    for (const one of row) {
      if (one instanceof CellError) return one;
      cells.push(plain(one));
    }
  }
  return cells;
}

type Interpreter = ConstructorParameters<typeof FunctionPlugin>[0];

/** The functions as HyperFormula knows them; `fallback` is the setting of an instance without a context. */
abstract class Sewing extends FunctionPlugin {
  abstract readonly fallback: Setting;

  constructor(interpreter: Interpreter) {
    super(interpreter);
    (this.config.context as Context | undefined)?.inside?.(interpreter as unknown as Inside);
  }

  /** One method serves every function; HyperFormula looks it up by the name given in the definition. */
  work(
    declaration: Declaration,
    ast: { args: never[] },
    state: { readonly formulaAddress: CellAddress },
  ): number | string | CellError {
    const args: Argument[] = [];
    const lists: (SimpleRangeValue | null)[] = [];
    const takes = Object.values(declaration.takes);
    const { headings, lists: known } = (this.config.context ?? {}) as Context;
    for (const arg of ast.args) {
      const value: Value = this.evaluateAst(arg, state as never);
      if (value instanceof CellError) return value;
      if (value instanceof SimpleRangeValue) {
        const wide = value.width();
        const isList = wide > 1 || takes[args.length]?.kind === "block";
        lists[args.length] = value;
        const key = isList ? listKey(value) : null;
        const read = () => {
          const cells = plainCells(value);
          return cells instanceof CellError || !isList
            ? cells
            : asBlock(cells, wide, headings ? headingsOver(value, headings) : []);
        };
        const list = key !== null && known ? known.list(key, read as () => Block | CellError) : read();
        if (list instanceof CellError) return list;
        args.push(list);
      } else args.push(plain(value));
    }
    const context = this.config.context as Context | undefined;
    context?.heard?.({ declaration, args });
    // A context may say less than all, such as the unit alone.
    const { fallback } = this;
    const [unit, mark] = [context?.unit ?? fallback.unit, context?.mark ?? fallback.mark];
    const decimal = context?.decimal ?? fallback.decimal;
    const [plan, joins] = [context?.plan ?? fallback.plan, context?.joins ?? fallback.joins];
    const setting: Setting = { unit, ...(mark && { mark }), decimal };
    const find = ({ position, cell }: CellOfCall): CellInList<CellAddress> | null => {
      const list = lists[position];
      return list && !context?.heard ? cellInList(list, cell) : null;
    };
    const point = (cell: CellOfCall, sentence: string) => {
      if (!context?.pointed || context.heard) return;
      const listed = lists[cell.position] ? find(cell)?.at : undefined;
      const given = lists[cell.position]
        ? []
        : givenCells(ast.args[cell.position], state.formulaAddress, context.named);
      for (const at of listed ? [listed] : given) context.pointed(state.formulaAddress, { at, sentence });
    };
    let asked = 0;
    let doubtful = false;
    const answer = run(declaration, args, {
      ...setting,
      doubt: () => {
        doubtful = true;
      },
      points: point,
      takes: (cell) => {
        const found = find(cell);
        if (found) context?.took?.(state.formulaAddress, found);
      },
      estimates: (sentence) => {
        if (!context?.heard) context?.estimated?.(state.formulaAddress, sentence);
      },
      ...(plan && {
        plan: (question) => {
          const answer = plan(question);
          const isAwaited = question.sharing && "refusal" in answer;
          if (!question.passing) asked += 1;
          if (question.passing ? isAwaited : asked <= OWN_LAYS)
            context?.laid?.(state.formulaAddress, { question, answer });
          return answer;
        },
      }),
      ...(joins && {
        joins: (question) => {
          const answer = joins(question);
          if ("pending" in answer) context?.awaitsJoins?.(state.formulaAddress, question);
          return answer;
        },
      }),
    });
    if (context?.unusual && !context.heard && !isRefused(answer)) {
      const unusual = unusualAt(declaration, args, setting);
      for (const { sentence, positions } of unusual)
        for (const position of positions) if (!lists[position]) point({ position, cell: 0 }, sentence);
      if (doubtful || unusual.length > 0) context.unusual(state.formulaAddress);
    }
    if (!isRefused(answer)) return answer;
    const accused = answer.at ? [answer.at] : argumentsNamed(declaration, args, answer.refusal);
    for (const cell of accused) point(cell, answer.refusal);
    return new CellError(ErrorType.VALUE, answer.refusal);
  }

  /** A list in several ranges, as the function that reads it is given it. */
  joined(
    { args }: { args: never[] },
    state: { readonly formulaAddress: CellAddress },
  ): SimpleRangeValue | CellError {
    const parts: Parameters<typeof joinedParts>[0][number][] = [];
    for (const arg of args) {
      const value: Value = this.evaluateAst(arg, state as never);
      if (value instanceof CellError) return value;
      const part = partOfList(arg, value);
      if (part) parts.push(part);
    }
    return parts.length > 0
      ? joinedParts(parts)
      : new CellError(ErrorType.NAME, phrase`${PARTS_OF_LIST} is no function`);
  }
}

const methodOf = (name: string): string => `work_${name}`;

/**
 * Adds all sewing functions of the catalogue to a HyperFormula class; instances built from then on know
 * them. An instance without a context of its own works in `setting`.
 */
export function register(
  target: typeof HyperFormula = HyperFormula,
  setting: Setting = { unit: "in" },
): void {
  class Registered extends Sewing {
    static override implementedFunctions: FunctionPluginDefinition["implementedFunctions"] =
      Object.fromEntries([
        ...[...catalogue.keys()].map((name) => [name, { method: methodOf(name), parameters: [] }]),
        [PARTS_OF_LIST, { method: "joined", parameters: [] }],
      ]);
    override readonly fallback = setting;

    // HyperFormula asks for methods on the class itself.
    override joined(...given: Parameters<Sewing["joined"]>): ReturnType<Sewing["joined"]> {
      return super.joined(...given);
    }
  }
  for (const [name, declaration] of catalogue)
    Object.defineProperty(Registered.prototype, methodOf(name), {
      value(this: Registered, ast: never, state: never) {
        return this.work(declaration, ast, state);
      },
    });
  const words = Object.fromEntries([...catalogue.keys(), PARTS_OF_LIST].map((name) => [name, name]));
  target.registerFunctionPlugin(Registered, { enGB: words, enUS: words });
}
