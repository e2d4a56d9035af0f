/**
 * Formulas that are alike: filled down or across, they differ only in the cells they name, by as much as
 * their own cells differ. What was found out about one of them holds for all, so a book of many rows
 * costs what its different formulas cost.
 */
import { remember } from "../../functions/memo.ts";
import { columnNumber } from "./address.ts";
import { lex } from "./lex.ts";
import { MOST_COLUMNS, MOST_ROWS } from "./shape.ts";

/** A cell as a formula names it; row and column are counted from 0. */
export interface NamedCell {
  /** As it is written, without its page: "B$3". */
  readonly text: string;
  readonly row: number;
  readonly column: number;
  /** Whether the row and the column stay when the formula is filled: "$3", "$B". */
  readonly rowStays: boolean;
  readonly columnStays: boolean;
}

/** A formula cut at the cells that it names. */
export interface CutFormula {
  /** The formula with a sign in the place of each cell, equal for formulas that differ only in their cells. */
  readonly rest: string;
  readonly cells: readonly NamedCell[];
}

/** Texts and quoted titles, which may hold anything; or a cell, with nothing beside it that makes it part of another word. */
const CELLS =
  /"[^"]*"|'[^']*'|(?<![A-Za-z0-9_.$])(\$?)([A-Za-z]{1,2})(\$?)([1-9]\d{0,4})(?![A-Za-z0-9_.(!$])/g;

/** Formulas that can be cut: no sign that has a meaning of its own here, no comma, which may be a decimal mark. */
const PLAIN = /^[ -+\--~]*$/;

/** The signs in the place of a cell whose row and column stay or not. */
const SIGNS = ["\ue000", "\ue001", "\ue002", "\ue003"] as const;

/** Where the cells of the rest of a formula were. */
export const CELL_SIGN = /[\ue000-\ue003]/;

/** Whether a rest was found to be sure, for the rests of the latest formulas. */
const sure = remember<string, boolean>(20_000);

/** The formula cut at its cells; null when that is not sure to keep its meaning. Rows and columns by themselves are not cut. */
export function cutFormula(formula: string): CutFormula | null {
  if (!PLAIN.test(formula)) return null;
  const cells: NamedCell[] = [];
  let rest = "";
  let from = 0;
  CELLS.lastIndex = 0;
  for (let found = CELLS.exec(formula); found; found = CELLS.exec(formula)) {
    const letters = found[2];
    if (letters === undefined) continue;
    const [text] = found;
    const column = columnNumber(letters);
    const row = Number(found[4]) - 1;
    if (column >= MOST_COLUMNS || row >= MOST_ROWS) return null;
    const [columnStays, rowStays] = [found[1] !== "", found[3] !== ""];
    cells.push({ text, row, column, rowStays, columnStays });
    rest += formula.slice(from, found.index) + SIGNS[(rowStays ? 1 : 0) + (columnStays ? 2 : 0)]!;
    from = found.index + text.length;
  }
  rest += formula.slice(from);
  return sure(rest, () => isSure(formula, cells)) ? { rest, cells } : null;
}

/** Whether the formula's own tokens have these cells and no others, and no range that turns round when it is filled. */
function isSure(formula: string, cells: readonly NamedCell[]): boolean {
  const tokens = lex(formula);
  const bare = (text: string) => text.slice(text.lastIndexOf("!") + 1);
  const named = tokens.filter(({ kind }) => kind === "cell");
  if (named.length !== cells.length || named.some(({ text }, i) => bare(text) !== cells[i]!.text))
    return false;
  let seen = 0;
  return tokens.every(({ kind, text }, i) => {
    if (kind === "cell") seen += 1;
    if (kind === "columns" || kind === "rows" || kind === "stray" || kind === "brace") return false;
    if (kind === "function" && text.toUpperCase() === "OFFSET") return false;
    if (text !== ":") return true;
    const [a, b] = [cells[seen - 1], cells[seen]];
    return (
      tokens[i - 1]?.kind === "cell" &&
      tokens[i + 1]?.kind === "cell" &&
      a?.rowStays === b?.rowStays &&
      a?.columnStays === b?.columnStays
    );
  });
}

/** A key that is equal for formulas that are alike, each seen from its own cell. */
export function alikeKey({ rest, cells }: CutFormula, row: number, column: number): string {
  let key = rest;
  for (const cell of cells)
    key += ` ${cell.rowStays ? cell.row : cell.row - row},${cell.columnStays ? cell.column : cell.column - column}`;
  return key;
}
