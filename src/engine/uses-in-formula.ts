/**
 * Where a formula needs figures: the cells and lists that it adds up, compares or hands to a function that takes
 * a figure. A cell without a number there would count as nothing.
 */
import type { Kind } from "../../functions/define.ts";
import type { Place } from "../book/address.ts";
import type { Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { NO_FIGURE, takesOfCall } from "./expected-kinds.ts";
import { likeArguments } from "./kind-of-tree.ts";
import { type Area, areaOf, isBand, isSingle, isWide } from "./references.ts";
import { ASKING, CHOOSING, COUNTING, OF_FIGURES, ORDERING, OVER_LISTS } from "./standard-functions.ts";

/** How a formula needs a cell's figure. */
export interface Use {
  readonly formula: Place;
  readonly tree: Tree;
  /** What works with the cells: a function in capitals, or a sign. */
  readonly by: string;
  /** One area, or several that are gone through side by side. */
  readonly areas: readonly Area[];
  /** A cell by itself, a list of cells, or whole rows or columns. */
  readonly as: "cell" | "list" | "band";
  /** Whether a blank cell, or a text that is not a number, passes without an error. */
  readonly blanksPass: boolean;
  readonly textsPass: boolean;
  /** The argument of a sewing function that takes it. */
  readonly argument?: { readonly name: string; readonly kind: Kind };
  /**
   * Why the formula may take the figure for an amount, which is never below zero: it multiplies or divides another
   * figure by it, does not go below zero with it, as in MAX(0; A1-B1) or IF(A1<B1; 0; ...), has it in a list, or takes
   * the greatest, the least or the middle of it and other cells, as in MAX(A1; B1).
   */
  readonly amount?: "factor" | "clamped" | "listed" | "compared";
}

/** Where one formula needs figures; `formula` is its cell, or row -1 for one that stands in no cell. `hear` is called with each area and the part that means it. */
export function usesOf(
  book: Book,
  tree: Tree,
  formula: Place,
  hear: (area: Area, part: Tree) => void = () => {},
): Use[] {
  const uses: Use[] = [];
  /** The areas that the formula itself asks about, so that what is missing there is meant to be. */
  const asked = new Set<string>();
  const areaAt = (part: Tree) => {
    const area = areaOf(book, part, formula.page);
    if (area) hear(area, part);
    return area;
  };
  const use = (
    areas: readonly Area[],
    by: string,
    blanksPass: boolean,
    textsPass: boolean,
    argument?: Use["argument"],
    amount?: Use["amount"],
  ) => {
    const first = areas[0];
    if (!first) return;
    const as = areas.length === 1 && isSingle(first) ? "cell" : "list";
    uses.push({
      formula,
      tree,
      by,
      areas,
      as,
      blanksPass,
      textsPass,
      ...(argument && { argument }),
      ...(amount && { amount }),
    });
  };
  const band = (area: Area, by: string) =>
    uses.push({ formula, tree, by, areas: [area], as: "band", blanksPass: false, textsPass: false });

  /** How many calls of MAX with 0 stand round the part. */
  let clamps = 0;

  /** `by` is what the part is a figure for; null where it may be anything. */
  const visit = (part: Tree | null, by: string | null, texts = false, isFactor = false): void => {
    if (!part) return;
    const area = areaAt(part);
    if (area) {
      if (by !== null && isSingle(area) && (part.is === "name" || part.is === "cell"))
        use([area], by, true, texts, undefined, isFactor ? "factor" : clamps > 0 ? "clamped" : undefined);
    } else if (part.is === "sign") visitSign(part.sign, part.args);
    else if (part.is === "call") visitCall(part.name, part.args, by);
    else if (part.is === "list") for (const item of part.items) visit(item, null);
  };

  const visitSign = (sign: string, args: readonly Tree[]): void => {
    const other = (i: number) => args[args.length - 1 - i]!;
    args.forEach((arg, i) => {
      if (COUNTING.has(sign)) visit(arg, sign, false, isProduct(sign, args));
      else if (ORDERING.has(sign)) visit(arg, other(i).is === "text" ? null : sign, true);
      else {
        const area = areaAt(arg);
        if (area && args.length === 2 && other(i).is === "text") asked.add(keyOf(area));
        if (area && (sign === "=" || sign === "<>") && other(i).is !== "text")
          use([area], sign, false, false);
        if (!area) visit(arg, null);
      }
    });
  };

  const visitCall = (name: string, args: readonly (Tree | null)[], by: string | null): void => {
    const takes = takesOfCall({ name, args }, isWide(book, formula.page));
    if (takes) {
      // A sewing function refuses what it can't work with, and says so itself.
      const declared = Object.entries(takes).map(([argument, { kind }]) => ({ name: argument, kind }));
      args.forEach((arg, i) => {
        const area = arg && areaAt(arg);
        const argument = declared[i];
        if (area && argument && !NO_FIGURE.has(argument.kind)) use([area], name, false, false, argument);
        else if (!area) visit(arg, null);
      });
      return;
    }
    if (ASKING.has(name)) {
      for (const arg of args) {
        const area = arg && areaAt(arg);
        if (area) {
          asked.add(keyOf(area));
          if (name === "COUNT") use([area], name, false, false);
        } else visit(arg, null);
      }
      return;
    }
    if (OVER_LISTS.has(name)) {
      const ranges: Area[] = [];
      const isClamp = name === "MAX" && args.some((arg) => arg?.is === "number" && Number(arg.text) === 0);
      const amount = ADDING.has(name) || CHOOSING_ONE.has(name) ? "listed" : undefined;
      if (isClamp) clamps += 1;
      const cells = args.flatMap((arg) => {
        const area = arg && areaAt(arg);
        return area && isSingle(area) ? [area] : [];
      });
      if (CHOOSING_ONE.has(name)) use(cells, name, false, false, undefined, isClamp ? "clamped" : "compared");
      for (const arg of args) {
        const area = arg && areaAt(arg);
        if (!area) visit(arg, null);
        else if (isBand(area)) band(area, name);
        else if (name === "SUMPRODUCT") ranges.push(area);
        else
          use(
            [area],
            name,
            true,
            true,
            undefined,
            isSingle(area) && CHOOSING_ONE.has(name) ? undefined : amount,
          );
      }
      if (isClamp) clamps -= 1;
      use(ranges, name, true, true, undefined, amount);
      return;
    }
    if (isStopAtZero(name, args)) {
      const cells = compared(args[0]!).flatMap((part) => areaAt(part) ?? []);
      for (const cell of cells) if (isSingle(cell)) use([cell], name, false, false, undefined, "clamped");
    }
    const like = likeArguments(name);
    args.forEach((arg, i) => {
      const handedOn = like !== undefined && i >= like[0] && i <= like[1];
      const needs = CHOOSING[name] ? (handedOn ? by : null) : handedOn || OF_FIGURES.has(name) ? name : null;
      const area = arg && areaAt(arg);
      if (area && name === "SUMIF" && i !== 1) use([area], name, false, false);
      else visit(arg, needs);
    });
  };

  visit(tree, null);
  return uses.map((one) =>
    one.areas.some((area) => asked.has(keyOf(area))) ? { ...one, blanksPass: false, textsPass: false } : one,
  );
}

/** Functions that add up the figures of a list. */
const ADDING = new Set(["SUM", "AVERAGE", "SUMPRODUCT"]);

/** Functions that give one of the figures that they are given, so that the others are not seen in the answer. */
const CHOOSING_ONE = new Set(["MAX", "MIN", "MEDIAN", "LARGE", "SMALL"]);

/** Whether a call gives 0 where one figure of the book is not above another, as in IF(A1<=B1; 0; A1-B1). */
const isStopAtZero = (name: string, args: readonly (Tree | null)[]): boolean =>
  name === "IF" &&
  args[0]?.is === "sign" &&
  ORDERING.has(args[0].sign) &&
  args[0].args.every((arg) => arg.is !== "number") &&
  args.slice(1).some((arg) => arg?.is === "number" && Number(arg.text) === 0);

/** The parts that a comparison compares. */
const compared = (test: Tree): readonly Tree[] => (test.is === "sign" ? test.args : []);

/** Whether figures of the book are multiplied or divided by each other; a bare number changes only the size of one. */
const isProduct = (sign: string, args: readonly Tree[]): boolean =>
  (sign === "*" || sign === "/") && args.length === 2 && args.every((arg) => arg.is !== "number");

const keyOf = ({ page, top, left, bottom, right }: Area): string =>
  `${page}.${top}.${left}.${bottom}.${right}`;
