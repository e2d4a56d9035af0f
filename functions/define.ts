/**
 * The shape of a declaration, which states everything about one sewing function in one place.
 * Registration, argument hints, help, Working, Drawing and most tests are derived from it.
 */

import type { Decimal } from "./decimal.ts";
import type { Shape } from "./drawing/shapes.ts";
import type { TapeMark } from "./fractions.ts";
import type { JoinPlanner, Planner } from "./lay.ts";
import type { Words } from "./phrase.ts";
import type { Piece, Role } from "./pieces/piece.ts";
import type { CellOfList } from "./refusal.ts";
import type { Tape, Unit } from "./units.ts";
import type { Lengths } from "./worn/body.ts";
import type { Garment } from "./worn/garment.ts";

/** What a kind of argument is inside `compute`. Lengths and areas are in the book's unit, angles in degrees. */
interface KindValues {
  length: number;
  area: number;
  /** A whole number. */
  count: number;
  /** A ratio: 0.5 is a half, 2.5 two and a half times. */
  share: number;
  angle: number;
  /** A day, counted as the engine counts dates, or a number of days. */
  days: number;
  money: number;
  /** A bare number of no unit, such as the figure to convert. */
  figure: number;
  flag: boolean;
  text: string;
  piece: Piece;
  /** The number of an edge of a piece, counted from 1; a cell holds that number or the edge's name. */
  edge: number;
  verdict: string;
  /** A list of several columns with headings: a block of cells that a `BlockForm` reads. */
  block: Block;
}

export type Kind = keyof KindValues;

/** A usual length as makers have it on either tape, each figure in its own unit: 10 cm, 4 1/2 in. */
export type LengthPerTape = Readonly<Record<Tape, number>>;

/** One argument. */
export interface Take {
  readonly kind: Kind;
  /** What the argument is and how it is measured, in a few words. */
  readonly about: string;
  /** Least and greatest value allowed, both included; lengths in centimetres, areas in square centimetres. */
  readonly from?: number;
  readonly to?: number;
  /** Least and greatest value that is usual, both included, in the same units. A value outside is still answered, and a warning is shown. */
  readonly usual?: readonly [least: number, most: number];
  /**
   * The value when it is left out; null when `compute` decides. Its presence makes the argument optional.
   * A length other than 0 is a pair of figures, each round on its own tape.
   */
  readonly otherwise?: number | string | boolean | null | LengthPerTape;
  /** Of an edge: the argument before it that holds its piece. */
  readonly of?: string;
  /** A range of cells; `blanks` lets empty cells through as null, else one is refused. */
  readonly many?: true;
  readonly blanks?: true;
  /** The words a text may be. */
  readonly choices?: readonly string[];
  /** Of a block: what its bare numbers are, such as lengths in a measurement chart. */
  readonly holds?: Kind;
  /** Of a block: the list that it is, with the columns by which it is read. `compute` is given its rows. */
  readonly list?: ListForm;
  /**
   * Of such a list: the fields that are read. The answer then rests on these columns alone, so that the others may be
   * worked out from it. When it is left out, all fields are read, and the answer rests on the whole block.
   */
  readonly reads?: readonly string[];
  /** Of a range of lengths: a cell of it may also hold several, as MARKS writes them: "1; 3 1/2; 6 in". */
  readonly marks?: true;
}

export type Takes = Readonly<Record<string, Take>>;

type SingleValue<T extends Take> = T extends { readonly list: ListForm }
  ? readonly ListRow[]
  : T["choices"] extends readonly string[]
    ? T["choices"][number]
    : KindValues[T["kind"]];
type ArgumentValue<T extends Take> = T["many"] extends true
  ? readonly (T["blanks"] extends true ? SingleValue<T> | null : SingleValue<T>)[]
  : SingleValue<T>;

/** The arguments as `compute` and `draw` receive them: checked, defaults filled in, pieces read. */
export type Given<T extends Takes> = {
  readonly [K in keyof T]: ArgumentValue<T[K]> | (T[K] extends { readonly otherwise: null } ? null : never);
};

