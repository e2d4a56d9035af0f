/** An opened piece folded up along its marks, as a maker folds the paper, to see whether it is the finished one again. */
import { distance, type Edge, type Point, pointAt, type Stroke } from "../../functions/geometry/strokes.ts";
import type { Piece } from "../../functions/pieces/piece.ts";

type Move = (point: Point) => Point;

/** Over the line through a mark. */
const over =
  (mark: Edge): Move =>
  ([x, y]) => {
    const [[ax, ay], [bx, by]] = [mark[0]!.from, mark[0]!.to];
    const [dx, dy] = [bx - ax, by - ay];
    const share = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    return [2 * (ax + share * dx) - x, 2 * (ay + share * dy) - y];
  };

export interface Layer {
  /** The stretch of the opened edge that makes this layer. */
  readonly strokes: readonly Stroke[];
  readonly hidden: boolean;
  /** Where a point of it comes to lie. */
  readonly fold: Move;
}

/**
 * The layers of the top and of the hem from the left, and where the right side comes to lie.
 * `sides` says of each turn, in order, which way its inner fold lies: −1 towards the beginning.
 */
export function foldUp(piece: Piece, sides: readonly (-1 | 1)[]) {
  let move: Move = (point) => point;
  const moves: Move[] = [move];
  const lines: Edge[] = [];
  const then = (mark: Edge): Move => {
    const before = move;
    const flip = over(mark);
    return (point) => before(flip(point));
  };
  sides.forEach((side, i) => {
    const [fold, inner, placement] = piece.marks.slice(3 * i, 3 * i + 3).map(({ line }) => line) as [
      Edge,
      Edge,
      Edge,
    ];
    // The cloth is creased at the fold and at the inner fold; past the placement line it lies on as it did.
    if (side < 0) move = then(fold);
    moves.push(move);
    move = then(inner);
    moves.push(move);
    if (side > 0) move = then(fold);
    moves.push(move);
    lines.push(...(side < 0 ? [fold, inner, placement] : [placement, inner, fold]));
  });
  const size = distance(piece.edges[1]![0]!.from, piece.edges[3]![0]!.from);
  const layers = (edge: Edge, end: (line: Edge) => Point): Layer[] => {
    const groups: Stroke[][] = [[]];
    for (const stroke of edge) {
      while (
        groups.length <= lines.length &&
        distance(stroke.from, end(lines[groups.length - 1]!)) < 1e-8 * size
      )
        groups.push([]);
      groups.at(-1)!.push(stroke);
    }
    return groups.map((strokes, i) => ({ strokes, hidden: i % 3 !== 0, fold: moves[i]! }));
  };
  const hem = [...piece.edges[2]!].reverse().map(turned);
  return {
    top: layers(piece.edges[0]!, (line) => line[0]!.from),
    hem: layers(hem, (line) => line[0]!.to),
    right: piece.edges[1]!.flatMap(({ from, to }) => [move(from), move(to)]),
    lines: lines.map((line, i) => [line, moves[i]!] as const),
  };
}

const turned = (stroke: Stroke): Stroke => {
  const ends = { from: stroke.to, to: stroke.from };
  if (stroke.kind === "arc") return { ...stroke, ...ends, sweep: -stroke.sweep };
  return stroke.kind === "line"
    ? { kind: "line", ...ends }
    : { ...stroke, ...ends, c1: stroke.c2, c2: stroke.c1 };
};

/** Points along a layer as it lies once folded. */
export const foldedPoints = ({ strokes, fold }: Layer): Point[] =>
  strokes.flatMap((stroke) => [0, 0.25, 0.5, 0.75, 1].map((share) => fold(pointAt(stroke, share))));

/** How far a point lies off the line or circle of the nearest stroke. */
export const offEdge = (edge: Edge, [x, y]: Point): number =>
  Math.min(
    ...edge.map((stroke) => {
      if (stroke.kind === "arc") return Math.abs(distance(stroke.centre, [x, y]) - stroke.radius);
      const [[ax, ay], [bx, by]] = [stroke.from, stroke.to];
      return Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
    }),
  );
