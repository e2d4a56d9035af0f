/**
 * Pieces with one outline laid as copies of one piece. A piece that is its own mirror image, such as
 * a cuff or a hem guard, is cut as often mirrored as not, and it does not matter which is which: what
 * would only change places with its twin is not tried.
 */
import type { Point } from "../../functions/geometry/strokes.ts";
import type { Lay, LayPiece, LayQuestion, Placement } from "../../functions/lay.ts";
import { answerFrom } from "./answer.ts";

/** Outlines that differ by no more than this share of the widest cloth are one outline. */
const SAME = 1e-10;

export interface WithoutTwins {
  readonly question: LayQuestion;
  /** The lay of the question as it was asked, from a lay of the one without twins. */
  readonly split: (lay: Lay) => Lay;
}

/** The same question, with one piece for all that have the same outline. */
export function withoutTwins(question: LayQuestion): WithoutTwins {
  const { pieces, cloths, pinned = [] } = question;
  const slack = SAME * Math.max(...cloths.map(({ width }) => width));
  /** The pieces of each new piece, by their place in the list. */
  const groups: number[][] = [];
  if (pinned.length === 0)
    for (const [i, piece] of pieces.entries()) {
      const group = groups.find(([first]) => areTwins(pieces[first!]!, piece, slack));
      if (group) group.push(i);
      else groups.push([i]);
    }
  if (groups.length === pieces.length || pinned.length > 0) return { question, split: (lay) => lay };
  const merged = groups.map((group) => ({
    ...pieces[group[0]!]!,
    quantity: group.reduce((sum, i) => sum + pieces[i]!.quantity, 0),
  }));
  const copies = groups.map((group) =>
    group.flatMap((piece) => Array.from({ length: pieces[piece]!.quantity }, (_, copy) => ({ piece, copy }))),
  );
  return {
    question: { ...question, pieces: merged },
    split: ({ placements, origin }) => {
      const laid = groups.map(() => 0);
      const places = placements.map(
        (one): Placement => ({ ...one, ...copies[one.piece]![laid[one.piece]!++]! }),
      );
      return { ...answerFrom(question, places), ...(origin && { origin }) };
    },
  };
}

function areTwins(a: LayPiece, b: LayPiece, slack: number): boolean {
  const isSame = (p: Point, q: Point) => Math.abs(p[0] - q[0]) <= slack && Math.abs(p[1] - q[1]) <= slack;
  const n = a.outline.length;
  if (b.outline.length !== n || a.turns.length !== b.turns.length) return false;
  if (a.turns.some((turn, i) => turn !== b.turns[i])) return false;
  if ((a.match === undefined) !== (b.match === undefined)) return false;
  if (a.match && b.match && !isSame(a.match, b.match)) return false;
  const start = b.outline.findIndex((p) => isSame(p, a.outline[0]!));
  if (start < 0) return false;
  // A mirrored outline is walked round the other way.
  return [1, n - 1].some((step) => a.outline.every((p, i) => isSame(p, b.outline[(start + i * step) % n]!)));
}
