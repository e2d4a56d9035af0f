/** What a cell holds as far as its kind goes. */
import { isFormula } from "../book/formula.ts";
import { type Book, type ColumnKind, typedAt } from "../book/shape.ts";
import { namesUnit, understand } from "./content.ts";
import { type Code, codeOf, FIGURE, LENGTH, NONE, PIECE, TEXT } from "./kind-codes.ts";

/** A small number for each of these, so that those of a large book take a byte each. */
export const Holds = {
  /** A length whatever formulas make of it. */
  lengthWithUnit: 1,
  /** A length unless formulas take it for something else. */
  lengthOfColumn: 2,
  /** A fraction, which may be a length or a share. */
  fraction: 3,
  money: 4,
  days: 5,
  number: 6,
  text: 7,
  /** A text that begins like path data. */
  outline: 8,
  blankOfTexts: 9,
  blank: 10,
  flag: 11,
  share: 12,
  formula: 13,
  formulaOfLengths: 14,
  formulaOfMoney: 15,
  formulaOfDays: 16,
} as const;
export type Holds = (typeof Holds)[keyof typeof Holds];

const OUTLINE = /^\s*[Mm][\s\d.+-]/;

const [MONEY, DAYS, FLAG, SHARE] = (["money", "days", "flag", "share"] as const).map(codeOf) as [
  Code,
  Code,
  Code,
  Code,
];

const FORMULA_OF: Partial<Record<ColumnKind, Holds>> = {
  length: Holds.formulaOfLengths,
  money: Holds.formulaOfMoney,
  date: Holds.formulaOfDays,
};

export const isFormulaHeld = (holds: Holds): boolean => holds >= Holds.formula;

/** Whether a text says more than its kind, because it may be a heading or an outline. */
export const isTextHeld = (holds: Holds): boolean => holds >= Holds.text && holds <= Holds.blankOfTexts;

export function holdsAt(book: Book, page: number, row: number, column: number): Holds {
  const kind = book.pages[page]?.columns[column]?.kind ?? "any";
  const typed = typedAt(book, page, row, column);
  if (isFormula(typed)) return FORMULA_OF[kind] ?? Holds.formula;
  const content = understand(typed, kind, book.unit, book.decimal);
  switch (content.is) {
    case "length":
      if (!content.sure) return Holds.fraction;
      return namesUnit(typed) ? Holds.lengthWithUnit : Holds.lengthOfColumn;
    case "number":
      if (kind === "money") return Holds.money;
      return kind === "date" ? Holds.days : Holds.number;
    case "date":
      return Holds.days;
    case "text":
      return OUTLINE.test(typed) ? Holds.outline : Holds.text;
    case "blank":
      return kind === "text" ? Holds.blankOfTexts : Holds.blank;
    case "flag":
      return Holds.flag;
    case "share":
      return Holds.share;
    default:
      return Holds.formula;
  }
}

/** The kind of a typed cell, given the kind that formulas expect of it and that of a fraction of which they expect none. */
export function kindOfTyped(holds: Holds, asked: Code, fraction: Code): Code {
  switch (holds) {
    case Holds.lengthWithUnit:
      return LENGTH;
    case Holds.lengthOfColumn:
      return asked === NONE ? LENGTH : asked;
    case Holds.fraction:
      return asked === NONE ? fraction : asked;
    case Holds.money:
      return MONEY;
    case Holds.days:
      return DAYS;
    case Holds.text:
    case Holds.outline:
      return asked === PIECE ? PIECE : TEXT;
    case Holds.blankOfTexts:
      return TEXT;
    case Holds.flag:
      return FLAG;
    case Holds.share:
      return SHARE;
    default:
      return asked === NONE ? FIGURE : asked;
  }
}

/** The kind of a formula's cell, given the kind of the formula by itself and the kind that other formulas expect of it. */
export function kindOfFormula(holds: Holds, own: Code, asked: Code): Code {
  if (own === TEXT && asked === PIECE) return PIECE;
  if (own !== FIGURE) return own;
  if (holds === Holds.formulaOfMoney) return MONEY;
  if (holds === Holds.formulaOfDays) return DAYS;
  if (asked !== NONE) return asked;
  return holds === Holds.formulaOfLengths ? LENGTH : FIGURE;
}
