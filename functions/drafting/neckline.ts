/** The necklines of the front and the back of a bodice, by which a collar or a yoke is drafted from them. */

import type { Given, Takes } from "../define.ts";
import { distance, type Edge, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { edgeLength, type Piece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/** The arguments that name both pieces and their edges. */
export const BODICE_NECK = {
  front: { kind: "piece", about: "the front of the bodice, without allowances" },
  front_neck: { kind: "edge", of: "front", about: "its neckline, by name or number" },
  front_shoulder: { kind: "edge", of: "front", about: "its shoulder seam, by name or number" },
  back: { kind: "piece", about: "the back of the bodice, without allowances" },
  back_neck: { kind: "edge", of: "back", about: "its neckline, by name or number" },
  back_shoulder: { kind: "edge", of: "back", about: "its shoulder seam, by name or number" },
} as const satisfies Takes;

/** The neckline and the shoulder of a bodice piece, both from the point where they meet. */
export interface Neckline {
  readonly neck: Edge;
  readonly shoulder: Edge;
}

/** Both edges drawn from their common end. Refuses edges that do not meet. */
function necklineOf(piece: Piece, neck: number, shoulder: number, argument: string): Neckline {
  const [one, other] = [piece.edges[neck - 1]!, piece.edges[shoulder - 1]!];
  const ends = (edge: Edge): [Point, Point] => [edge[0]!.from, edge.at(-1)!.to];
  const close = 1e-6 * (edgeLength(one) + edgeLength(other));
  for (const a of [one, reverseEdge(one)])
    for (const b of [other, reverseEdge(other)])
      if (neck !== shoulder && distance(ends(a)[0], ends(b)[0]) <= close) return { neck: a, shoulder: b };
  throw new Refusal(
    phrase`${argument} must be the edge that meets the neckline at the neck, not one apart from it`,
  );
}

/** The necklines of both pieces. Refuses a neckline and a shoulder that do not meet. */
export const bothNecklines = (given: Given<typeof BODICE_NECK>): { front: Neckline; back: Neckline } => ({
  front: necklineOf(given.front, given.front_neck, given.front_shoulder, "front_shoulder"),
  back: necklineOf(given.back, given.back_neck, given.back_shoulder, "back_shoulder"),
});
