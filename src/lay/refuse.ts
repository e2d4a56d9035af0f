/** Says in one sentence why a question can not be laid, before any planner looks at it. */

import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayCloth, LayPiece, LayQuestion } from "../../functions/lay.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { plain, type SayLength, sayLengths } from "./lengths.ts";
import { isEqual } from "./memory.ts";
import { boundingBox, crossing, signedArea, turned, wholeTurn, withoutRepeats } from "./outline.ts";

/** More copies than this are refused: a lay of so many pieces is cut from several lays, not one. */
export const MOST_COPIES = 5000;

/** Limits that keep every part of the work within a second or so: kinds of pieces, points, and points in all turns together. */
const MOST_KINDS = 500;
const MOST_POINTS = 2000;
const MOST_TURNS = 360;
const MOST_STANCES = 2000;
const MOST_TURNED_POINTS = 200_000;

/** A repeat finer than this share of the cloth's width is no pattern that could be matched. */
const FINEST_REPEAT = 1e-3;

/** A gap wider than this many cloths separates nothing that could be laid side by side. */
const WIDEST_GAP = 10;

/** No figure of an outline is larger, as in a cell's path data. */
const FARTHEST = 1e9;

/** The sentence that refuses the question, or null when it can be laid. */
export function refusalOf(question: LayQuestion): string | null {
  const { pieces, cloths, gap, repeat } = question;
  const say = sayLengths(question);
  if (pieces.length === 0) return phrase`there is no piece to lay: give at least one`;
  if (cloths.length === 0) return phrase`there is no cloth to lay on: give at least one`;
  if (!(repeat >= 0 && repeat <= FARTHEST))
    return phrase`the repeat must be from 0 to ${say(FARTHEST)}, not ${say(repeat, 0, FARTHEST)}`;
  for (const cloth of cloths) {
    const refusal = refusalOfCloth(cloth, say);
    if (refusal) return refusal;
  }
  const widest = Math.max(...cloths.map(({ width }) => width));
  if (!(gap >= 0 && gap <= WIDEST_GAP * widest))
    return phrase`the gap must be from 0 to ${say(WIDEST_GAP * widest)}, not ${say(gap, 0, WIDEST_GAP * widest)}`;
  const finest = FINEST_REPEAT * widest;
  if (repeat > 0 && repeat < finest)
    return phrase`the repeat must be 0 for plain cloth, or at least ${say(finest, 0)} on cloth of this width, not ${say(repeat, 0, finest)}`;
  const size = tooLarge(pieces);
  if (size) return size;
  let copies = 0;
  for (const piece of pieces) {
    const refusal = refusalOfPiece(piece, say);
    if (refusal) return refusal;
    copies += piece.quantity;
  }
  if (copies > MOST_COPIES)
    return phrase`${copies} pieces are more than one lay can hold: give at most ${MOST_COPIES}`;
  // On cloth in hand a piece that is too wide is one that finds no place; it keeps none of the others waiting.
  if (cloths.some(({ length }) => length === null)) {
    for (const piece of pieces) {
      const refusal = tooWide(piece, cloths, say);
      if (refusal) return refusal;
    }
  }
  return refusalOfPins(question);
}

/** More than can be laid in any useful time. */
function tooLarge(pieces: readonly LayPiece[]): string | null {
  if (pieces.length > MOST_KINDS)
    return phrase`${pieces.length} kinds of pieces are more than one lay can hold: give at most ${MOST_KINDS}, equal pieces as one kind with a quantity`;
  let [stances, turned] = [0, 0];
  for (const { name, outline, turns } of pieces) {
    if (outline.length > MOST_POINTS)
      return phrase`the outline of ${name} has ${outline.length} points: give at most ${MOST_POINTS}`;
    if (turns.length > MOST_TURNS)
      return phrase`${name} has ${turns.length} turns that its grain allows: give at most ${MOST_TURNS}`;
    stances += turns.length;
    turned += turns.length * outline.length;
  }
  if (stances > MOST_STANCES)
    return phrase`the pieces have ${stances} turns together: give at most ${MOST_STANCES}, fewer turns for each piece`;
  if (turned > MOST_TURNED_POINTS)
    return phrase`the outlines have ${turned} points in all their turns together: give at most ${MOST_TURNED_POINTS}, fewer points or fewer turns`;
  return null;
}

