/** The pieces of a pattern packed on one large sheet, with every line and every word: what is then cut into sheets of paper. Millimetres. */

import { type Isometry, moveEdge, movePoint } from "../../functions/geometry/isometry.ts";
import { readPath, type Subpath } from "../../functions/geometry/path.ts";
import { boundingBox, type Point, polarPoint } from "../../functions/geometry/strokes.ts";
import type { LayPiece } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import {
  flattenPiece,
  type Piece,
  pieceBounds,
  type Role,
  readPiece,
  writePiece,
} from "../../functions/pieces/piece.ts";
import { convert } from "../../functions/units.ts";
import type { Book } from "../book/shape.ts";
import { boxOf } from "../engine/label-places.ts";
import { type Picture, pictureOf } from "../engine/picture.ts";
import type { FoundPiece } from "../engine/pieces.ts";
import { scalePath } from "../engine/rescale.ts";
import { MARK_SIGNS } from "../engine/roles.ts";
import { LINES } from "../engine/true-scale-sheet.ts";
import { quickLay } from "../lay/plan.ts";
import type { Letters } from "./document.ts";
import type { Paper } from "./paper.ts";
import { wordsOn } from "./pattern-words.ts";
import { type Tile, type Tiling, tilesWith, tilingOf, widthOf } from "./tiles.ts";

/** Lines drawn in one manner. */
export interface Ink {
  readonly subpaths: readonly Subpath[];
  readonly width: number;
  /** Dash and gap by turns; empty for an unbroken line. */
  readonly dashes: readonly number[];
  readonly filled: boolean;
}

/** A line of words whose middle stands at a point. */
export interface Word {
  readonly text: string;
  readonly at: Point;
  readonly size: number;
}

/** A piece where it lies on the sheet. */
export interface PlacedPiece {
  readonly title: string;
  /** The title, and the wearer where the title does not name one: what a sheet with a part of the piece says. */
  readonly text: string;
  readonly piece: Piece;
}

export interface PatternSheet {
  readonly inks: readonly Ink[];
  readonly words: readonly Word[];
  readonly pieces: readonly PlacedPiece[];
  readonly roles: readonly Role[];
  readonly tiling: Tiling;
  readonly tiles: readonly Tile[];
  /** Words that found no room on the sheet, each with what its piece is called. */
  readonly leftOut: readonly { readonly piece: string; readonly text: string }[];
}

/** The height of the strip with test squares, legend and map at the top of large paper. */
export const HEAD = 125;
/** Free paper along the border of the whole, so that no line falls on the border of a sheet's print. */
const INSET = 2;
/** The most sheets side by side that are tried; wider pieces are tried on as many as they need. */
const MOST_COLUMNS = 8;
/** The height of the words along lines, full size and on a model, and the least that can be read. */
const SMALL = { full: 4, model: 2.5, least: 2 };
/** What the words of a pattern in large type are more than plain ones. */
const LARGE = 1.5;

export interface Scaled {
  readonly of: FoundPiece;
  readonly piece: Piece;
  readonly picture: Picture;
  readonly strokes: readonly (readonly Point[])[];
  readonly outline: readonly Point[];
}

/** The pieces on sheets of this paper, on as few as the packing finds. */
export function patternSheet(
  book: Book,
  found: readonly FoundPiece[],
  paper: Paper,
  scale: number,
  { letters, large = false }: { readonly letters: Letters; readonly large?: boolean },
): PatternSheet | { readonly reason: string } {
  const factor = convert(1, book.unit, "mm") * scale;
  const scaled = found.map((of) => scaledPiece(of, book, factor));
  const head = paper.isLarge ? HEAD : 0;
  const packed = packedOn(scaled, paper, head);
  if (!packed)
    return {
      reason: phrase`the pieces do not fit on ${paper.name} side by side: take larger paper or a smaller scale`,
    };
  const { motions, tiling } = packed;
  const strokes = scaled.flatMap(({ strokes }, i) =>
    strokes.map((line) => line.map((at) => movePoint(motions[i]!, at))),
  );
  const small = (scale === 1 ? SMALL.full : SMALL.model) * (large ? LARGE : 1);
  const about = { letters, strokes, tiling, head, factor };
  // Where words find no room, all are tried again with smaller notes, then in small letters.
  const tries = [
    { small, notes: large ? 7 * LARGE : 7 },
    { small, notes: 4 },
    { small: SMALL.least, notes: 4 },
  ];
  let placed = wordsOn(scaled, motions, about, tries[0]!);
  for (const sizes of tries.slice(1))
    if (placed.leftOut.length > 0) placed = wordsOn(scaled, motions, about, sizes);
  const inks = scaled.flatMap(({ picture }, i) => inksOf(picture, factor, motions[i]!));
  const leaders = placed.labels.flatMap(({ leader }) => (leader ? [leader] : []));
  const all = [
    ...strokes,
    ...leaders,
    ...placed.labels.map((label) => {
      const { x, y, halfX, halfY } = boxOf(label);
      return [
        [x - halfX, y],
        [x + halfX, y],
        [x + halfX, y + halfY],
      ] as const;
    }),
    // The head of large paper.
    ...(head > 0
      ? [
          [
            [0, 0],
            [1, 1],
          ] as const,
        ]
      : []),
  ];
  return {
    inks: [...inks, ...leaders.map(leaderInk)],
    words: placed.words,
    pieces: scaled.map(({ of, piece }, i) => ({
      title: of.called,
      text: of.called.includes(of.whose) ? of.called : `${of.called}, ${of.whose}`,
      piece: { ...piece, edges: piece.edges.map((edge) => moveEdge(motions[i]!, edge)) },
    })),
    roles: [...new Set(scaled.flatMap(({ picture }) => picture.roles))],
    tiling,
    tiles: tilesWith(tiling, all),
    leftOut: placed.leftOut,
  };
}

