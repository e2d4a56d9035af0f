/**
 * The kinds that a formula expects of the numbers in it. From the kind that a whole formula has, or that a
 * function asks of an argument, the expected kind is passed down sign by sign to each cell and each
 * bare number: what is added to a length is a length, what a length is multiplied by is not.
 */

import { blockFormOf } from "../../functions/arguments.ts";
import { catalogue } from "../../functions/catalogue.ts";
import type { Kind, ListForm, Takes } from "../../functions/define.ts";
import type { Call, Tree } from "../book/formula.ts";
import { dimension, isBare, isOpen, likeArguments } from "./kind-of-tree.ts";

/** The kinds of arguments that take no figure. */
export const NO_FIGURE: ReadonlySet<Kind> = new Set<Kind>(["text", "flag", "piece", "block", "verdict"]);

/** A leaf of a tree: a number, a text, a cell, a name or a range. */
export type Leaf = Exclude<Tree, { readonly is: "call" | "sign" | "list" | "broken" }>;

interface Listener {
  /** The kind of a part of the formula as far as it is known. */
  readonly kindOf: (tree: Tree) => Kind;
  /** Called with each leaf and the kind expected of it. */
  readonly expect: (leaf: Leaf, want: Kind) => void;
  /** Called with each leaf that is a list read by its headings. */
  readonly list?: (leaf: Leaf, form: ListForm) => void;
  /** True while more may be learnt: what depends on a cell of unknown kind is left open. */
  readonly careful?: boolean;
  /** Whether a part is a block of two columns or more; without this function no part counts as one. */
  readonly isWide?: (tree: Tree) => boolean;
  /** Parts that are passed over. */
  readonly stays?: (tree: Tree) => boolean;
}

/** Reports the kind that is expected of each leaf of a tree, when kind `want` is expected of the whole. */
export function spread(tree: Tree, want: Kind | null, listener: Listener): void {
  if (listener.stays?.(tree)) return;
  switch (tree.is) {
    case "broken":
      return;
    case "list":
      for (const item of tree.items) spread(item, want, listener);
      return;
    case "call":
    case "sign": {
      const wants =
        tree.is === "call"
          ? callWants(tree, want, listener)
          : signWants(tree.sign, tree.args, want, listener);
      const lists = tree.is === "call" && listener.list ? listsOfCall(tree, listener.isWide) : [];
      tree.args.forEach((arg, i) => {
        const form = lists[i];
        if (form && arg && isLeaf(arg)) listener.list?.(arg, form);
        else if (arg) spread(arg, wants[i] ?? null, listener);
      });
      return;
    }
    default:
      if (want) listener.expect(tree, want);
  }
}

/** The arguments that a call of a sewing function has: those of its block form where its first argument is a block. */
export function takesOfCall(
  { name, args }: Pick<Call, "name" | "args">,
  isWide?: (tree: Tree) => boolean,
): Takes | undefined {
  const declared = catalogue.get(name);
  const isBlockAt = (place: number) => {
    const arg = args[place];
    return arg ? isWide?.(arg) === true : false;
  };
  return declared && (blockFormOf(declared, isBlockAt)?.takes ?? declared.takes);
}

/** The lists that a call of a sewing function takes, by the place of the argument. */
const listsOfCall = (call: Call, isWide?: (tree: Tree) => boolean): readonly (ListForm | undefined)[] =>
  Object.values(takesOfCall(call, isWide) ?? {}).map(({ list }) => list);

const isLeaf = (tree: Tree): tree is Leaf =>
  tree.is !== "call" && tree.is !== "sign" && tree.is !== "list" && tree.is !== "broken";

/** The kind expected of each argument, in their order. */
type Wants = readonly (Kind | null | undefined)[];

/** Functions that compare their first two arguments. */
const COMPARING = new Set(["MATCH", "LOOKUP", "VLOOKUP", "HLOOKUP", "XLOOKUP", "COUNTIF", "SUMIF"]);
const AS_SIGN: Record<string, string> = { PRODUCT: "*", SUMPRODUCT: "*", QUOTIENT: "/", POWER: "^" };

