/** A cut list: outlines, how many of each, which are pairs and which are cut on the fold. */
import type { Takes } from "../define.ts";
import { phrase, written } from "../phrase.ts";
import { unfold } from "../pieces/cut-on-fold.ts";
import type { Piece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/** The arguments every function of a cut list begins with. */
export const PIECES_TO_CUT = {
  pieces: {
    kind: "piece",
    about: "outlines to cut, allowances included, one in each row",
    many: true,
    blanks: true,
  },
  quantities: {
    kind: "count",
    about: "how many of each piece to cut; a pair counts as 2",
    from: 1,
    to: 500,
    many: true,
    blanks: true,
  },
} as const satisfies Takes;

/** The arguments every function of a cut list ends with. */
export const CUTTING_RULES = {
  one_way: {
    kind: "flag",
    about:
      "TRUE for one-way cloth, with a nap or a print that has an up and a down: no piece is turned round",
    otherwise: false,
  },
  gap: {
    kind: "length",
    usual: [0, 10],
    about: "gap between pieces: the smallest distance between cut lines",
    from: 0,
    to: 20,
    otherwise: 0,
  },
  repeat: {
    kind: "length",
    usual: [0, 130],
    about:
      "length of the pattern repeat along the selvedge; the first point of each outline keeps its place in the repeat",
    from: 0,
    to: 200,
    otherwise: 0,
  },
  pairs: {
    kind: "flag",
    about: "yes where half of the copies are mirror images",
    otherwise: null,
    many: true,
    blanks: true,
  },
  folds: {
    kind: "flag",
    about:
      "yes where the outline is half of a piece cut on the fold; the fold is a straight edge along the grain, at the left or right",
    otherwise: null,
    many: true,
    blanks: true,
  },
  names: { kind: "text", about: "what each piece is called", otherwise: null, many: true, blanks: true },
  grains: {
    kind: "text",
    about:
      "how each piece may lie: straight, its grain along the selvedge; cross, also across the cloth; bias, at 45°",
    choices: ["straight", "cross", "bias"],
    otherwise: null,
    many: true,
    blanks: true,
  },
} as const satisfies Takes;

export type Grain = (typeof CUTTING_RULES)["grains"]["choices"][number];

/** One line of a cut list that cuts something. */
export interface CutRow {
  /** Its place in the list of pieces, counted from 0; left out of a row that stands in no list. */
  readonly at?: number;
  readonly name: string;
  readonly piece: Piece;
  readonly quantity: number;
  /** Half of the copies are mirror images. */
  readonly paired: boolean;
  /** The outline is half of the piece, cut on the fold. */
  readonly folded: boolean;
  readonly grain: Grain;
  /** May not be turned end for end, whatever the cloth. */
  readonly oneWay?: boolean;
}

/** The columns of a cut list as a function is given them; null for a blank cell, or for a column left out. */
export interface CutList {
  readonly pieces: readonly (Piece | null)[];
  readonly quantities: readonly (number | null)[];
  readonly pairs: readonly (boolean | null)[] | null;
  readonly folds: readonly (boolean | null)[] | null;
  readonly names: readonly (string | null)[] | null;
  readonly grains: readonly (Grain | null)[] | null;
  /** From a list that is read by its headings: pieces that may not be turned, that may be, and the headings by argument. */
  readonly ways?: readonly (boolean | null)[];
  readonly turns?: readonly (boolean | null)[];
  readonly headings?: Readonly<Record<string, string>>;
}

/** The lines of a cut list, blank ones left out. Refuses half-blank lines by their number. */
export function cutRows(list: CutList): CutRow[] {
  const { pieces, quantities, names } = list;
  for (const column of ["quantities", "pairs", "folds", "names", "grains"] as const) {
    const cells = list[column];
    if (cells && cells.length !== pieces.length)
      throw new Refusal(
        phrase`${column} must have the same number of cells as pieces, not ${cells.length} against ${pieces.length}`,
      );
  }
  const rows = pieces.flatMap((piece, i): CutRow[] => {
    const quantity = quantities[i] ?? null;
    const name = names?.[i]?.trim() || written`piece ${i + 1}`;
    if (piece === null && quantity === null) return [];
    if (piece === null)
      throw new Refusal(
        phrase`pieces, number ${i + 1}, is empty, but its quantity is ${quantity!}: give an outline`,
        { argument: "pieces", cell: i },
      );
    if (quantity === null)
      throw new Refusal(phrase`quantities, number ${i + 1}, is empty: say how many of ${name} to cut`, {
        argument: "quantities",
        cell: i,
      });
    const paired = list.pairs?.[i] ?? false;
    if (paired && quantity % 2 === 1)
      throw new Refusal(
        phrase`${list.headings?.quantities ?? "quantities"}, number ${i + 1}, must be even for pairs of ${name}, not ${quantity}: a pair is 2`,
        { argument: "quantities", cell: i },
      );
    const [folded, grain] = [list.folds?.[i] ?? false, list.grains?.[i] ?? "straight"];
    const oneWay = list.ways?.[i] === true || list.turns?.[i] === false;
    return [{ at: i, name, piece, quantity, paired, folded, grain, ...(oneWay && { oneWay }) }];
  });
  if (rows.length === 0)
    throw new Refusal(phrase`pieces is empty: give at least one outline and how many to cut`);
  return rows;
}

/** The whole piece of a row: opened out when it is cut on the fold. */
export function unfoldedPiece({ name, piece, folded }: CutRow): Piece {
  if (!folded) return piece;
  const whole = unfold(piece);
  if (whole) return whole;
  throw new Refusal(
    phrase`${name} can not be cut on the fold: it has no straight edge along the grain at its left or right border`,
  );
}
