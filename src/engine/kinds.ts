/**
 * What kind of quantity each cell holds, so that a length is shown as the tape shows it and a
 * share is not: read off the formulas as a dimension check reads them, and for a bare number off
 * the arguments it feeds.
 */
import { catalogue } from "../../functions/catalogue.ts";
import type { Kind } from "../../functions/define.ts";
import { lookUp, type Place } from "../book/address.ts";
import { isFormula, type Tree, treeOf } from "../book/formula.ts";
import { type Book, type Page, typedAt } from "../book/shape.ts";
import { understand } from "./content.ts";

const trees = new Map<string, Tree>();

/** The tree of a formula, remembered. */
export function formulaTree(formula: string): Tree {
  let tree = trees.get(formula);
  if (!tree) {
    if (trees.size > 5000) trees.clear();
    tree = treeOf(formula);
    trees.set(formula, tree);
  }
  return tree;
}

/** Standard functions whose answer is of the kind of these arguments (from, to), counted from 0. */
const LIKE_ARGUMENT: Record<string, readonly [number, number]> = {
  SUM: [0, 99], MIN: [0, 99], MAX: [0, 99], AVERAGE: [0, 99], MEDIAN: [0, 99], ABS: [0, 0], ROUND: [0, 0],
  ROUNDUP: [0, 0], ROUNDDOWN: [0, 0], CEILING: [0, 0], FLOOR: [0, 0], INT: [0, 0], TRUNC: [0, 0], MROUND: [0, 0],
  IF: [1, 2], IFERROR: [0, 1], IFNA: [0, 1], INDEX: [0, 0], CHOOSE: [1, 99], SUMIF: [2, 2], HLOOKUP: [1, 1],
  VLOOKUP: [1, 1], XLOOKUP: [2, 2], OFFSET: [0, 0], MOD: [0, 0],
}; // biome-ignore format: a table

/** The kind of a tree, given the kinds of the names and cells in it. */
export function kindOfTree(tree: Tree, kindOf: (text: string) => Kind): Kind {
  const inner = (one: Tree) => kindOfTree(one, kindOf);
  switch (tree.is) {
    case "tape":
      return "length";
    case "text":
      return "text";
    case "name":
    case "cell":
      return kindOf(tree.text);
    case "range":
      return inner(tree.from);
    case "call": {
      const declared = catalogue.get(tree.name);
      if (declared) return declared.returns;
      if (tree.name === "SQRT") return tree.args[0] && inner(tree.args[0]) === "area" ? "length" : "figure";
      const like = LIKE_ARGUMENT[tree.name];
      const kinds = like
        ? tree.args.slice(like[0], like[1] + 1).flatMap((arg) => (arg ? [inner(arg)] : []))
        : [];
      return kinds.find((kind) => kind !== "figure") ?? "figure";
    }
    case "sign":
      return kindOfSign(tree.sign, tree.args.map(inner));
    default:
      return "figure";
  }
}

function kindOfSign(sign: string, [left = "figure", right]: readonly Kind[]): Kind {
  if (right === undefined) return sign === "%" ? "share" : left;
  const both = [left, right];
  const lengths = both.filter((kind) => kind === "length").length;
  switch (sign) {
    case "+":
    case "-":
      if (sign === "-" && left === "days" && right === "days") return "figure";
      return both.find((kind) => kind !== "figure") ?? "figure";
    case "*":
      if (lengths === 2) return "area";
      return (
        both.find((kind) => kind === "length" || kind === "area" || kind === "money" || kind === "angle") ??
        left
      );
    case "/":
      if (left === right) return left === "figure" || left === "count" ? "figure" : "share";
      if (left === "area" && right === "length") return "length";
      return lengths === 1 && right === "length" ? "figure" : left === "count" ? "figure" : left;
    case "^":
      return left === "length" ? "area" : "figure";
    case "&":
      return "text";
    default:
      return "flag";
  }
}

/** For each page object, the kinds its formulas ask of the cells and names they pass straight to a function. */
const asked = new WeakMap<Page, ReadonlyMap<string, Kind>>();

function askedBy(page: Page): ReadonlyMap<string, Kind> {
  const known = asked.get(page);
  if (known) return known;
  const found = new Map<string, Kind>();
  const visit = (tree: Tree): void => {
    if (tree.is === "range") visit(tree.from);
    if (tree.is === "sign") tree.args.forEach(visit);
    if (tree.is !== "call") return;
    const takes = Object.values(catalogue.get(tree.name)?.takes ?? {});
    tree.args.forEach((arg, i) => {
      if (!arg) return;
      const kind = takes[i]?.kind;
      if (kind && (arg.is === "name" || arg.is === "cell")) found.set(arg.text.toLowerCase(), kind);
      else visit(arg);
    });
  };
  for (const row of page.rows) for (const typed of row) if (isFormula(typed)) visit(formulaTree(typed));
  asked.set(page, found);
  return found;
}

/** The kinds of the cells of one book; made anew for each book, worked out as it is asked. */
export class Kinds {
  readonly #book: Book;
  readonly #known = new Map<string, Kind>();
  #asked: Map<string, Kind> | null = null;

  constructor(book: Book) {
    this.#book = book;
  }

  of(place: Place): Kind {
    const key = `${place.page}.${place.row}.${place.column}`;
    const known = this.#known.get(key);
    if (known) return known;
    this.#known.set(key, "figure");
    const kind = this.#workedOut(place);
    this.#known.set(key, kind);
    return kind;
  }

  /** The kind of a tree of a formula on `page`. */
  ofTree(tree: Tree, page: number): Kind {
    return kindOfTree(tree, (text) => {
      const place = lookUp(this.#book, text, page);
      return place ? this.of(place) : "figure";
    });
  }

  #workedOut(place: Place): Kind {
    const column = this.#book.pages[place.page]?.columns[place.column]?.kind ?? "any";
    const content = understand(
      typedAt(this.#book, place.page, place.row, place.column),
      column,
      this.#book.unit,
    );
    if (content.is === "length") return "length";
    if (content.is === "date") return "days";
    if (content.is === "flag") return "flag";
    if (content.is === "text" || content.is === "blank") return "text";
    if (content.is === "share") return "share";
    if (content.is === "formula") {
      const kind = this.ofTree(
        formulaTree(typedAt(this.#book, place.page, place.row, place.column)),
        place.page,
      );
      if (kind !== "figure") return kind;
    }
    if (column === "length" || column === "money") return column;
    if (column === "date") return "days";
    return content.is === "number"
      ? (this.#askedKinds().get(`${place.page}.${place.row}.${place.column}`) ?? "figure")
      : "figure";
  }

  #askedKinds(): Map<string, Kind> {
    if (this.#asked) return this.#asked;
    this.#asked = new Map();
    this.#book.pages.forEach((page, i) => {
      for (const [text, kind] of askedBy(page)) {
        const place = lookUp(this.#book, text, i);
        if (place) this.#asked!.set(`${place.page}.${place.row}.${place.column}`, kind);
      }
    });
    return this.#asked;
  }
}
