/**
 * The lay as plain data: the question a cut list asks and the answer a planner gives.
 *
 * All lengths are in one unit, whichever the caller uses. On a cloth, x runs along the
 * selvedge (the length of the cloth, from 0) and y across it (0 to its width). A placed copy
 * is the piece's outline turned by `turn` degrees about (0, 0), counter-clockwise when y
 * points up, and then moved by (x, y).
 */

import type { TapeMark } from "./fractions.ts";
import type { Point } from "./geometry/strokes.ts";
import { written } from "./phrase.ts";
import type { Unit } from "./units.ts";

/** One kind of piece to cut. Mirrored pairs and pieces on the fold are spelled out beforehand. */
export interface LayPiece {
  readonly name: string;
  /** The cut line (allowances on) as a closed polygon without crossings, last point not repeated. */
  readonly outline: readonly Point[];
  /** How many copies, a whole number from 1. */
  readonly quantity: number;
  /** Turns in degrees that the grain allows: [0] one way, [0, 180] two way, others if the maker says so. */
  readonly turns: readonly number[];
  /** With a repeat: the point of the outline that must fall on the same place of the repeat in every copy. */
  readonly match?: Point;
  /** The line the outline was opened out along, when it is cut on the fold. */
  readonly fold?: readonly [Point, Point];
  /** Inner folds of the pleats marked on it, where a join does not show. */
  readonly innerFolds?: readonly (readonly [Point, Point])[];
}

/** A cloth to lay on. */
export interface LayCloth {
  readonly name: string;
  /** Usable width, selvedges off. */
  readonly width: number;
  /** The length in stock; null when the cloth may be as long as the lay needs. */
  readonly length: number | null;
  /** An odd cloth: its own outline inside [0, length] × [0, width]. */
  readonly outline?: readonly Point[];
  /** Flaws and holes to keep clear of. */
  readonly flaws?: readonly (readonly Point[])[];
}

/** The tape by which a sentence writes lengths. */
export interface LayTape {
  readonly unit: Unit;
  readonly mark: TapeMark;
}

export interface LayQuestion {
  readonly pieces: readonly LayPiece[];
  /** One cloth of open length, or the cloths in stock. */
  readonly cloths: readonly LayCloth[];
  /** Least distance between cut lines, for the scissors; 0 when pieces may touch. */
  readonly gap: number;
  /** Length of the pattern repeat along the selvedge; 0 for plain cloth. */
  readonly repeat: number;
  /** Copies the maker has put down by hand and that stay there. */
  readonly pinned?: readonly Placement[];
  /** How sentences about the lay write its lengths; when it is left out, as figures without a unit. */
  readonly tape?: LayTape;
  /** One of many tried in passing, such as places for a join: a quick lay is answer enough. */
  readonly passing?: true;
  /** A lay that others are found from: it is searched for, and shown nowhere. */
  readonly start?: true;
  /**
   * Asks which copies are best bought when `cloths` do not take all of them: the answer leaves out (`missing`) the
   * copies that take the least of `bought` together. Nothing else of such an answer counts.
   */
  readonly sharing?: {
    readonly bought: LayCloth;
    /** Copies of each piece that a known lay on `cloths` leaves out: one way to share them out. */
    readonly left: readonly number[];
  };
}

/** Where one copy lies. `piece` and `cloth` count from 0 in the question's lists, `copy` from 0 within the piece. */
export interface Placement {
  readonly piece: number;
  readonly copy: number;
  readonly cloth: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

export interface Lay {
  readonly placements: readonly Placement[];
  /** Length used of each cloth, in the order of the question. */
  readonly lengths: readonly number[];
  /** Area of the placed pieces over the area of the cloth used (width × length used), 0 to 1. */
  readonly density: number;
  /** Copies that found no place, as [piece, number of copies]. */
  readonly missing: readonly (readonly [piece: number, count: number])[];
  /** How the lay was found; a lay that does not say is a quick one. */
  readonly origin?: LayOrigin;
}

/** How a lay was found: at once, by a search, or by the maker's own hand. */
export type LayOrigin =
  | { readonly by: "quick" }
  | {
      readonly by: "search";
      /** The seconds of the search by the clock; 0 when they are not known. */
      readonly seconds: number;
      /** True when no lay of the question can be shorter. */
      readonly proved?: boolean;
    }
  | { readonly by: "hand" };

/** How a lay was found, in words that follow a length: "quick", "searched for 20 s", "laid by hand". Verdicts have them too. */
export function originText(origin: LayOrigin | undefined): string {
  if (!origin || origin.by === "quick") return written`quick`;
  if (origin.by === "hand") return written`laid by hand`;
  if (origin.proved) return written`proved: no lay can be shorter`;
  if (origin.seconds <= 0) return written`found by a search`;
  return written`searched for ${searchTime(origin.seconds)}`;
}

/** How long a search took: "12 s", "3 min". */
export function searchTime(seconds: number): string {
  if (seconds >= 120) return written`${Math.round(seconds / 60)} min`;
  return written`${seconds < 9.95 ? Math.max(0.1, Math.round(seconds * 10) / 10) : Math.round(seconds)} s`;
}

/** Why there is no lay, in a sentence. */
export interface NoLay {
  readonly refusal: string;
  /** When a lay is still being searched for: the least length that it needs, by area. */
  readonly pending?: { readonly least: number };
}

/** A planner: lays the question, or answers with a sentence that says why it can not be laid. */
export type Planner = (question: LayQuestion) => Lay | NoLay;

/** A piece that is cut in two and joined, because it does not fit the cloth in stock. */
export interface Join {
  /** The piece that is cut in two, as it was called. */
  readonly name: string;
  /** How many copies of it. */
  readonly copies: number;
  /** From the piece's left border, as it is drafted, to the join; on a slanting fold at its nearer end. */
  readonly at: number;
  readonly inPleat: boolean;
}

export interface Pieced {
  readonly joins: readonly Join[];
  /** The cut list with the joined pieces in two parts, each with its allowance at the join. */
  readonly question: LayQuestion;
  /** A lay of that cut list on the cloth in stock with nothing missing. */
  readonly lay: Lay;
}

/** What a search for joins begins with. */
export interface JoinQuestion {
  readonly question: LayQuestion;
  /** The lay that leaves pieces out. */
  readonly start: Lay;
  /** Allowance on each side of a join. */
  readonly seam: number;
  /** The mark of the tape that joins along the grain lie on, measured from the piece's left border; 0 when they may lie anywhere. */
  readonly mark: number;
}

/** How a search for joins ended. */
export interface JoinAnswer {
  /** Null when no joins were found with which every piece finds a place. */
  readonly pieced: Pieced | null;
  /** Lays tried. */
  readonly tried: number;
}

/** Answers at once, or says that the joins are being looked for elsewhere. */
export type JoinPlanner = (joins: JoinQuestion) => JoinAnswer | { readonly pending: true };