function callWants(call: Call, want: Kind | null, listener: Listener): Wants {
  const { name, args } = call;
  const takes = takesOfCall(call, listener.isWide);
  if (takes)
    return Object.values(takes).map(({ kind, holds }) => holds ?? (kind === "edge" ? "count" : kind));
  const [first, second] = args;
  const sign = AS_SIGN[name];
  if (sign && first && second) return signWants(sign, [first, second], want, listener);
  const like = likeArguments(name);
  if (like) {
    const [from, to] = like;
    const shared = together(args.slice(from, to + 1), want, listener);
    return args.map((_, i) => (i >= from && i <= to ? shared : null));
  }
  if (COMPARING.has(name)) return [together(args.slice(0, 2), null, listener)];
  return name === "SQRT" && want === "length" ? ["area"] : [];
}

/** The one kind of things that are added or compared: that of a part whose kind is sure, else the expected one, else that of a bare fraction. */
function together(list: readonly (Tree | null)[], want: Kind | null, { kindOf }: Listener): Kind | null {
  const args = list.filter((arg) => arg !== null);
  const sure = args.filter((arg) => !isBare(arg)).map(kindOf);
  return (
    sure.find(dimension) ??
    want ??
    sure.find((kind) => kind !== "figure" && kind !== "text") ??
    args.map(kindOf).find(dimension) ??
    null
  );
}

function signWants(sign: string, args: readonly Tree[], want: Kind | null, listener: Listener): Wants {
  const [left, right] = args as [Tree, Tree | undefined];
  if (!right) return [sign === "%" ? null : want];
  switch (sign) {
    case "+":
    case "-": {
      const shared = together(args, want, listener);
      // A date and a number of days may be added; neither makes the other a date.
      return shared === "days" ? [] : [shared, shared];
    }
    case "*":
      return productWants(left, right, want, listener);
    case "/":
      return quotientWants(left, right, want, listener);
    case "^":
      return want === "area" && right.is === "number" && Number(right.text) === 2 ? ["length", null] : [];
    case "&":
      return [];
    default: {
      // Compared: both sides are of one kind, whatever the whole is wanted for.
      const shared = together(args, null, listener);
      return [shared, shared];
    }
  }
}

/** What is multiplied: one side carries the kind, the other is a plain number. */
function productWants(left: Tree, right: Tree, want: Kind | null, { kindOf, careful }: Listener): Wants {
  const [l, r] = [sureKind(left, kindOf), sureKind(right, kindOf)];
  const [openLeft, openRight] = [isOpen(left, kindOf), isOpen(right, kindOf)];
  const rest = (kind: Kind, open: boolean) => (dimension(kind) ? kind : careful && open ? null : "figure");
  const [restLeft, restRight] = [rest(l, openLeft), rest(r, openRight)];
  if (want === "area" && (l === "length" || r === "length" || (openLeft && openRight)))
    return ["length", "length"];
  if (!dimension(want)) return dimension(l) || dimension(r) ? [restLeft, restRight] : [];
  if (l === want) return [want, restRight];
  if (r === want) return [restLeft, want];
  // Two cells of which nothing is known: either may be the one.
  if (openLeft && openRight) return [];
  if (openLeft || openRight) return openLeft ? [want, "figure"] : ["figure", want];
  const rightCarries = right.is === "tape" ? left.is !== "tape" : isBare(right) && !isBare(left);
  return rightCarries ? ["figure", want] : [want, "figure"];
}

/** What is divided: a length by a number is a length, a length by a length is a number. */
function quotientWants(left: Tree, right: Tree, want: Kind | null, { kindOf, careful }: Listener): Wants {
  const [l, r] = [sureKind(left, kindOf), sureKind(right, kindOf)];
  if (careful && dimension(want) && isOpen(right, kindOf)) return [];
  if (want === "length" && (l === "area" || r === "length")) return ["area", "length"];
  if (dimension(want)) return [want, dimension(r) ? r : "figure"];
  // A plain number is expected: then both sides are of one kind, unless one is known to have no dimension.
  const shared = want ? [l, r].find(dimension) : undefined;
  const free = (tree: Tree, kind: Kind) => dimension(kind) || isBare(tree) || isOpen(tree, kindOf);
  return [shared && free(left, l) ? shared : null, shared && free(right, r) ? shared : null];
}

/** The kind of a part; a bare number or fraction counts as a plain number. */
const sureKind = (tree: Tree, kindOf: Listener["kindOf"]): Kind => (isBare(tree) ? "figure" : kindOf(tree));
