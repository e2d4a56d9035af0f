/**
 * From a cut list to the question a lay planner is asked.
 *
 * Pieces have y along the grain, a lay has x along the selvedge. An outline is turned there by a
 * quarter turn, (x, y) → (y, −x), and never mirrored: a mirrored left front is a right front.
 */

import { boundingBox, type Point } from "../geometry/strokes.ts";
import type { LayCloth, LayPiece, LayQuestion, LayTape, Planner } from "../lay.ts";
import { remember, rememberWithObject, rememberWithObjects } from "../memo.ts";
import { written } from "../phrase.ts";
import { flattenPiece, mirrorPiece } from "../pieces/piece.ts";
import { type CutRow, type Grain, unfoldedPiece } from "./cut-list.ts";
import { innerFolds } from "./inner-folds.ts";

/** What the cloth asks of every piece on it. */
export interface LayConditions {
  /** A nap or a pattern that has an up and a down: nothing may be turned round. */
  readonly oneWay: boolean;
  /** Least distance between cut lines. */
  readonly gap: number;
  /** Pattern repeat along the selvedge, 0 for plain cloth: each outline's first point keeps its place in it. */
  readonly repeat: number;
}

/** Turns in degrees from the straight grain. Cloth with an up and a down is turned one way only. */
export const GRAIN_TURNS: Record<
  Grain,
  { readonly oneWay: readonly number[]; readonly twoWay: readonly number[] }
> = {
  straight: { oneWay: [0], twoWay: [0, 180] },
  cross: { oneWay: [0, 90], twoWay: [0, 90, 180, 270] },
  bias: { oneWay: [45], twoWay: [45, 135, 225, 315] },
};

/** A piece as it lies on the cloth, apart from how many are cut and how they may be turned. */
type LaidOutline = Pick<LayPiece, "outline" | "fold" | "innerFolds"> & {
  /** The first point of the draft's outline. */
  readonly first: Point;
};

/** Kept because every change of a cut list asks for the lays of all its cloths, and few of its pieces have changed. */
const laidOutlines = rememberWithObjects<LaidOutline>();

function laidOutline(row: CutRow, isMirrored: boolean, tolerance: number): LaidOutline {
  return laidOutlines([row.piece], `${row.folded} ${isMirrored} ${tolerance}`, () => {
    const whole = unfoldedPiece(row);
    const piece = isMirrored ? mirrorPiece(whole) : whole;
    const [x, y] = row.piece.edges[0]![0]!.from;
    const points = flattenPiece(piece, tolerance);
    const there = toSelvedge(points);
    const folds = innerFolds(piece).map(([a, b]) => [there(a), there(b)] as const);
    return {
      outline: points.map(there),
      first: there([isMirrored ? -x : x, y]),
      ...(row.folded ? { fold: middleLine(points).map(there) as [Point, Point] } : {}),
      ...(folds.length > 0 ? { innerFolds: folds } : {}),
    };
  });
}

/** Whether half of a row's pieces are laid mirrored, as a piece of their own. */
const isLaidTwice = ({ paired, folded }: CutRow): boolean => paired && !folded;

/** The row of each piece of a question. */
export const rowsLaid = (rows: readonly CutRow[]): CutRow[] =>
  rows.flatMap((row) => (isLaidTwice(row) ? [row, row] : [row]));

/** The question for a planner. Curves become chords that stray no more than `tolerance`; sentences write lengths by `tape`. */
export function layQuestion(
  rows: readonly CutRow[],
  cloths: readonly LayCloth[],
  laying: LayConditions,
  tolerance: number,
  tape?: LayTape,
): LayQuestion {
  const { oneWay, gap, repeat } = laying;
  const pieces = rows.flatMap((row): LayPiece[] => {
    const turns = GRAIN_TURNS[row.grain][oneWay || row.oneWay ? "oneWay" : "twoWay"];
    const kind = (name: string, isMirrored: boolean, quantity: number): LayPiece => {
      const { outline, first, ...folds } = laidOutline(row, isMirrored, tolerance);
      return { name, outline, quantity, turns, ...(repeat > 0 ? { match: first } : {}), ...folds };
    };
    // What is opened out on a fold is its own mirror image.
    if (!isLaidTwice(row)) return [kind(row.name, false, row.quantity)];
    return [
      kind(row.name, false, row.quantity / 2),
      kind(written`${row.name}, mirrored`, true, row.quantity / 2),
    ];
  });
  return { pieces, cloths, gap, repeat, ...(tape && { tape }) };
}

