/** What is unusual about the arguments of the sewing functions in one formula. */
import { catalogue } from "../../functions/catalogue.ts";
import { type Setting, unusualIn } from "../../functions/run.ts";
import { formulaTree, type Tree } from "../book/formula.ts";
import { addressKey, type CellAddress } from "./guards.ts";
import type { Call } from "./register.ts";

/** Which cells of an engine hold something unusual. */
export class Oddities {
  /** The cells that gave a function something unusual when they were last worked, and perhaps some that did before. */
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

  /** A new revision: the texts are found anew when asked for. */
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
  heard: readonly Call[],
  setting: Setting,
  value: (part: string) => unknown,
): string[] {
  const counting = callsThatCount(formula, value);
  const found = heard.flatMap(({ declaration, args }, i) =>
    counting.length === heard.length && !counting[i] ? [] : unusualIn(declaration, args, setting),
  );
  return [...new Set(found)];
}

/** Of every sewing function of a formula, innermost first, whether the answer rests on it. */
function callsThatCount(formula: string, value: (part: string) => unknown): boolean[] {
  const counting: boolean[] = [];
  const walk = (tree: Tree, counts: boolean): void => {
    if (tree.is === "list") for (const item of tree.items) walk(item, counts);
    if (tree.is === "sign") for (const arg of tree.args) walk(arg, counts);
    if (tree.is !== "call") return;
    const test = tree.name === "IF" && counts && tree.spans[0];
    const taken = test ? (isTrue(value(formula.slice(...test))) ? 1 : 2) : 0;
    tree.args.forEach((arg, i) => {
      if (arg) walk(arg, counts && (taken === 0 || i === 0 || i === taken));
    });
    if (catalogue.has(tree.name)) counting.push(counts);
  };
  walk(formulaTree(formula), true);
  return counting;
}

const isTrue = (value: unknown): boolean => value === true || (typeof value === "number" && value !== 0);
