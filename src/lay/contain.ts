/**
 * A lay of a larger question read as a lay of a smaller one: surplus copies are left out, and a
 * smaller outline is put inside the place of a larger one. What comes of it is a proposal; the
 * independent checker decides whether it is a lay.
 */

import { isInPolygon } from "../../functions/geometry/point-in-polygon.ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import type { Lay, LayPiece, LayQuestion, Placement } from "../../functions/lay.ts";
import { answerFrom } from "./answer.ts";
import { checkLay } from "./check.ts";
import { type Bounds, boundingBox, cosSin, turned, wholeTurn } from "./outline.ts";

/** Overlaps up to this share of the widest cloth count as touching, as in a search. */
const TOUCHING = 2e-6;

/** A lay of `question` made from one of `larger`, nothing missing; null when none can be made. */
export function containedLay(question: LayQuestion, larger: LayQuestion, lay: Lay): Lay | null {
  if (!mayContain(larger, question)) return null;
  const placements = inPlacesOf(question, larger, lay);
  if (!placements) return null;
  const answer = { ...answerFrom(question, placements), ...(lay.origin && { origin: unproved(lay.origin) }) };
  return checkLay(question, answer, TOUCHING).length === 0 ? answer : null;
}

/** That no lay can be shorter is known of the larger question only. */
const unproved = (origin: NonNullable<Lay["origin"]>): NonNullable<Lay["origin"]> =>
  origin.by === "search" ? { by: origin.by, seconds: origin.seconds } : origin;

/** What can be said at a glance: cloths no wider, gap and repeat no less strict. */
function mayContain(larger: LayQuestion, question: LayQuestion): boolean {
  if (larger.cloths.length !== question.cloths.length || (question.pinned ?? []).length > 0) return false;
  if (larger.gap < question.gap || (question.repeat > 0 && larger.repeat !== question.repeat)) return false;
  return larger.cloths.every(({ width }, i) => width <= question.cloths[i]!.width * (1 + 1e-12));
}

/** The boxes of outlines: a question is compared with many others, and the others with many questions. */
const boxes = new WeakMap<readonly Point[], Bounds>();

function boxOf(outline: readonly Point[]): Bounds {
  let box = boxes.get(outline);
  if (!box) {
    box = boundingBox(outline);
    boxes.set(outline, box);
  }
  return box;
}

/** Whether the box of a piece finds room in that of a larger one, both unturned: the least that has to hold. */
function fitsBox(piece: LayPiece, larger: LayPiece): boolean {
  const [a, b] = [boxOf(piece.outline), boxOf(larger.outline)];
  const slack = Math.max(2 * SAME, 1e-9 * Math.max(b.right - b.left, b.high - b.low));
  return a.right - a.left <= b.right - b.left + slack && a.high - a.low <= b.high - b.low + slack;
}

/** The places of each piece of a lay, those nearest to the beginning first, by lay. */
const sortedPlaces = new WeakMap<Lay, readonly (readonly Placement[])[]>();

function placesOf(question: LayQuestion, lay: Lay): readonly (readonly Placement[])[] {
  let places = sortedPlaces.get(lay);
  if (!places) {
    places = question.pieces.map((one, i) =>
      lay.placements
        .filter(({ piece }) => piece === i)
        .map((place) => ({ place, end: endOf(one, place) }))
        .sort((a, b) => a.end - b.end)
        .map(({ place }) => place),
    );
    sortedPlaces.set(lay, places);
  }
  return places;
}