function scaledPiece(of: FoundPiece, book: Book, factor: number): Scaled {
  const piece = readPiece(scalePath(writePiece(of.piece), factor)!);
  const picture = pictureOf(of.shapes, book);
  const strokes = picture.strokes.map((line) => line.map(([x, y]): Point => [x * factor, y * factor]));
  const { left, right, low, high } = boundingBox([
    ...strokes.flat(),
    ...picture.marks.flatMap(({ at }) => at.map(([x, y]): Point => [x * factor, y * factor])),
  ]);
  const bounds = pieceBounds(piece);
  // Lines far outside the outline need their room on the paper, too.
  const isWithin =
    left > bounds.left - 3 && right < bounds.right + 3 && low > bounds.low - 3 && high < bounds.high + 3;
  const outline: Point[] = isWithin
    ? flattenPiece(piece, 0.5)
    : [
        [left, low],
        [right, low],
        [right, high],
        [left, high],
      ];
  return { of, piece, picture, strokes, outline };
}

interface Packed {
  readonly motions: readonly Isometry[];
  readonly tiling: Tiling;
}

/** Every width in whole sheets is tried, and the one with the fewest sheets that have a line is kept. */
function packedOn(scaled: readonly Scaled[], paper: Paper, head: number): Packed | null {
  let best: (Packed & { readonly sheets: number }) | null = null;
  const least = Math.max(
    ...scaled.map(({ outline }) => {
      const box = boundingBox(outline);
      return Math.min(box.right - box.left, box.high - box.low);
    }),
  );
  let first = 1;
  while (widthOf(paper, first) - 2 * INSET < least) first += 1;
  const last = paper.height === null ? first : first + MOST_COLUMNS;
  for (let columns = first; columns <= last || (!best && columns < first + 40); columns += 1) {
    const width = widthOf(paper, columns);
    const lay = quickLay({
      pieces: scaled.map(
        ({ of, outline }): LayPiece => ({
          name: of.title,
          outline: outline.map(([x, y]): Point => [y, -x]),
          quantity: 1,
          turns: [0, 90, 180, 270],
        }),
      ),
      cloths: [{ name: paper.name, width: width - 2 * INSET, length: null }],
      gap: 8,
      repeat: 0,
      passing: true,
    });
    if ("refusal" in lay || lay.missing.length > 0) continue;
    const motions = scaled.map((_, i) => {
      const { turn, x, y } = lay.placements.find(({ piece }) => piece === i)!;
      const [cos, sin] = polarPoint([0, 0], 1, (turn * Math.PI) / 180).map((share) => Math.round(share)) as [
        number,
        number,
      ];
      // From the draft to the lay's axes (y, -x), turned and moved there, and back to the draft's.
      return { a: cos, b: sin, c: -sin, d: cos, e: width - INSET - y, f: head + INSET + x };
    });
    const tiling = tilingOf(paper, width, head + lay.lengths[0]! + 2 * INSET);
    const lines = scaled.flatMap(({ strokes }, i) =>
      strokes.map((line) => line.map((at) => movePoint(motions[i]!, at))),
    );
    const sheets = tilesWith(tiling, lines).length;
    if (!best || sheets < best.sheets) best = { motions, tiling, sheets };
    // Wider paper saves nothing once all pieces lie beside each other.
    if (tiling.rows === 1) break;
  }
  return best;
}

const scaledSubpaths = (d: string, factor: number): Subpath[] => readPath(scalePath(d, factor) ?? d);

const moved = (motion: Isometry, subpaths: readonly Subpath[]): Subpath[] =>
  subpaths.map(({ start, edges, closed }) => ({
    start: movePoint(motion, start),
    edges: edges.map((edge) => moveEdge(motion, edge)),
    closed,
  }));

function inksOf(picture: Picture, factor: number, motion: Isometry): Ink[] {
  const line = (d: string, role: Role): Ink => {
    const [width, ...dashes] = LINES[role];
    return { subpaths: moved(motion, scaledSubpaths(d, factor)), width, dashes, filled: false };
  };
  const here = ([x, y]: Point): Point => movePoint(motion, [x * factor, y * factor]);
  // A sign is drawn in the same size at every scale.
  const sign = (d: string, at: Point, [cos, sin]: Point, filled: boolean): Ink => ({
    subpaths: moved({ a: cos, b: sin, c: -sin, d: cos, e: at[0], f: at[1] }, scaledSubpaths(d, 0.4)),
    width: 0.4,
    dashes: [],
    filled,
  });
  const way: Point = [motion.a, motion.b];
  return [
    ...picture.outlines.map((d) => line(d, "cut")),
    ...picture.lines.map(({ d, role }) => line(d, role)),
    ...picture.lines.flatMap(({ arrows }) =>
      arrows.map(({ at, to: [x, y] }) => {
        const long = Math.hypot(x, y) || 1;
        const [cos, sin] = movePoint({ ...motion, e: 0, f: 0 }, [x / long, y / long]);
        return sign("M 0 0 L -9 -3.5 L -9 3.5 Z", here(at), [cos, sin], true);
      }),
    ),
    ...picture.marks.flatMap(({ at, mark }) =>
      at.map((place) => sign(MARK_SIGNS[mark], here(place), way, false)),
    ),
  ];
}

const leaderInk = ([from, to]: readonly [Point, Point]): Ink => ({
  subpaths: [{ start: from, edges: [[{ kind: "line", from, to }]], closed: false }],
  width: 0.15,
  dashes: [],
  filled: false,
});