function refusalOfCloth(cloth: LayCloth, say: SayLength): string | null {
  if (!(cloth.width > 0))
    return phrase`the width of ${cloth.name} must be more than 0, not ${say(cloth.width)}`;
  if (!(cloth.width <= FARTHEST))
    return phrase`the width of ${cloth.name} must be at most ${say(FARTHEST)}, not ${say(cloth.width, FARTHEST)}`;
  if (cloth.length !== null && !(Number.isFinite(cloth.length) && cloth.length > 0))
    return phrase`the length of ${cloth.name} must be more than 0, not ${say(cloth.length)}`;
  const { name } = cloth;
  const outline = cloth.outline && faultOfRing(cloth.outline);
  if (outline === "point") return phrase`the outline of ${name} has a point that is not a number`;
  if (outline === "flat") return phrase`the outline of ${name} has no area`;
  if (outline)
    return phrase`the outline of ${name} crosses itself near ${say(outline[0])}, ${say(outline[1])}`;
  for (const ring of cloth.flaws ?? []) {
    const flaw = faultOfRing(ring);
    if (flaw === "point") return phrase`a flaw in ${name} has a point that is not a number`;
    if (flaw === "flat") return phrase`a flaw in ${name} has no area`;
    if (flaw) return phrase`a flaw in ${name} crosses itself near ${say(flaw[0])}, ${say(flaw[1])}`;
  }
  return null;
}

/** What is wrong with an outline on the cloth, or where it crosses itself; null when it is sound. */
function faultOfRing(ring: readonly Point[]): "point" | "flat" | Point | null {
  if (ring.some(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y))) return "point";
  const distinct = withoutRepeats(ring);
  return distinct.length < 3 || signedArea(ring) === 0 ? "flat" : crossing(distinct);
}

function refusalOfPiece(piece: LayPiece, say: SayLength): string | null {
  const { name, outline, quantity, turns } = piece;
  if (!Number.isInteger(quantity) || quantity < 1)
    return phrase`the quantity of ${name} must be a whole number from 1, not ${plain(quantity)}`;
  if (turns.length === 0 || turns.some((turn) => !Number.isFinite(turn)))
    return phrase`${name} needs at least one turn in degrees that its grain allows`;
  return outlineFaults(outline, () => ({ of: faultOf(outline) })).of?.(name, say) ?? null;
}

type FaultOfPiece = (name: string, say: SayLength) => string;

/** Kept with the outline: most pieces of a job stay the same from question to question. `of` gives the sentence about a piece of that name. */
const outlineFaults = rememberWithObject<readonly Point[], { readonly of: FaultOfPiece | null }>();

/** What makes an outline no piece, as a sentence about a piece of a given name; null when it can be laid. */
function faultOf(outline: readonly Point[]): FaultOfPiece | null {
  if (outline.some(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y)))
    return (name) => phrase`the outline of ${name} has a point that is not a number`;
  if (outline.some(([x, y]) => Math.max(Math.abs(x), Math.abs(y)) > FARTHEST))
    return (name) =>
      phrase`the outline of ${name} has a point farther out than ${FARTHEST}: give it in inches or centimetres`;
  const distinct = withoutRepeats(outline);
  if (distinct.length < 3)
    return (name) => phrase`the outline of ${name} needs at least 3 points, it has ${distinct.length}`;
  const hasNoArea = (name: string) => phrase`the outline of ${name} has no area`;
  if (isStraight(distinct)) return hasNoArea;
  const at = crossingOf(distinct);
  if (at)
    return (name, say) =>
      phrase`the outline of ${name} crosses itself near ${say(at[0])}, ${say(at[1])}: draw it without the crossing`;
  const { left, right, low, high } = boundingBox(outline);
  const isFlat = Math.abs(signedArea(distinct)) <= 1e-12 * Math.max(right - left, high - low) ** 2;
  return isFlat ? hasNoArea : null;
}

