/** The kind of a formula's answer, read off its signs and functions as a dimension check reads them. */
import { catalogue } from "../../functions/catalogue.ts";
import type { Kind } from "../../functions/define.ts";
import type { Tree } from "../book/formula.ts";

/** Standard functions whose answer is of the kind of these arguments (from, to), counted from 0. */
const LIKE_ARGUMENT: Record<string, readonly [number, number]> = {
  SUM: [0, 99], MIN: [0, 99], MAX: [0, 99], AVERAGE: [0, 99], MEDIAN: [0, 99], MOD: [0, 1], ABS: [0, 0], ROUND: [0, 0],
  ROUNDUP: [0, 0], ROUNDDOWN: [0, 0], CEILING: [0, 1], FLOOR: [0, 1], INT: [0, 0], TRUNC: [0, 0], EVEN: [0, 0],
  ODD: [0, 0], MROUND: [0, 1], LARGE: [0, 0], SMALL: [0, 0], IF: [1, 2], IFERROR: [0, 1], IFNA: [0, 1],
  INDEX: [0, 0], CHOOSE: [1, 99], SUMIF: [2, 2], HLOOKUP: [1, 1], VLOOKUP: [1, 1], XLOOKUP: [2, 2], OFFSET: [0, 0],
}; // biome-ignore format: a table

export const likeArguments = (name: string): readonly [number, number] | undefined => LIKE_ARGUMENT[name];

const OF_KIND: Record<string, Kind> = {
  TODAY: "days", DATE: "days", EDATE: "days", EOMONTH: "days", AND: "flag", OR: "flag", NOT: "flag", ISBLANK: "flag",
  ISNUMBER: "flag", ISTEXT: "flag", TRUE: "flag", FALSE: "flag", CONCATENATE: "text", TEXT: "text", LEFT: "text",
  RIGHT: "text", MID: "text", TRIM: "text", UPPER: "text", LOWER: "text", SUBSTITUTE: "text", CHAR: "text",
  COUNT: "count", COUNTA: "count", COUNTIF: "count", COUNTBLANK: "count", ROWS: "count", COLUMNS: "count",
}; // biome-ignore format: a table

/** Kinds that a sum hands on to everything in it and a product keeps. */
const DIMENSIONS: ReadonlySet<Kind> = new Set<Kind>(["length", "area", "money", "angle", "days"]);

export const dimension = (kind: Kind | null | undefined): kind is Kind =>
  kind != null && DIMENSIONS.has(kind);

const namesUnit = (tape: string): boolean => /[a-z]$/i.test(tape);

/** Whether a part is made of figures only, none of which names its unit. */
export function isBare(tree: Tree): boolean {
  if (tree.is === "number") return true;
  if (tree.is === "tape") return !namesUnit(tree.text);
  if (tree.is === "list") return tree.items.every(isBare);
  return tree.is === "sign" && tree.args.every(isBare);
}

/** A part of a formula that means cells. */
export type Cells = Extract<Tree, { is: "name" | "cell" | "columns" | "rows" | "range" }>;

/** The kind of a tree, given the kinds of the names, cells and ranges in it. */
export function kindOfTree(tree: Tree, kindOf: (cells: Cells) => Kind): Kind {
  const inner = (one: Tree) => kindOfTree(one, kindOf);
  switch (tree.is) {
    case "tape":
      return "length";
    case "text":
      return "text";
    case "name":
      return /^(true|false)$/i.test(tree.text) ? "flag" : kindOf(tree);
    case "cell":
    case "columns":
    case "rows":
    case "range":
      return kindOf(tree);
    case "call":
      return kindOfCall(tree, inner);
    case "sign": {
      const [left, right] = tree.args;
      if (!left || !right) return tree.sign === "%" ? "share" : left ? inner(left) : "figure";
      return kindOfSign(tree.sign, left, right, inner);
    }
    case "list":
      return tree.items[0] ? inner(tree.items[0]) : "figure";
    default:
      return "figure";
  }
}

function kindOfCall(tree: Extract<Tree, { is: "call" }>, inner: (tree: Tree) => Kind): Kind {
  const { name, args } = tree;
  const declared = catalogue.get(name);
  if (declared) return declared.returns;
  const [first, second] = args;
  if (name === "SQRT") return first && inner(first) === "area" ? "length" : "figure";
  if (first && second) {
    if (name === "PRODUCT" || name === "SUMPRODUCT") return kindOfSign("*", first, second, inner);
    if (name === "QUOTIENT") return kindOfSign("/", first, second, inner);
    if (name === "POWER") return kindOfSign("^", first, second, inner);
  }
  const like = likeArguments(name);
  if (!like) return OF_KIND[name] ?? "figure";
  const of = args.slice(like[0], like[1] + 1);
  // SUMIF without a range to add adds the one it looks through; a table is looked up in its last column.
  if (name === "SUMIF" && !of[0]) return first ? inner(first) : "figure";
  if ((name === "VLOOKUP" || name === "HLOOKUP") && of[0]?.is === "range") return inner(of[0].to);
  return strongest(of.flatMap((arg) => (arg ? [inner(arg)] : [])));
}

/** Of things added or chosen from: the kind that has a dimension, else any but the plain figure; a text only where all are texts. */
function strongest(kinds: readonly Kind[]): Kind {
  const figures = kinds.filter((kind) => kind !== "text");
  return (
    figures.find((kind) => kind !== "days" && dimension(kind)) ??
    figures.find((kind) => kind !== "figure") ??
    figures[0] ??
    kinds[0] ??
    "figure"
  );
}

function kindOfSign(sign: string, left: Tree, right: Tree, inner: (tree: Tree) => Kind): Kind {
  const [l, r] = [inner(left), inner(right)];
  switch (sign) {
    case "+":
      return strongest([l, r]);
    case "-":
      return l === "days" && r === "days" ? "figure" : strongest([l, r]);
    case "*":
      // A fraction beside something that has a kind of its own is a plain number: hem * 1 1/2.
      if (isBare(right) && dimension(l)) return l;
      if (isBare(left) && dimension(r)) return r;
      return kindOfProduct(l, r);
    case "/":
      return kindOfQuotient(l, isBare(right) && !isBare(left) ? "figure" : r);
    case "^": {
      const power = right.is === "number" ? Number(right.text) : Number.NaN;
      if (power === 1) return l;
      if (l === "length" && power === 2) return "area";
      return l === "area" && power === 0.5 ? "length" : "figure";
    }
    case "&":
      return "text";
    default:
      return "flag";
  }
}

function kindOfProduct(l: Kind, r: Kind): Kind {
  if (l === "length" && r === "length") return "area";
  const kept = (["money", "area", "length", "angle"] as const).find((kind) => l === kind || r === kind);
  return kept ?? (l === "figure" ? r : l);
}

function kindOfQuotient(l: Kind, r: Kind): Kind {
  if (l === r) return dimension(l) || l === "share" ? "share" : "figure";
  if (l === "area" && r === "length") return "length";
  return dimension(l) && !dimension(r) ? l : "figure";
}
