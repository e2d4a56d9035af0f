/** What is unusual about the arguments of the sewing functions in one formula, or uncertain about their answers. */
import { catalogue } from "../../functions/catalogue.ts";
import type { Setting } from "../../functions/run.ts";
import { toLookAt } from "../../functions/to-look-at.ts";
import { type Call, formulaTree, type Tree } from "../book/formula.ts";
import { addressKey, type CellAddress } from "./inside.ts";
import type { Call as HeardCall } from "./register.ts";

/** Which cells of an engine hold something unusual. */
export class Oddities {
  /** The cells that gave a function something unusual when they were last calculated, and perhaps some that did so before. */
  readonly #cells = new Set<string>();
  /** What is unusual in them, as far as it was asked for in this revision. */
  readonly #texts = new Map<string, string | null>();

  note(cell: CellAddress): void {
    this.#cells.add(addressKey(cell));
  }

  /** The cells of `note`. */
  get cells(): CellAddress[] {
    return [...this.#cells].map((key) => {
      const [sheet, row, col] = key.split(".").map(Number) as [number, number, number];
      return { sheet, row, col };
    });
  }

  /** What is unusual in a cell, or null; `find` works its formula once more to know. */
  text(cell: CellAddress, find: () => string | null): string | null {
    const key = addressKey(cell);
    if (!this.#cells.has(key)) return null;
    let text = this.#texts.get(key);
    if (text === undefined) {
      text = find();
      this.#texts.set(key, text);
    }
    return text;
  }

  /** Forgets the sentences at a new revision; they are found again when they are asked for. */
  forget(): void {
    this.#texts.clear();
  }

  clear(): void {
    this.#cells.clear();
    this.#texts.clear();
  }
}

/**
 * The sentences, each once. `heard` are the calls in the order they were worked; `value` works a
 * part of the formula, to know which branch of an IF counts: the engine works both.
 */
export function oddities(
  formula: string,
  heard: readonly HeardCall[],
  setting: Setting,
  value: (part: string) => unknown,
): string[] {
  const counting = callsThatCount(formula, value);
  const found = heard.flatMap(({ declaration, args }, i) =>
    counting.length === heard.length && !counting[i] ? [] : toLookAt(declaration, args, setting),
  );
  return [...new Set(found)];
}

/** Of every sewing function of a formula, innermost first, whether the answer rests on it. */
const callsThatCount = (formula: string, value: (part: string) => unknown): boolean[] =>
  countingCalls(formula, value).flatMap(({ call, counts }) => (catalogue.has(call.name) ? [counts] : []));

export interface CountingCall {
  readonly call: Call;
  /** Whether the answer rests on the call: in the branch of an IF that is not taken it does not. */
  readonly counts: boolean;
  /** Whether the formula itself asks if the call gives anything: it is the test of an IF, or compared with 0 or 1. */
  readonly asks: boolean;
}

/** Every call of a formula, innermost first; `value` works a part of it. */
export function countingCalls(formula: string, value: (part: string) => unknown): CountingCall[] {
  const found: CountingCall[] = [];
  const walk = (tree: Tree, counts: boolean, asks = false): void => {
    if (tree.is === "list") for (const item of tree.items) walk(item, counts);
    if (tree.is === "sign") {
      const compared = COMPARING.has(tree.sign) && tree.args.some(isZeroOrOne);
      for (const arg of tree.args) walk(arg, counts, compared);
    }
    if (tree.is !== "call") return;
    const test = tree.name === "IF" && counts && tree.spans[0];
    const taken = test ? (isTrue(value(formula.slice(...test))) ? 1 : 2) : 0;
    tree.args.forEach((arg, i) => {
      if (arg) walk(arg, counts && (taken === 0 || i === 0 || i === taken), tree.name === "IF" && i === 0);
    });
    found.push({ call: tree, counts, asks });
  };
  walk(formulaTree(formula), true);
  return found;
}

const COMPARING = new Set(["=", "<>", "<", ">", "<=", ">="]);

const isZeroOrOne = (tree: Tree): boolean => tree.is === "number" && (tree.text === "0" || tree.text === "1");

const isTrue = (value: unknown): boolean => value === true || (typeof value === "number" && value !== 0);
