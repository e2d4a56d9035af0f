/**
 * Moving the references of formulas: when rows or columns are put in or taken out, when a page
 * is renamed, and when a formula is copied elsewhere. Everything else typed stays as it was.
 */
import { columnLetters, columnNumber, pageReference } from "./address.ts";
import { isFormula, type Token, tokens } from "./formula.ts";

export type Axis = "row" | "column";

interface Reference {
  readonly page: string;
  readonly fixedColumn: string;
  readonly column: number;
  readonly fixedRow: string;
  readonly row: number;
}

const CELL = /^((?:'(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_]*)!)?(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/;

function readReference(text: string): Reference {
  const [, page = "", fixedColumn = "", letters = "A", fixedRow = "", row = "1"] = CELL.exec(text)!;
  return { page, fixedColumn, column: columnNumber(letters), fixedRow, row: Number(row) - 1 };
}

const writeReference = (reference: Reference): string =>
  `${reference.page}${reference.fixedColumn}${columnLetters(reference.column)}${reference.fixedRow}${reference.row + 1}`;

const LOST = "#REF!";

/** Rewrites each single cell and each pair of cells that make a range. */
function rewrite(
  formula: string,
  one: (reference: Reference) => Reference | null,
  both?: (from: Reference, to: Reference) => readonly [Reference, Reference] | null,
): string {
  if (!isFormula(formula)) return formula;
  const list = tokens(formula);
  const out: string[] = [];
  for (let i = 0; i < list.length; i += 1) {
    const token = list[i] as Token;
    const colon = list[i + 1];
    const end = list[i + 2];
    if (token.kind === "cell" && colon?.text === ":" && end?.kind === "cell") {
      const from = readReference(token.text);
      const to = readReference(end.text);
      const ends = both ? both(from, to) : [one(from), one(to)];
      out.push(ends?.[0] && ends[1] ? `${writeReference(ends[0])}:${writeReference(ends[1])}` : LOST);
      i += 2;
    } else if (token.kind === "cell") {
      const moved = one(readReference(token.text));
      out.push(moved ? writeReference(moved) : LOST);
    } else out.push(token.text);
  }
  return out.join("");
}

/** Whether a reference written on page `home` points at page `title`. */
function pointsAt(reference: Reference, home: string, title: string): boolean {
  if (reference.page === "") return home === title;
  return unquoted(reference.page).toLowerCase() === title.toLowerCase();
}

const unquoted = (page: string): string => page.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'");

/**
 * A formula on page `home` after `count` rows or columns were put in before `at` on page `title`
 * (`count` < 0: taken out from `at` on). A reference to what was taken out becomes #REF!.
 */
export function afterShift(
  formula: string,
  home: string,
  title: string,
  axis: Axis,
  at: number,
  count: number,
): string {
  const moved = (value: number): number | null => {
    if (value < at) return value;
    if (count < 0 && value < at - count) return null;
    return value + count;
  };
  const one = (reference: Reference): Reference | null => {
    if (!pointsAt(reference, home, title)) return reference;
    const value = moved(reference[axis]);
    return value === null ? null : { ...reference, [axis]: value };
  };
  return rewrite(formula, one, (from, to) => {
    if (!pointsAt(from, home, title)) return [from, to];
    // A range that loses an end shrinks to what is left of it.
    const first = moved(from[axis]) ?? at;
    const last = moved(to[axis]) ?? at - 1;
    return last < first
      ? null
      : [
          { ...from, [axis]: first },
          { ...to, [axis]: last },
        ];
  });
}

/** A formula copied `rows` down and `columns` to the right: what is not fixed by $ moves along. */
export function copied(formula: string, rows: number, columns: number): string {
  return rewrite(formula, (reference) => {
    const row = reference.fixedRow ? reference.row : reference.row + rows;
    const column = reference.fixedColumn ? reference.column : reference.column + columns;
    return row < 0 || column < 0 ? null : { ...reference, row, column };
  });
}

/** A formula after the page `from` got the title `to`. */
export function afterRename(formula: string, from: string, to: string): string {
  return rewrite(formula, (reference) =>
    reference.page !== "" && unquoted(reference.page).toLowerCase() === from.toLowerCase()
      ? { ...reference, page: `${pageReference(to)}!` }
      : reference,
  );
}
