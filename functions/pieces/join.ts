/** Two pieces laid edge to edge and drawn as one. */

import { degrees, distance, type Edge } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { orientation } from "./allowance.ts";
import { placeAlong, reverseEdge } from "./edges.ts";
import { edgeLength, mark, movePiece, type Piece, requireSimple, turnPiece } from "./piece.ts";

/**
 * The second piece turned and moved so that its edge lies along the edge of the first, both drawn as
 * one outline: the first piece's edges after the seam, then the second's after the seam. Edges keep
 * their names. The seam becomes a guide line, because nothing is sewn there any more. Refuses edges that
 * lie more than `tolerance` off each other.
 */
export function joinPieces(
  first: Piece,
  first_edge: number,
  second: Piece,
  second_edge: number,
  tolerance: number,
): Piece {
  const seam = first.edges[first_edge - 1]!;
  // Both outlines must run the same way round, so that the seam is passed in opposite directions.
  const other = orientation(first) === orientation(second) ? second : reversePiece(second);
  const number = other === second ? second_edge : second.edges.length + 1 - second_edge;
  const laid = laidAlong(other, number, seam);
  const meet = reverseEdge(laid.edges[number - 1]!);
  const off = greatestGap(seam, meet);
  if (off > tolerance) {
    const [one, two] = [edgeLength(seam), edgeLength(meet)];
    throw new Refusal((say) => {
      const why =
        Math.abs(one - two) > tolerance
          ? phrase`they are ${say(one, two)} and ${say(two, one)} long`
          : phrase`they curve apart by ${say(off, 0)}`;
      return phrase`second_edge must match first_edge along its whole length, within ${say(tolerance, 0)}: ${why}`;
    });
  }
  const after = <T>(list: readonly T[], at: number): T[] => [...list.slice(at), ...list.slice(0, at - 1)];
  const whole: Piece = {
    edges: [...after(first.edges, first_edge), ...after(laid.edges, number)],
    names: [...after(first.names, first_edge), ...after(laid.names, number)],
    marks: [...first.marks, ...laid.marks, mark(seam, "guide")],
  };
  try {
    return requireSimple(whole);
  } catch (reason) {
    throw new Refusal(
      phrase`second_edge must be one at which the pieces lie side by side: ${(reason as Error).message}`,
    );
  }
}

const reversePiece = (piece: Piece): Piece => ({
  edges: piece.edges.map(reverseEdge).reverse(),
  names: piece.names.toReversed(),
  marks: piece.marks,
});

/** The piece turned and moved so that its edge, drawn backwards, begins and points as `seam` does. */
function laidAlong(piece: Piece, number: number, seam: Edge): Piece {
  const edge = piece.edges[number - 1]!;
  const way = (run: Edge, back: boolean): number => {
    const [from, to] = [run[0]!.from, run.at(-1)!.to];
    const sign = back ? -1 : 1;
    return Math.atan2(sign * (to[1] - from[1]), sign * (to[0] - from[0]));
  };
  const turn = degrees(way(seam, false) - way(edge, true));
  const turned = turnPiece(piece, turn);
  const at = turned.edges[number - 1]!;
  // The middles of both edges' straight lines are laid on each other: half of a difference at either end.
  const [a, b] = [middle(seam), middle(at)];
  return movePiece(turned, a[0] - b[0], a[1] - b[1]);
}

const middle = (run: Edge) => {
  const [from, to] = [run[0]!.from, run.at(-1)!.to];
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
};

/** How far two runs lie apart, walked in step. */
function greatestGap(one: Edge, other: Edge): number {
  const [a, b] = [edgeLength(one), edgeLength(other)];
  let most = 0;
  for (let i = 0; i <= 32; i += 1) {
    const share = i / 32;
    most = Math.max(most, distance(placeAlong(one, a * share).point, placeAlong(other, b * share).point));
  }
  return most;
}
