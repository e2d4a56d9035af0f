/** From places to an answer: what length each cloth is used for, how densely, and who is missing. */

import { leastLength } from "../../functions/cutting/least-length.ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { boundingBox, signedArea, turned } from "./outline.ts";

/** What is asked of an outline each time lays are compared: its area, and how far right it reaches in each turn. */
interface Measures {
  readonly area: number;
  readonly rights: Map<number, number>;
}

const measured = new WeakMap<readonly Point[], Measures>();

function measures(outline: readonly Point[]): Measures {
  let own = measured.get(outline);
  if (!own) {
    own = { area: Math.abs(signedArea(outline)), rights: new Map() };
    measured.set(outline, own);
  }
  return own;
}

/** The area of an outline, in square units; the same outline is measured once. */
export const areaOf = (outline: readonly Point[]): number => measures(outline).area;

function rightOf(outline: readonly Point[], turn: number): number {
  const { rights } = measures(outline);
  let right = rights.get(turn);
  if (right === undefined) {
    right = boundingBox(turned(outline, turn)).right;
    rights.set(turn, right);
  }
  return right;
}

export function answerFrom(question: LayQuestion, placements: readonly Placement[]): Lay {
  const lengths = question.cloths.map(() => 0);
  const left = question.pieces.map((piece) => piece.quantity);
  let area = 0;
  for (const { piece, cloth, turn, x } of placements) {
    const { outline } = question.pieces[piece]!;
    lengths[cloth] = Math.max(lengths[cloth]!, x + rightOf(outline, turn));
    left[piece]!--;
    area += measures(outline).area;
  }
  const cloth = lengths.reduce((sum, length, i) => sum + length * question.cloths[i]!.width, 0);
  return {
    placements,
    lengths,
    density: cloth > 0 ? area / cloth : 0,
    missing: left.flatMap((count, piece) => (count > 0 ? [[piece, count] as const] : [])),
  };
}

/**
 * Whether lay `a` is better than `b`: first less missing (by area), then less cloth (by area).
 * Differences below a millionth do not count.
 */
export function isBetter(question: LayQuestion, a: Lay, b: Lay): boolean {
  const missing = missingArea(question, a) - missingArea(question, b);
  const worth = question.pieces.reduce((sum, p) => sum + p.quantity * measures(p.outline).area, 0);
  if (Math.abs(missing) > 1e-9 * worth) return missing < 0;
  return clothUsed(question, a) < clothUsed(question, b) - 1e-7 * worth;
}

/** The area of the copies that found no place. */
export function missingArea(question: LayQuestion, lay: Lay): number {
  return lay.missing.reduce((sum, [piece, n]) => sum + n * measures(question.pieces[piece]!.outline).area, 0);
}

/** Width × length used, over all cloths; while some is still to be bought, cloth in hand counts next to nothing. */
function clothUsed(question: LayQuestion, lay: Lay): number {
  const buying = question.cloths.some(({ length }) => length === null);
  return lay.lengths.reduce((sum, length, i) => {
    const cloth = question.cloths[i]!;
    return sum + length * cloth.width * (buying && cloth.length !== null ? 1e-3 : 1);
  }, 0);
}

/** Whether it is proved that no lay of the question on its one cloth can be shorter than this one. */
export const isProved = (question: LayQuestion, lay: Lay): boolean =>
  question.cloths.length === 1 &&
  lay.missing.length === 0 &&
  lay.lengths[0]! <= leastLength(question) * (1 + PROVED);

/** A lay may be longer than the proof by this share: the thickness of a thread on a whole bale. */
const PROVED = 1e-6;
