/**
 * A lay of a larger question read as a lay of a smaller one: surplus copies are left out, and a
 * smaller outline is put inside the place of a larger one. What comes of it is a proposal; the
 * independent checker decides whether it is a lay.
 */

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

/** An outline as two lists of figures, and its box. */
interface Flat {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly box: Bounds;
  /** Going on by so many corners each time leads to every corner once. */
  readonly stride: number;
}

/** A question is compared with many others, and the others with many questions. */
const flats = new WeakMap<readonly Point[], Flat>();

function flatOf(outline: readonly Point[]): Flat {
  let flat = flats.get(outline);
  if (!flat) {
    const [x, y] = [new Float64Array(outline.length), new Float64Array(outline.length)];
    outline.forEach((p, i) => {
      x[i] = p[0];
      y[i] = p[1];
    });
    flat = { x, y, box: boundingBox(outline), stride: strideOf(outline.length) };
    flats.set(outline, flat);
  }
  return flat;
}

/** A step of about three eighths of the count that has no factor in common with it. */
function strideOf(count: number): number {
  const factor = (a: number, b: number): number => (b === 0 ? a : factor(b, a % b));
  let stride = Math.max(1, Math.round(0.382 * count));
  while (factor(count, stride) > 1) stride += 1;
  return stride;
}

const boxOf = (outline: readonly Point[]): Bounds => flatOf(outline).box;

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

/** The piece for which no room was found last: a hint, on which no answer depends. */
let mostLikely = 0;

/** Places for all copies of the question, each inside that of another copy of the larger one; null when some find none. */
function inPlacesOf(question: LayQuestion, larger: LayQuestion, lay: Lay): Placement[] | null {
  if (question.pieces.some((piece) => !larger.pieces.some((one) => fitsBox(piece, one)))) return null;
  // What lies in no piece of one question often lies in none of the next: it is looked at first.
  const hasRoom = (piece: LayPiece) => larger.pieces.some((one) => shiftInto(piece, one) !== null);
  const { pieces } = question;
  if (mostLikely < pieces.length && !hasRoom(pieces[mostLikely]!)) return null;
  const without = pieces.findIndex((piece) => !hasRoom(piece));
  if (without >= 0) {
    mostLikely = without;
    return null;
  }
  // The places nearest to the beginning are taken first: what is left over shortens the lay.
  const free = [...placesOf(larger, lay)];
  const placements: Placement[] = [];
  const left = question.pieces.map(({ quantity }) => quantity);
  const fill = (j: number, i: number, isEqual: boolean) => {
    const piece = question.pieces[j]!;
    const other = larger.pieces[i]!;
    if (left[j] === 0 || free[i]!.length === 0 || isSameOutline(piece, other) !== isEqual) return;
    const shift = shiftInto(piece, other);
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
  if (isSameOutline(piece, larger)) return NOWHERE;
  const [own, other] = [flatOf(piece.outline), flatOf(larger.outline)];
  const [a, b] = [own.box, other.box];
  const slack = 1e-9 * Math.max(b.right - b.left, b.high - b.low);
  const [wide, tall] = [b.right - b.left - (a.right - a.left), b.high - b.low - (a.high - a.low)];
  if (wide < -slack || tall < -slack) return null;
  // On a repeat the match points stay where they are.
  if (piece.match && larger.match) {
    const shift: Point = [larger.match[0] - piece.match[0], larger.match[1] - piece.match[1]];
    return isInside(own, shift, other, slack) ? shift : null;
  }
  // In a box of the same size there is one place.
  for (const u of wide > 0 ? PARTS : ONE_PART)
    for (const v of tall > 0 ? PARTS : ONE_PART) {
      const shift: Point = [b.left - a.left + u * wide, b.low - a.low + v * tall];
      if (isInside(own, shift, other, slack)) return shift;
    }
  return null;
}

/** Where in the larger outline's box the smaller one's is put: at either end and in the middle. */
const PARTS = [0.5, 0, 1];
const ONE_PART = [0.5];

/** Whether no corner of the moved outline lies outside the larger one, and no corner of that one inside it. */
function isInside(own: Flat, [dx, dy]: Point, larger: Flat, slack: number): boolean {
  const { left, right, low, high } = larger.box;
  const { x, y, box } = own;
  if (box.left + dx < left - slack || box.right + dx > right + slack) return false;
  if (box.low + dy < low - slack || box.high + dy > high + slack) return false;
  // Far from one another in turn: what sticks out does so along a stretch, and is soon met with.
  for (let n = 0, i = 0; n < x.length; n += 1, i = (i + own.stride) % x.length) {
    const px = x[i]! + dx;
    const py = y[i]! + dy;
    if (!isWithin(px, py, larger) && !isOn(px, py, larger, slack)) return false;
  }
  for (let n = 0, i = 0; n < larger.x.length; n += 1, i = (i + larger.stride) % larger.x.length) {
    const px = larger.x[i]! - dx;
    const py = larger.y[i]! - dy;
    if (isWithin(px, py, own) && !isOn(px, py, own, slack)) return false;
  }
  return true;
}

/** As `isInPolygon`. */
function isWithin(px: number, py: number, { x, y }: Flat): boolean {
  let within = false;
  for (let i = 0, j = x.length - 1; i < x.length; j = i++) {
    const ay = y[j]!;
    const by = y[i]!;
    if (ay > py === by > py) continue;
    const ax = x[j]!;
    if (px < ax + ((py - ay) / (by - ay)) * (x[i]! - ax)) within = !within;
  }
  return within;
}

function isOn(px: number, py: number, { x, y }: Flat, slack: number): boolean {
  for (let i = 0, j = x.length - 1; i < x.length; j = i++) {
    const ux = x[i]! - x[j]!;
    const uy = y[i]! - y[j]!;
    const dx = px - x[j]!;
    const dy = py - y[j]!;
    const long = ux * ux + uy * uy;
    const t = long > 0 ? Math.min(1, Math.max(0, (dx * ux + dy * uy) / long)) : 0;
    if ((dx - t * ux) ** 2 + (dy - t * uy) ** 2 <= slack * slack) return true;
  }
  return false;
}