/** What `compute` gets besides its arguments: ways to note steps, write lengths and ask for a lay. */
export interface CallContext {
  /** Notes a step: its name, its rule in OpenFormula over arguments and earlier steps, its value. */
  step<V extends number | string>(name: string, rule: string, value: V): V;
  /**
   * Notes a figure that a curve or a loop gave, with a sentence that says how: "area of the piece", or with values
   * () => phrase`along ${edge}`. It is said where the working is shown, not where a cell is calculated.
   */
  measure<V extends number | string>(name: string, sentence: Words, value: V): V;
  /** A length known in centimetres, in the unit of the arguments. */
  cm(figure: number): number;
  /**
   * A length in words: "1 1/2 in", on a finer mark where it would read like one of the lengths
   * `beside` it that it differs from.
   */
  say(length: number, ...beside: number[]): string;
  /**
   * Says that the answer is not certain, in a sentence: "3 is the best found, not proved least; 2 might do".
   * The cell shows it beside its answer. Not for functions that give pieces, whose answers are kept. `at` is the
   * cell of a list that the sentence is about, where it is about one.
   */
  doubt(sentence: string, at?: CellOfList): void;
  /**
   * Says which cell of a list the verdict is about, and what to look for there. The page leads to it and marks it.
   */
  points(at: CellOfList, sentence: string): void;
  /** Says that the answer rests on this cell of a list. When no cell of a list is named, the answer rests on the whole list. */
  takes(at: CellOfList): void;
  /**
   * Says that the answer is an estimate, and of what. Whatever is worked out from it is marked as one too. Not
   * for functions that give pieces.
   */
  estimates(sentence: string): void;
  /** The lay planner, for functions that lay pieces on cloth. */
  readonly plan: Planner;
  /** Looks for joins with which the pieces fit the cloth in stock. */
  readonly joins: JoinPlanner;
  /** The book's unit and finest mark: for the functions in tape/, and for lengths that must lie on whole marks of the tape. */
  readonly unit: Unit;
  readonly mark: TapeMark;
  /** The decimal mark of the book, for texts that are read. */
  readonly decimal: Decimal;
}

/** An answer known beforehand. */
export interface Example {
  /** Arguments by name, as a cell would hold them: pieces as path data, ranges as lists. */
  readonly given: Readonly<Record<string, Cell | readonly Cell[]>>;
  /** The answer; for a piece its measures, for a verdict or text the text or how it begins. */
  readonly gives: number | string | PieceMeasures;
  /** Greatest difference allowed; 1e-9 of the answer when left out. */
  readonly within?: number;
  /** The unit of the lengths given; "in" when left out. */
  readonly unit?: Unit;
  /** Why this is the answer: the source, or the calculation. */
  readonly because: string;
  /** How the help writes the formula, where its lists are too long to be written out. */
  readonly formula?: string;
}

export interface PieceMeasures {
  readonly area?: number;
  /** Across the grain. */
  readonly width?: number;
  /** Along the grain. */
  readonly length?: number;
  readonly edges?: readonly number[];
}

export type Cell = number | string | boolean | null;

/** The cells of a range of two columns or more, row by row; a plain list to a function that knows no headings. */
export interface Block extends ReadonlyArray<Cell> {
  /** How many columns. */
  readonly wide: number;
  /** The headings of the page's columns, "" for a column without one. */
  readonly headings: readonly string[];
}

/** A column of a list that is read by its headings. */
export interface ListColumn {
  /** The headings by which it is known, in small letters; the first is the usual one. */
  readonly headings: readonly string[];
  readonly about: string;
  /** What its cells may be. */
  readonly take: Take;
}

/** A list of several columns that an argument of kind "block" is: a list of seams, a fitting log. */
export interface ListForm {
  /** What a sentence calls it: "the list of seams". */
  readonly noun: string;
  /** By the name of its field in a row. A column that is `needed` must be there. */
  readonly columns: Readonly<Record<string, ListColumn & { readonly needed?: true }>>;
}

/** A row of a list, blank rows left out. */
export interface ListRow {
  /** Counted from 1 under the headings, blank rows counted too. */
  readonly number: number;
  /** The value in each column, checked to be of its kind; null for a blank cell. Outlines are still texts. */
  readonly cells: Readonly<Record<string, Cell>>;
  /** The number of each of its cells in the block, for what points at it. */
  readonly places: Readonly<Record<string, number>>;
}