/** Carries points from the draft to the cloth, where the outline's box begins at (0, 0). */
export function toSelvedge(outline: readonly Point[]): (point: Point) => Point {
  const { right, low } = boundingBox(outline);
  return ([x, y]) => [y - low, right - x];
}

/** Down the middle of an outline that was opened out, from edge to edge. */
function middleLine(outline: readonly Point[]): [Point, Point] {
  const { left, right } = boundingBox(outline);
  const x = (left + right) / 2;
  const ys = outline.flatMap(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return ax <= x === bx <= x ? [] : [ay + ((x - ax) / (bx - ax)) * (by - ay)];
  });
  return [
    [x, Math.min(...ys)],
    [x, Math.max(...ys)],
  ];
}

const figure = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
const ring = (points: readonly Point[]): number[][] => points.map((point) => point.map(figure));

/** Kept because each lay asks for the text of its question several times, and a text has many thousand signs. */
const texts = rememberWithObject<LayQuestion, string>();

/**
 * All of a question that bears on its lay, always in the same words: names are left out, figures
 * stand to a millionth of the unit. Pins are in it, for a pinned question has other lays.
 */
export const questionText = (question: LayQuestion): string => texts(question, () => textOf(question));

function textOf({ pieces, cloths, gap, repeat, pinned, sharing }: LayQuestion): string {
  return JSON.stringify([
    pieces.map(({ outline, quantity, turns, match }) => [
      ring(outline),
      quantity,
      turns.map(figure),
      match ? match.map(figure) : null,
    ]),
    cloths.map(({ width, length, outline, flaws }) => [
      figure(width),
      length === null ? null : figure(length),
      outline ? ring(outline) : null,
      (flaws ?? []).map(ring),
    ]),
    figure(gap),
    figure(repeat),
    (pinned ?? []).map(({ piece, copy, cloth, turn, x, y }) => [
      piece,
      copy,
      cloth,
      figure(turn),
      figure(x),
      figure(y),
    ]),
    ...(sharing ? [[figure(sharing.bought.width), sharing.left]] : []),
  ]);
}

/**
 * The question of a text that `questionText` wrote; its pieces and cloths have no names. Null for a
 * text that is not a question. Whether the question makes sense is left to the planner.
 */
export function questionFrom(text: string): LayQuestion | null {
  try {
    const [pieces, cloths, gap, repeat] = JSON.parse(text);
    return {
      pieces: pieces.map(([outline, quantity, turns, match]: unknown[]) => ({
        ...{ name: "", outline, quantity, turns },
        ...(match !== null && { match }),
      })),
      cloths: cloths.map(([width, length, outline, flaws]: [unknown, unknown, unknown, unknown[]]) => ({
        ...{ name: "", width, length },
        ...(outline !== null && { outline }),
        ...(flaws.length > 0 && { flaws }),
      })),
      gap,
      repeat,
    };
  } catch {
    return null;
  }
}

/** A short name for a question under which its found lay is kept: 16 hexadecimal digits. */
export const questionHash = (question: LayQuestion): string => fnv1a(questionText(question));

/**
 * The 64-bit FNV-1a hash of an ASCII text (Fowler, Noll, Vo; IETF draft-eastlake-fnv), in quarters of 16 bits, the
 * lowest first: a quarter times the prime is a whole number of 32 bits, which is the fastest that there is.
 */
export function fnv1a(text: string): string {
  let a = 0x2325;
  let b = 0x8422;
  let c = 0x9ce4;
  let d = 0xcbf2;
  for (let i = 0; i < text.length; i += 1) {
    a ^= text.charCodeAt(i);
    // Times the prime 2⁴⁰ + 0x1b3: the 2⁴⁰ moves the lower two quarters up by two quarters and 8 bits.
    const first = a * 0x1b3;
    const second = b * 0x1b3 + (first >>> 16);
    const third = c * 0x1b3 + (a << 8) + (second >>> 16);
    d = (d * 0x1b3 + (b << 8) + (third >>> 16)) & 0xffff;
    a = first & 0xffff;
    b = second & 0xffff;
    c = third & 0xffff;
  }
  return [d, c, b, a].map((quarter) => quarter.toString(16).padStart(4, "0")).join("");
}

/** A planner that lays each question once. Kept for one call because `compute` asks for a lay's figures, then `draw` for its picture. */
export function planOnce(plan: Planner): Planner {
  const lays = remember<string, ReturnType<Planner>>(100);
  return (question) => lays(questionText(question), () => plan(question));
}
