/**
 * A book told in the other unit of length. The answers do not move: typed lengths are converted,
 * and a bare figure that stands for a length inside a formula keeps its unit by name.
 */
import { catalogue } from "../../functions/catalogue.ts";
import type { Kind } from "../../functions/define.ts";
import { readTape, USUAL_MARK } from "../../functions/fractions.ts";
import { convert, type Unit } from "../../functions/units.ts";
import { isFormula, type Token, type Tree, tokens } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { understand } from "./content.ts";
import { formulaTree, Kinds } from "./kinds.ts";

/** The book in another unit, its finest mark the usual one there. */
export function convertBook(book: Book, unit: Unit): Book {
  if (book.unit === unit) return book;
  const kinds = new Kinds(book);
  const pages = book.pages.map((page, index) => ({
    ...page,
    rows: page.rows.map((row, r) =>
      row.map((typed, column) => {
        if (isFormula(typed)) return convertFormula(typed, book.unit, (tree) => kinds.ofTree(tree, index));
        const content = understand(typed, page.columns[column]?.kind ?? "any", book.unit);
        const length =
          content.is === "length" ||
          (content.is === "number" && kinds.of({ page: index, row: r, column }) === "length");
        return length ? convertTyped(typed, content.value as number, book.unit, unit) : typed;
      }),
    ),
  }));
  return { ...book, unit, mark: USUAL_MARK[unit], pages, lays: {} };
}

/** A typed length: one that names its unit stands as it is, a bare figure becomes one in the new unit. */
function convertTyped(typed: string, value: number, from: Unit, to: Unit): string {
  const namesUnit = /[a-z'"″′]\s*$/i.test(typed.trim()) && readTape(typed, from) !== null;
  return namesUnit ? typed : String(Number(convert(value, from, to).toPrecision(12)));
}

/** Bare figures in length arguments, or added to lengths, get their unit's name: 54 → IN(54). */
function convertFormula(formula: string, from: Unit, kindOf: (tree: Tree) => Kind): string {
  const marked = new Set<Token>();
  const mark = (tree: Tree | null | undefined): void => {
    if (!tree) return;
    if (tree.is === "number" && Number(tree.text) !== 0) marked.add(tree.token);
    if (tree.is === "tape" && !/[a-z]$/i.test(tree.text)) marked.add(tree.token);
    if (tree.is === "sign" && tree.args.length === 1) mark(tree.args[0]);
    if (tree.is === "list") tree.items.forEach(mark);
  };
  const visit = (tree: Tree): void => {
    if (tree.is === "tape") mark(tree);
    if (tree.is === "sign") {
      tree.args.forEach(visit);
      const summed =
        ["+", "-", "<", ">", "<=", ">=", "=", "<>"].includes(tree.sign) && tree.args.length === 2;
      if (summed && tree.args.some((arg) => kindOf(arg) === "length")) tree.args.forEach(mark);
    }
    if (tree.is !== "call") return;
    const takes = Object.values(catalogue.get(tree.name)?.takes ?? {});
    tree.args.forEach((arg, i) => {
      if (!arg) return;
      visit(arg);
      if (takes[i]?.kind === "length") mark(arg);
    });
    const comparing = ["MIN", "MAX", "IF", "SUM", "ROUNDUP", "CEILING", "FLOOR", "MROUND"].includes(
      tree.name,
    );
    if (comparing && kindOf(tree) === "length") tree.args.slice(tree.name === "IF" ? 1 : 0).forEach(mark);
  };
  visit(formulaTree(formula));
  const starts = new Set([...marked].map(({ at }) => at));
  return tokens(formula)
    .map((token) => (starts.has(token.at) ? `${from.toUpperCase()}(${token.text})` : token.text))
    .join("");
}