/** Another way to give a function its lists: one block of cells whose headings say what each column is. */
export interface BlockForm {
  /** All arguments of this form in order. The first is the block; the others are arguments of the function, or of `read` alone. */
  readonly takes: Takes;
  /** By the name of the argument that the column gives. */
  readonly columns: Readonly<Record<string, ListColumn>>;
  /**
   * The block's columns by argument, its headings by argument, and what each row is called; `given` are
   * the other arguments. Throws a refusal.
   */
  readonly read: (
    block: Block,
    given: Readonly<Record<string, unknown>>,
  ) => {
    readonly columns: Readonly<Record<string, readonly Cell[]>>;
    readonly headings: Readonly<Record<string, string>>;
    readonly rows: readonly string[];
    /** By argument, the number in the block of each cell of the column; a heading's cell has no number here. */
    readonly cells: Readonly<Record<string, readonly number[]>>;
    /** Arguments left out that the block decides, such as the one cloth of a cut list. */
    readonly decides?: Readonly<Record<string, Cell>>;
  };
  /** Formulas of this form, and what each asks. */
  readonly examples: readonly { readonly formula: string; readonly because: string }[];
}

/** The values of the steps, by name. */
export type StepValues = Readonly<Record<string, number>>;

/**
 * A relation that usually holds among the arguments: "hem >= top", read by `plain-rule.ts`. Arguments that
 * are left out make it hold. In it a bare number beside a length is in centimetres. The sentence for
 * one comparison is made from it; any other rule brings its own sentence, with {argument} in
 * place of that argument's value: { rule: "IF(...)", says: "the hem {hem} is ..." }.
 */
export type UsualRelation = string | { readonly rule: string; readonly says: string };

/** An edge laid straight, with all places along it that the function can give, not only the one that the call asks for. */
export interface EdgeStrip {
  readonly length: number;
  /** In their order from the beginning of the edge. */
  readonly marks: readonly StripMark[];
  /** The function does not know where the edge ends: it may go on beyond the strip. */
  readonly goesOn?: true;
}

export interface StripMark {
  readonly at: number;
  readonly role: Role;
  /** What stands there, such as "fold" or "eyelet 3". */
  readonly says: string;
}

export interface Declaration<T extends Takes = Takes> {
  readonly name: string;
  /** One sentence for people who sew. */
  readonly summary: string;
  /** The published source, or "geometry", or "common practice". */
  readonly source: string;
  /** Words a maker might search by, beyond those of the summary. */
  readonly words?: string;
  readonly takes: T;
  /** Another way to give the arguments: its lists as one block with headings. */
  readonly block?: BlockForm;
  /** A third way: the first two arguments are blocks, and the third is not. */
  readonly twoBlocks?: BlockForm;
  readonly returns: Kind;
  /** Relations that usually hold among the arguments. A call that breaks one is still answered, and is listed among the problems. */
  readonly usual?: readonly UsualRelation[];
  /** Pairs of arguments of one kind, "a, b", that no rule can tell apart when they change places, and why. */
  readonly alike?: Readonly<Record<string, string>>;
  readonly compute: (given: Given<T>, context: CallContext) => number | string | Piece;
  /** Shapes; `answer` is what `compute` gave. `context` is there to ask for a lay again and for lengths in words. */
  readonly draw?: (
    given: Given<T>,
    found: StepValues,
    answer: number | string | Piece,
    context: Pick<CallContext, "cm" | "say" | "plan" | "unit" | "mark">,
  ) => readonly Shape[];
  /** What stands beside the answer wherever it is read, in a sentence: of how many seams a length is one, which pieces are cut from which cloth. "" for nothing. */
  readonly beside?: (
    given: Given<T>,
    answer: number | string | Piece,
    context: Pick<CallContext, "cm" | "say" | "plan" | "unit" | "mark">,
  ) => string;
  /** The edge that the function marks, for a strip of paper to mark the cloth by. */
  readonly strip?: (given: Given<T>, found: StepValues, answer: number | string | Piece) => EdgeStrip;
  /** The garment that the arguments make, to be drawn as it hangs on a figure. Skirts, petticoats, capes and peplums have it. */
  readonly worn?: (given: Given<T>, found: StepValues, lengths: Lengths) => Garment;
  /** Of a function with `worn` whose piece may as well be a cuff, a facing or a guard: what of a panel decides. `top` is a step. */
  readonly panel?: { readonly top: string; readonly depth: keyof T & string };
  readonly examples: readonly Example[];
  /** Where the work is dangerous, or where the figure alone must not be trusted. */
  readonly cautions?: string;
}

/** Declares a function; the types of `compute` and `draw` follow from `takes`. */
export function define<const T extends Takes>(declaration: Declaration<T>): Declaration {
  return declaration as unknown as Declaration;
}
