/** The kind of a formula's answer, read off its signs and functions as a dimension check reads them. */
import { catalogue } from "../../functions/catalogue.ts";
import type { Kind } from "../../functions/define.ts";
import type { Call, Tree } from "../book/formula.ts";
import { namesUnit } from "./content.ts";

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

/** Whether a part is made of numbers only, all of them without a unit. */
export function isBare(tree: Tree): boolean {
  if (tree.is === "number") return true;
  if (tree.is === "tape") return !namesUnit(tree.text);
  if (tree.is === "list") return tree.items.every(isBare);
  return tree.is === "sign" && tree.args.every(isBare);
}

/** Whether a part may yet turn out to be of any kind: a cell of no kind stands in it. */
export function isOpen(tree: Tree, kindOf: (tree: Tree) => Kind): boolean {
  if (kindOf(tree) !== "figure") return false;
  if (tree.is === "name" || tree.is === "cell" || tree.is === "range") return true;
  if (tree.is === "sign" || (tree.is === "call" && !catalogue.has(tree.name)))
    return tree.args.some((arg) => arg !== null && isOpen(arg, kindOf));
  return false;
}

/** A part of a formula that means cells. */
export type Cells = Extract<Tree, { is: "name" | "cell" | "columns" | "rows" | "range" }>;

/** The cells, names and ranges in a tree. */
export function leavesOf(tree: Tree): Cells[] {
  switch (tree.is) {
    case "name":
    case "cell":
    case "columns":
    case "rows":
    case "range":
      return [tree];
    case "call":
    case "sign":
      return tree.args.flatMap((arg) => (arg ? leavesOf(arg) : []));
    case "list":
      return tree.items.flatMap(leavesOf);
    default:
      return [];
  }
}

/**
 * The kind of a tree, given the kinds of the names, cells and ranges in it. A cell of no kind
 * beside a length is taken for a plain number, or, when `careful`, for what may be anything yet.
 */
export function kindOfTree(
  tree: Tree,
  kindOf: (cells: Cells) => Kind,
  careful = false,
  known: Map<Tree, Kind> = new Map(),
): Kind {
  let kind = known.get(tree);
  if (!kind) {
    kind = kindOfPart(tree, kindOf, careful, (one) => kindOfTree(one, kindOf, careful, known));
    known.set(tree, kind);
  }
  return kind;
}

function kindOfPart(
  tree: Tree,
  kindOf: (cells: Cells) => Kind,
  careful: boolean,
  inner: (tree: Tree) => Kind,
): Kind {
  switch (tree.is) {
    case "tape":
      return careful && isBare(tree) ? "figure" : "length";
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
      return kindOfCall(tree, inner, careful);
    case "sign": {
      const [left, right] = tree.args;
      if (!left || !right) return tree.sign === "%" ? "share" : left ? inner(left) : "figure";
      return kindOfSign(tree.sign, left, right, inner, careful);
    }
    case "list":
      return tree.items[0] ? inner(tree.items[0]) : "figure";
    default:
      return "figure";
  }
}

function kindOfCall(tree: Call, inner: (tree: Tree) => Kind, careful: boolean): Kind {
  const { name, args } = tree;
  const declared = catalogue.get(name);
  if (declared) return declared.returns;
  const [first, second] = args;
  if (name === "SQRT") return first && inner(first) === "area" ? "length" : "figure";
  if (first && second) {
    if (name === "PRODUCT" || name === "SUMPRODUCT") return kindOfSign("*", first, second, inner, careful);
    if (name === "QUOTIENT") return kindOfSign("/", first, second, inner, careful);
    if (name === "POWER") return kindOfSign("^", first, second, inner, careful);
  }
  const like = likeArguments(name);
  if (!like) return OF_KIND[name] ?? "figure";
  const of = args.slice(like[0], like[1] + 1);
  // SUMIF without a range to add adds the one it looks through; a table is looked up in its last column.
  if (name === "SUMIF" && !of[0]) return first ? inner(first) : "figure";
  if ((name === "VLOOKUP" || name === "HLOOKUP") && of[0]?.is === "range") return inner(of[0].to);
  const given = of.filter((arg) => arg !== null);
  return shared(given, inner, careful);
}

/** Of things added or chosen from: the kind of one that has a dimension, else of any that has a kind at all. */
function shared(args: readonly Tree[], inner: (tree: Tree) => Kind, careful: boolean): Kind {
  const all = args.map((arg) => ({ kind: inner(arg), bare: isBare(arg) }));
  const figures = all.filter(({ kind }) => kind !== "text");
  const sure = figures.filter(({ bare }) => !bare);
  const found = (list: typeof all, test: (kind: Kind) => boolean) =>
    list.find(({ kind }) => test(kind))?.kind;
  const known = found(sure, (kind) => kind !== "days" && dimension(kind));
  if (known) return known;
  if (careful && args.some((arg) => isOpen(arg, inner))) return "figure";
  const other = found(sure, (kind) => kind !== "figure") ?? found(figures, dimension);
  return other ?? (figures[0] ?? all[0])?.kind ?? "figure";
}

function kindOfSign(
  sign: string,
  left: Tree,
  right: Tree,
  inner: (tree: Tree) => Kind,
  careful: boolean,
): Kind {
  const [l, r] = [inner(left), inner(right)];
  const open = isOpen(left, inner) || isOpen(right, inner);
  switch (sign) {
    case "+":
      return shared([left, right], inner, careful);
    case "-":
      return l === "days" && r === "days" ? "figure" : shared([left, right], inner, careful);
    case "*":
      // A fraction beside something that has a kind of its own is a plain number: hem * 1 1/2.
      if (isBare(right) && dimension(l)) return l;
      if (isBare(left) && dimension(r)) return r;
      return open && careful ? "figure" : kindOfProduct(l, r, open);
    case "/":
      if (open && careful) return "figure";
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

function kindOfProduct(l: Kind, r: Kind, open: boolean): Kind {
  if (l === "length" && r === "length") return "area";
  const kept = (["money", "area", "length", "angle"] as const).find((kind) => l === kind || r === kind);
  if (kept) return kept;
  if (open) return "figure";
  return l === "figure" ? r : l;
}

function kindOfQuotient(l: Kind, r: Kind): Kind {
  if (l === r) return dimension(l) || l === "share" ? "share" : "figure";
  if (l === "area" && r === "length") return "length";
  return dimension(l) && !dimension(r) ? l : "figure";
}
