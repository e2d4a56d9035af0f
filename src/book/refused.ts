/** Formulas that are refused by their text alone, before an engine sees them. */

import type { Decimal } from "../../functions/decimal.ts";
import { phrase } from "../../functions/phrase.ts";
import { unclearComma } from "./commas.ts";
import { tokens, tooMuch } from "./formula.ts";
import type { Token } from "./lex.ts";

/** Why a formula is refused, what was typed and how to mend it; null when it may be calculated. */
export const refused = (formula: string, decimal?: Decimal): string | null =>
  tooMuch(formula) ??
  looseQuotes(formula) ??
  unclearComma(formula, decimal) ??
  rowZero(formula) ??
  cellsInBraces(formula);

/** The engine looks for a page's title from each quote to the end of the formula: with many loose ones it would take seconds. */
const MOST_LOOSE_QUOTES = 20;

function looseQuotes(formula: string): string | null {
  const loose = tokens(formula).filter(({ kind, text }) => kind === "stray" && text === "'").length;
  return loose > MOST_LOOSE_QUOTES
    ? phrase`this formula has ${loose} quotes ' that enclose no title of a page before a !; delete them`
    : null;
}

/** Rows are counted from 1. */
function rowZero(formula: string): string | null {
  for (const { kind, text } of tokens(formula)) {
    const zero =
      kind === "rows" ? /(?:^|[!:$])0+(?=:|$)/.test(text) : kind === "cell" && /[A-Za-z]\$?0+$/.test(text);
    if (zero)
      return phrase`${text} names row 0, and the first row of a page is 1; write the row that is meant`;
  }
  return null;
}

const NAMES_CELLS = new Set(["name", "cell", "columns", "rows"]);

/** The engine doesn't follow the cells that a list in braces names: the answer would not change with them. */
function cellsInBraces(formula: string): string | null {
  let inside = 0;
  for (const token of tokens(formula)) {
    if (token.text === "{") inside += 1;
    if (token.text === "}") inside -= 1;
    if (inside > 0 && namesCells(token))
      return phrase`${token.text} stands in braces, and a list in braces holds numbers only; write a range such as B2:B5, or the cells as arguments with ; between them`;
  }
  return null;
}

const namesCells = ({ kind, text }: Token): boolean => NAMES_CELLS.has(kind) && !/^(true|false)$/i.test(text);
