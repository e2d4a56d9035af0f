/** Two pieces laid edge to edge and drawn as one. */

import { degrees, distance, type Edge } from "../geometry/strokes.ts";
import { Refusal } from "../refusal.ts";
import { orientation } from "./allowance.ts";
import { edgeByNumber, placeAlong, reverseEdge } from "./edges.ts";
import { edgeLength, mark, movePiece, type Piece, requireSimple, turnPiece } from "./piece.ts";

/**
 * Piece `b` turned and moved so that its edge lies along edge `edge_a` of `a`, both drawn as one
 * outline: a's edges after the seam, then b's after the seam. The seam becomes a mark. Refuses
 * edges that lie more than `tolerance` off each other.
 */
export function joinPieces(a: Piece, edge_a: number, b: Piece, edge_b: number, tolerance: number): Piece {
  const seam = edgeByNumber(a, edge_a, "edge_a");
  // Both outlines must run the same way round, so that the seam is passed in opposite directions.
  const other = orientation(a) === orientation(b) ? b : reversePiece(b);
  const number = other === b ? edge_b : b.edges.length + 1 - edge_b;
  const laid = laidAlong(other, edgeByNumber(other, number, "edge_b"), seam);
  const meet = reverseEdge(laid.edges[number - 1]!);
  const off = greatestGap(seam, meet);
  if (off > tolerance) {
    const [one, two] = [edgeLength(seam), edgeLength(meet)];
    throw new Refusal((say) => {
      const why =
        Math.abs(one - two) > tolerance
          ? `they are ${say(one, two)} and ${say(two, one)} long`
          : `they curve apart by ${say(off, 0)}`;
      return `edge_b must match edge_a along its whole length, within ${say(tolerance, 0)}: ${why}`;
    });
  }
  const after = (piece: Piece, at: number): Edge[] => [
    ...piece.edges.slice(at),
    ...piece.edges.slice(0, at - 1),
  ];
  const whole = {
    edges: [...after(a, edge_a), ...after(laid, number)],
    marks: [...a.marks, ...laid.marks, mark(seam, "seam")],
  };
  try {
    return requireSimple(whole);
  } catch (reason) {
    throw new Refusal(
      `edge_b must be one at which the pieces lie side by side: ${(reason as Error).message}`,
    );
  }
}

const reversePiece = (piece: Piece): Piece => ({
  edges: piece.edges.map(reverseEdge).reverse(),
  marks: piece.marks,
});

/** The piece turned and moved so that its edge, drawn backwards, begins and points as `seam` does. */
function laidAlong(piece: Piece, edge: Edge, seam: Edge): Piece {
  const way = (run: Edge, back: boolean): number => {
    const [from, to] = [run[0]!.from, run.at(-1)!.to];
    const sign = back ? -1 : 1;
    return Math.atan2(sign * (to[1] - from[1]), sign * (to[0] - from[0]));
  };
  const turn = degrees(way(seam, false) - way(edge, true));
  const turned = turnPiece(piece, turn);
  const at = turnPiece({ edges: [edge], marks: [] }, turn).edges[0]!;
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
