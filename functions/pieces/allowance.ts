/**
 * A piece with its allowances on: each edge moved out by its own width, the sewing line kept
 * inside as marks.
 *
 * Corners are drawn as a cutter draws them: mitred, or cut square when they are very sharp. At a hem
 * the side is turned back, so that the hem, folded up along its line, meets the cut line beneath it.
 */

import { BendTooTight, offsetStroke } from "../geometry/offset.ts";
import { type Edge, strokeLength, strokePart } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { type CornerRuns, convexity, cornerBetween, endDirection, hemCorner } from "./corner.ts";
import { edgeText } from "./edge-names.ts";
import { reverseEdge } from "./edges.ts";
import {
  doublePieceArea,
  mark,
  type Outline,
  type Piece,
  pieceArea,
  pieceOf,
  requireSimple,
} from "./piece.ts";

/** The allowance of one edge. `name` is the argument that sets it, for refusals. */
export interface EdgeAllowance {
  readonly width: number;
  readonly name: "seam" | "hem" | "fold_edges" | "own";
}

/** 1 when the outline runs from +x towards +y about its inside, −1 the other way. */
export const orientation = (piece: Outline): 1 | -1 => (doublePieceArea(piece) > 0 ? 1 : -1);

/** The piece with allowances, one for each of its edges. Curves keep their width within `tolerance`. */
export function withAllowances(piece: Piece, allowances: readonly EdgeAllowance[], tolerance: number): Piece {
  const sewn = piece.edges.filter((_, i) => allowances[i]!.width > 0);
  const marks = [...piece.marks, ...sewn.map((edge) => mark(edge, "seam"))];
  if (piece.edges.length > 1)
    return requireRoom(piece, { ...piece, edges: offsetEdges(piece, allowances, tolerance), marks });
  // One edge that closes on itself is split in two, so that it has a neighbour to intersect.
  const only = piece.edges[0]!;
  const half =
    only.length > 1
      ? [[only[0]!], only.slice(1)]
      : [[strokePart(only[0]!, 0, 0.5)], [strokePart(only[0]!, 0.5, 1)]];
  const [name = ""] = piece.names;
  const halves = pieceOf(half, [name, name]);
  const edges = offsetEdges(halves, [allowances[0]!, allowances[0]!], tolerance);
  return requireRoom(piece, { ...piece, edges: [edges.flat()], marks });
}

function offsetEdges(piece: Piece, allowances: readonly EdgeAllowance[], tolerance: number): Edge[] {
  const side = orientation(piece);
  const runs = piece.edges.map((edge, i) =>
    offsetEdge(edge, allowances[i]!, side, tolerance, edgeText(piece, i + 1)),
  );
  runs.forEach((_, i) => {
    const next = (i + 1) % runs.length;
    const edges = [piece.edges[i]!, piece.edges[next]!] as const;
    const widths = [allowances[i]!, allowances[next]!] as const;
    const turned = edgeCorner(edges, [runs[i]!, runs[next]!], widths, side);
    if (!turned) throw cornerTooNarrow(widths, edgeText(piece, i + 1), edgeText(piece, next + 1));
    runs[i] = turned.first;
    runs[next] = turned.second;
  });
  return runs;
}

/** One edge moved out, with the corners inside it. */
function offsetEdge(
  edge: Edge,
  { width, name }: EdgeAllowance,
  side: 1 | -1,
  tolerance: number,
  called: string,
): Edge {
  if (width === 0) return edge;
  let run: Edge = [];
  for (const stroke of edge) {
    let next: Edge;
    try {
      next = offsetStroke(stroke, width, side, tolerance);
    } catch (reason) {
      if (!(reason instanceof BendTooTight)) throw reason;
      throw new Refusal(
        (say) =>
          phrase`${name} must be less than ${say(reason.radius, width)}, the radius of the tightest hollow of ${called}, not ${say(width, reason.radius)}${name === "own" ? "" : phrase`; in own this edge can have a narrower allowance than the others`}`,
      );
    }
    const turned: CornerRuns | null =
      run.length === 0
        ? { first: [], second: next }
        : cornerBetween(run, next, stroke.from, width, convexity(run, next, side));
    if (!turned) {
      // In a hollow the parallel of a stroke shorter than the width may vanish between its neighbours'.
      if (strokeLength(stroke) < width) continue;
      throw new Refusal(
        (say) => phrase`${name} must be less for the narrow inner corner in ${called}, not ${say(width)}`,
      );
    }
    run = [...turned.first, ...turned.second];
  }
  return run;
}

function edgeCorner(
  [before, after]: readonly [Edge, Edge],
  [first, second]: readonly [Edge, Edge],
  [one, other]: readonly [EdgeAllowance, EdgeAllowance],
  side: 1 | -1,
): CornerRuns | null {
  const corner = after[0]!.from;
  const turn = convexity(before, after, side);
  const away = Math.max(one.width, other.width);
  if (turn > 0 && (one.name === "hem") !== (other.name === "hem")) {
    if (other.name === "hem" && other.width > 0) {
      const back = hemCorner(first, reverseEdge(second), corner, away, inward(reverseEdge(after)));
      if (back) return { first: back.a, second: reverseEdge(back.b) };
    }
    if (one.name === "hem" && one.width > 0) {
      const back = hemCorner(reverseEdge(second), first, corner, away, inward(before));
      if (back) return { first: back.b, second: reverseEdge(back.a) };
    }
  }
  return cornerBetween(first, second, corner, away, turn);
}

/** From a run's end back along it. */
function inward(run: Edge): readonly [number, number] {
  const [x, y] = endDirection(run);
  return [-x, -y];
}

function cornerTooNarrow(
  [a, b]: readonly [EdgeAllowance, EdgeAllowance],
  before: string,
  after: string,
): Refusal {
  const wider = a.width >= b.width ? a : b;
  return new Refusal(
    (say) =>
      phrase`${wider.name} must be less for the narrow inner corner between ${before} and ${after}, not ${say(wider.width)}; an edge named in fold_edges gets no allowance`,
  );
}

/** The cut piece; refuses allowances that cross one another or turn the outline inside out. */
function requireRoom(piece: Piece, cut: Piece): Piece {
  try {
    requireSimple(cut);
  } catch (reason) {
    throw new Refusal(phrase`seam must be less, because with these allowances ${(reason as Error).message}`);
  }
  if (orientation(cut) !== orientation(piece) || pieceArea(cut) < pieceArea(piece) * (1 - 1e-9))
    throw new Refusal(phrase`seam must be less, because these allowances are wider than the piece`);
  return cut;
}