/** The outlines that were looked through last: an outline that is drawn anew is often equal to one before. */
const lookedThrough = new Map<number, { readonly outline: readonly Point[]; readonly at: Point | null }>();
const MOST_OUTLINES = 300;

/** As `crossing`, remembered. Outlines are found by a sum of their figures, each with a weight of its own. */
function crossingOf(outline: readonly Point[]): Point | null {
  const sum = outline.reduce((all, [x, y], i) => all + x * (1 + i / 64) + y * (1 + i / 96), outline.length);
  const known = lookedThrough.get(sum);
  if (known && isEqual(known.outline, outline)) return known.at;
  const at = crossing(outline);
  lookedThrough.delete(sum);
  if (lookedThrough.size >= MOST_OUTLINES) lookedThrough.delete(lookedThrough.keys().next().value as number);
  lookedThrough.set(sum, { outline, at });
  return at;
}

/** All points lie on one line: such an outline goes there and back, which is no crossing to mend. */
function isStraight(points: readonly Point[]): boolean {
  const [first] = points;
  const far = ([x, y]: Point) => Math.hypot(x - first![0], y - first![1]);
  const end = points.reduce((a, b) => (far(b) > far(a) ? b : a));
  const [ux, uy] = [end[0] - first![0], end[1] - first![1]];
  return points.every(
    ([x, y]) => Math.abs(ux * (y - first![1]) - uy * (x - first![0])) <= 1e-12 * far(end) ** 2,
  );
}

/** How wide each outline is across the cloth, by its turn in degrees. */
const widths = rememberWithObject<readonly Point[], Map<number, number>>();

/** No turn brings the piece inside the width of any cloth. */
function tooWide(piece: LayPiece, cloths: readonly LayCloth[], say: SayLength): string | null {
  let least = Infinity;
  const known = widths(piece.outline, () => new Map());
  for (const turn of piece.turns) {
    let width = known.get(turn);
    if (width === undefined) {
      const { low, high } = boundingBox(turned(piece.outline, turn));
      width = high - low;
      known.set(turn, width);
    }
    least = Math.min(least, width);
  }
  const widest = cloths.reduce((a, b) => (b.width > a.width ? b : a));
  if (least <= widest.width * (1 + 1e-9)) return null;
  const [over, needs, has] = [
    say(least - widest.width, 0),
    say(least, widest.width),
    say(widest.width, least),
  ];
  return cloths.length > 1
    ? phrase`${piece.name} is ${over} wider than ${widest.name}, the widest cloth: it needs ${needs} across, and the cloth is ${has} wide; turn it, cut it in two or take a wider cloth`
    : phrase`${piece.name} is ${over} wider than the cloth: it needs ${needs} across, and the cloth is ${has} wide; turn it, cut it in two or take a wider cloth`;
}

function refusalOfPins(question: LayQuestion): string | null {
  const seen = new Set<string>();
  for (const pin of question.pinned ?? []) {
    const piece = question.pieces[pin.piece];
    if (!piece || !question.cloths[pin.cloth] || !(pin.copy >= 0 && pin.copy < piece.quantity))
      return phrase`a pinned piece is not in the list of pieces any more: unpin it`;
    const copy = `${piece.name} ${pin.copy + 1}`;
    if (seen.has(`${pin.piece} ${pin.copy}`)) return phrase`${copy} is pinned twice: unpin one`;
    seen.add(`${pin.piece} ${pin.copy}`);
    if (!Number.isFinite(pin.x) || !Number.isFinite(pin.y))
      return phrase`${copy} is pinned at no place: unpin it`;
    if (!piece.turns.some((turn) => wholeTurn(turn) === wholeTurn(pin.turn)))
      return phrase`${copy} is pinned with a turn of ${plain(pin.turn)}° that its grain does not allow: turn or unpin it`;
  }
  return null;
}