/** Places for all copies of the question, each inside that of another copy of the larger one; null when some find none. */
function inPlacesOf(question: LayQuestion, larger: LayQuestion, lay: Lay): Placement[] | null {
  if (question.pieces.some((piece) => !larger.pieces.some((one) => fitsBox(piece, one)))) return null;
  // The places nearest to the beginning are taken first: what is left over shortens the lay.
  const free = [...placesOf(larger, lay)];
  const placements: Placement[] = [];
  const left = question.pieces.map(({ quantity }) => quantity);
  const fill = (j: number, i: number, isEqual: boolean) => {
    const piece = question.pieces[j]!;
    const other = larger.pieces[i]!;
    if (left[j] === 0 || free[i]!.length === 0 || isSameOutline(piece, other) !== isEqual) return;
    const shift = isEqual ? NOWHERE : shiftInto(piece, other);
    if (!shift) return;
    free[i] = free[i]!.filter((place) => {
      const turn = piece.turns.find((one) => wholeTurn(one) === wholeTurn(place.turn));
      if (left[j] === 0 || turn === undefined) return true;
      const [c, s] = cosSin(turn);
      left[j]!--;
      placements.push({
        piece: j,
        copy: left[j]!,
        cloth: place.cloth,
        turn,
        x: place.x + c * shift[0] - s * shift[1],
        y: place.y + s * shift[0] + c * shift[1],
      });
      return false;
    });
  };
  // Equal outlines first, then the larger outline with the same place in the list, then any.
  for (const j of question.pieces.keys()) for (const i of larger.pieces.keys()) fill(j, i, true);
  for (const j of question.pieces.keys()) if (j < larger.pieces.length) fill(j, j, false);
  for (const j of question.pieces.keys()) for (const i of larger.pieces.keys()) fill(j, i, false);
  return left.every((count) => count === 0) ? placements : null;
}

/** Two outlines are the same when they differ by no more than a kept question is rounded to, in the unit of the question. */
const SAME = 1e-6;

const NOWHERE: Point = [0, 0];

const endOf = ({ outline }: LayPiece, { turn, x }: Placement): number =>
  boundingBox(turned(outline, turn)).right + x;

function isSameOutline(a: LayPiece, b: LayPiece): boolean {
  if (a.outline.length !== b.outline.length) return false;
  const isSame = (p: Point, q: Point) => Math.abs(p[0] - q[0]) < SAME && Math.abs(p[1] - q[1]) < SAME;
  if ((a.match === undefined) !== (b.match === undefined)) return false;
  if (a.match && b.match && !isSame(a.match, b.match)) return false;
  return a.outline.every((p, i) => isSame(p, b.outline[i]!));
}

/** By how much a piece is moved to lie inside a larger one, both unturned; null when no such move was found. */
function shiftInto(piece: LayPiece, larger: LayPiece): Point | null {
  const [a, b] = [boxOf(piece.outline), boxOf(larger.outline)];
  const slack = 1e-9 * Math.max(b.right - b.left, b.high - b.low);
  const [wide, tall] = [b.right - b.left - (a.right - a.left), b.high - b.low - (a.high - a.low)];
  if (wide < -slack || tall < -slack) return null;
  // On a repeat the match points stay where they are.
  const shifts: Point[] =
    piece.match && larger.match
      ? [[larger.match[0] - piece.match[0], larger.match[1] - piece.match[1]]]
      : PARTS.flatMap((u) => PARTS.map((v): Point => [b.left - a.left + u * wide, b.low - a.low + v * tall]));
  return shifts.find((shift) => isInside(piece.outline, shift, larger.outline, b, slack)) ?? null;
}

/** Where in the larger outline's box the smaller one's is put: at either end and in the middle. */
const PARTS = [0.5, 0, 1];

/** Whether no corner of the moved outline lies outside the larger one, and no corner of that one inside it. */
function isInside(
  outline: readonly Point[],
  [dx, dy]: Point,
  larger: readonly Point[],
  { left, right, low, high }: Bounds,
  slack: number,
): boolean {
  const moved = outline.map(([x, y]): Point => [x + dx, y + dy]);
  return (
    moved.every(
      (p) =>
        p[0] >= left - slack &&
        p[0] <= right + slack &&
        p[1] >= low - slack &&
        p[1] <= high + slack &&
        (isInPolygon(p, larger) || isOn(p, larger, slack)),
    ) && larger.every((p) => !isInPolygon(p, moved) || isOn(p, moved, slack))
  );
}

function isOn([x, y]: Point, ring: readonly Point[], slack: number): boolean {
  return ring.some(([ax, ay], i) => {
    const [bx, by] = ring[i + 1 === ring.length ? 0 : i + 1]!;
    const [ux, uy] = [bx - ax, by - ay];
    const long = ux * ux + uy * uy;
    const t = long > 0 ? Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / long)) : 0;
    return Math.hypot(x - ax - t * ux, y - ay - t * uy) <= slack;
  });
}
