/** A piece cut in two by a straight line between two of its edges. */

import { isInPolygon } from "../geometry/point-in-polygon.ts";
import { type Edge, line, type Point, pointAt } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { orientation } from "./allowance.ts";
import { edgePart, placeAlong } from "./edges.ts";
import { edgeLength, flattenPiece, type Piece, pieceBounds, pieceOf, requireSimple } from "./piece.ts";

/** A place on the outline: which edge, counted from 1, and how far along it. */
export interface OutlinePlace {
  readonly edge: number;
  readonly at: number;
}

/**
 * The part of a piece that follows the outline from `start` to `end` and comes back along the cut,
 * its last edge, named "cut". The other part is the one from `end` to `start`. Marks go with the part that holds
 * their middle. Refuses a cut that leaves the piece.
 */
export function partBetween(piece: Piece, start: OutlinePlace, end: OutlinePlace): Piece {
  const [part, rest] = [partAlong(piece, start, end), partAlong(piece, end, start)];
  for (const one of [part, rest]) {
    if (!isSimple(one) || orientation(one) !== orientation(piece))
      throw new Refusal(phrase`the cut must run inside the piece from edge to edge, but it leaves the piece`);
  }
  const { left, right, low, high } = pieceBounds(part);
  const ring = flattenPiece(part, Math.max(right - left, high - low) / 2000);
  return { ...part, marks: piece.marks.filter((mark) => isInPolygon(middle(mark.line), ring)) };
}

/** The outline from one place to another and straight back. */
function partAlong(piece: Piece, start: OutlinePlace, end: OutlinePlace): Piece {
  const { edges, names } = outlineBetween(piece, start, end);
  if (edges.length === 0)
    throw new Refusal(phrase`the cut must run between two places of the outline, not from a place to itself`);
  const [from, to] = [edges[0]![0]!.from, edges.at(-1)!.at(-1)!.to];
  return pieceOf([...edges, [line(to, from)]], [...names, "cut"]);
}

function isSimple(piece: Piece): boolean {
  try {
    requireSimple(piece);
    return true;
  } catch {
    return false;
  }
}

function middle(mark: Edge): Point {
  const { index, share } = placeAlong(mark, edgeLength(mark) / 2);
  return pointAt(mark[index]!, share);
}

/** The edges from one place of the outline on to another, in drawing order; parts of edges where it begins and ends. */
function outlineBetween(piece: Piece, start: OutlinePlace, end: OutlinePlace) {
  const { edges } = piece;
  const whole = (number: number) => edgeLength(edges[number - 1]!);
  const slack = 1e-9 * edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  const parts = { edges: [] as Edge[], names: [] as string[] };
  const add = (number: number, from: number, to: number) => {
    if (to - from <= slack) return;
    parts.edges.push(edgePart(edges[number - 1]!, from, to));
    parts.names.push(piece.names[number - 1]!);
  };
  if (start.edge === end.edge && start.at < end.at) {
    add(start.edge, start.at, end.at);
    return parts;
  }
  add(start.edge, start.at, whole(start.edge));
  for (let i = 1; i <= edges.length; i += 1) {
    const number = ((start.edge - 1 + i) % edges.length) + 1;
    if (number === end.edge) break;
    add(number, 0, whole(number));
  }
  add(end.edge, 0, end.at);
  return parts;
}
