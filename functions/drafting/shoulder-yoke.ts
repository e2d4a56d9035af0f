/**
 * A yoke over the shoulder, without a shoulder seam: the upper parts of front and back, cut off along two
 * straight lines and laid together at the shoulder.
 */

import { intersections } from "../geometry/intersections.ts";
import { distance, type Edge, line, type Point, strokeLength, strokePart } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { orientation } from "../pieces/allowance.ts";
import { joinPieces } from "../pieces/join.ts";
import { edgeLength, mirrorPiece, type Piece, pieceBounds } from "../pieces/piece.ts";
import { type OutlinePlace, partBetween } from "../pieces/split.ts";
import { Refusal } from "../refusal.ts";
import type { Neckline } from "./neckline.ts";

/** A piece cut in two: the part with the shoulder, and the rest; the edge along the cut is called "yoke line" on both. */
interface Parted {
  readonly upper: Piece;
  readonly rest: Piece;
}

/** The front cut parallel to its shoulder, so far from it. */
export function cutFront(piece: Piece, shoulder: number, depth: number, argument: string): Parted {
  const edge = piece.edges[shoulder - 1]!;
  const [from, to] = [edge[0]!.from, edge.at(-1)!.to];
  const long = distance(from, to);
  // The inside of the piece lies to the side on which the middle of its box does.
  const { left, right, low, high } = pieceBounds(piece);
  const inside =
    (to[0] - from[0]) * ((low + high) / 2 - from[1]) - (to[1] - from[1]) * ((left + right) / 2 - from[0]);
  const away = (Math.sign(inside) * depth) / long;
  const by: Point = [-(to[1] - from[1]) * away, (to[0] - from[0]) * away];
  return partAlong(
    piece,
    shoulder,
    [from[0] + by[0], from[1] + by[1]],
    [to[0] + by[0], to[1] + by[1]],
    depth,
    argument,
  );
}

/** The back cut across the grain, so far below the place where its neckline meets centre back. */
export function cutBack(
  piece: Piece,
  neckEnd: Point,
  shoulder: number,
  depth: number,
  argument: string,
): Parted {
  const { low, high } = pieceBounds(piece);
  const level = neckEnd[1] + Math.sign((low + high) / 2 - neckEnd[1]) * depth;
  return partAlong(piece, shoulder, [neckEnd[0], level], [neckEnd[0] + depth, level], depth, argument);
}

/** The piece cut by the straight line through two points, from where it first meets the outline on either side of the shoulder. */
function partAlong(
  piece: Piece,
  shoulder: number,
  a: Point,
  b: Point,
  depth: number,
  argument: string,
): Parted {
  const { left, right, low, high } = pieceBounds(piece);
  const reach = (2 * (right - left + high - low)) / distance(a, b);
  const [dx, dy] = [(b[0] - a[0]) * reach, (b[1] - a[1]) * reach];
  const cut = line([a[0] - dx, a[1] - dy], [b[0] + dx, b[1] + dy]);
  const count = piece.edges.length;
  const around = Array.from({ length: count - 1 }, (_, i) => ((shoulder + i) % count) + 1);
  const places = around.flatMap((edge) =>
    crossings(piece.edges[edge - 1]!, cut).map((at): OutlinePlace => ({ edge, at })),
  );
  const [after, before] = [places[0], places.at(-1)];
  const tooDeep = () =>
    new Refusal(
      (say) =>
        phrase`${argument} must be less for the line of the yoke to cross the piece on both sides of the shoulder, not ${say(depth)}`,
    );
  if (!after || !before || (after.edge === before.edge && after.at === before.at)) throw tooDeep();
  const named = (part: Piece): Piece => ({
    ...part,
    names: part.names.map((name, i) => (i === part.names.length - 1 ? "yoke line" : name)),
  });
  try {
    return {
      upper: named(partBetween(piece, before, after)),
      rest: named(partBetween(piece, after, before)),
    };
  } catch (reason) {
    if (!(reason instanceof Refusal)) throw reason;
    throw tooDeep();
  }
}

/** Where a line crosses an edge, as lengths along the edge, in order. */
function crossings(edge: Edge, cut: ReturnType<typeof line>): number[] {
  let passed = 0;
  return edge.flatMap((stroke) => {
    const found = intersections(stroke, cut).map(({ a }) => passed + strokeLength(strokePart(stroke, 0, a)));
    passed += strokeLength(stroke);
    return found.sort((one, other) => one - other);
  });
}

/** Whether a piece goes round from its neckline over its shoulder to its armhole the way the hand of a clock turns on the page. */
const goesRound = (piece: Piece, shoulder: Edge, { neck }: Neckline): boolean =>
  (orientation(piece) === 1) ===
  distance(shoulder[0]!.from, neck[0]!.from) < distance(shoulder.at(-1)!.to, neck[0]!.from);

/**
 * The front as it is laid to the back at the shoulder, neckline to neckline: mirrored where both are drawn
 * for the same hand.
 */
export function facingBack(
  front: { readonly piece: Piece; readonly shoulder: number; readonly line: Neckline },
  back: { readonly piece: Piece; readonly shoulder: number; readonly line: Neckline },
): Piece {
  const round = ({ piece, shoulder, line: neckline }: typeof front) =>
    goesRound(piece, piece.edges[shoulder - 1]!, neckline);
  return round(front) === round(back) ? mirrorPiece(front.piece) : front.piece;
}

/** The two upper parts laid together at the shoulder, the back as it lies. Names that both parts have begin with "front" or "back". */
export function joinYoke(
  front: Piece,
  frontShoulder: Edge,
  back: Piece,
  backShoulder: Edge,
  tolerance: number,
): Piece {
  const [one, two] = [edgeLength(frontShoulder), edgeLength(backShoulder)];
  if (Math.abs(one - two) > tolerance)
    throw new Refusal(
      (say) =>
        phrase`back_shoulder must be as long as front_shoulder, ${say(one, two)}, for the yoke to have no seam there, not ${say(two, one)}: take the difference out of one of them first`,
    );
  const both = front.names.filter((name) => back.names.includes(name));
  const parted = (piece: Piece, side: string): Piece => ({
    ...piece,
    names: piece.names.map((name) => (name !== "" && both.includes(name) ? `${side} ${name}` : name)),
  });
  const numberOf = (piece: Piece, edge: Edge) =>
    piece.edges.findIndex(
      (run) =>
        distance(run[0]!.from, edge[0]!.from) + distance(run.at(-1)!.to, edge.at(-1)!.to) <
        1e-9 * edgeLength(edge),
    ) + 1;
  try {
    return joinPieces(
      parted(back, "back"),
      numberOf(back, backShoulder),
      parted(front, "front"),
      numberOf(front, frontShoulder),
      tolerance,
    );
  } catch (reason) {
    if (!(reason instanceof Refusal)) throw reason;
    throw new Refusal(
      phrase`front_shoulder and back_shoulder must be the two shoulder seams, which lie on each other along their whole length`,
    );
  }
}
