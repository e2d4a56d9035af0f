/** Pieces cut on the fold: half an outline opened out to the whole. */

import { type Edge, type Point, type Stroke, strokeLength } from "../geometry/strokes.ts";
import { reverseEdge } from "./edges.ts";
import { type Mark, mirrorPiece, movePiece, type Piece, pieceBounds } from "./piece.ts";

/**
 * The whole of a piece of which half is drawn, mirrored about its longest straight edge along the
 * grain at its left or right border; null when it has no such edge. Marks are mirrored too,
 * except those on the fold itself. Edges keep their names, so that the hem of either half is "hem".
 */
export function unfold(half: Piece): Piece | null {
  const fold = foldRun(half);
  if (!fold) return null;
  const { slack, strokes } = fold;

  // Round the outline from the fold's end to its beginning, then back along the mirrored half.
  const kept: { edge: Edge; name: string }[] = [];
  let passed = 0;
  half.edges.forEach((whole, number) => {
    const edge = whole.filter((_, i) => !fold.run.has(passed + i));
    if (edge.length > 0) kept.push({ edge, name: half.names[number]! });
    passed += whole.length;
  });
  const edges = kept.map(({ edge }) => edge);
  const first = half.edges.length > 0 ? firstAfter(edges, strokes[fold.last]!.to, slack) : 0;
  const walk = [...kept.slice(first), ...kept.slice(0, first)];
  const open: Piece = {
    edges: walk.map(({ edge }) => edge),
    names: walk.map(({ name }) => name),
    marks: half.marks,
  };
  const over = movePiece(mirrorPiece(open), 2 * fold.border, 0);
  const onFold = ({ line }: Mark) =>
    line.every(({ from, to }) => [from, to].every(([x]) => Math.abs(x - fold.border) <= slack));
  return {
    edges: [...open.edges, ...over.edges.map(reverseEdge).reverse()],
    names: [...open.names, ...over.names.toReversed()],
    marks: [...half.marks, ...over.marks.filter((mark) => !onFold(mark))],
  };
}

/** The run of strokes that lies on the fold. Returns null when the piece has no such run. */
function foldRun(half: Piece) {
  const { left, right, low, high } = pieceBounds(half);
  const slack = 1e-6 * Math.max(right - left, high - low);
  const strokes = half.edges.flat();
  const at = [left, right].map((border) => ({ border, ...longestRun(strokes, border, slack) }));
  const { strokes: run, ...fold } = at[0]!.length >= at[1]!.length - slack ? at[0]! : at[1]!;
  return fold.length <= slack ? null : { ...fold, run, strokes, slack };
}

/**
 * The numbers of the edges of half a piece that lie on its fold, wholly or in part, and of those that meet the fold with an end
 * and run on beyond it; null when it has no edge to fold at.
 */
export function foldOf(
  half: Piece,
): { readonly edges: ReadonlySet<number>; readonly meets: ReadonlySet<number> } | null {
  const fold = foldRun(half);
  if (!fold) return null;
  const onFold = (stroke: number) => fold.run.has((stroke + fold.strokes.length) % fold.strokes.length);
  const [edges, meets] = [new Set<number>(), new Set<number>()];
  let passed = 0;
  half.edges.forEach((edge, i) => {
    if (edge.some((_, at) => onFold(passed + at))) edges.add(i + 1);
    else if (onFold(passed - 1) || onFold(passed + edge.length)) meets.add(i + 1);
    passed += edge.length;
  });
  return { edges, meets };
}

/** The longest unbroken run of straight strokes on the line x = border, by the strokes' places in the outline. */
function longestRun(strokes: readonly Stroke[], border: number, slack: number) {
  const straight = strokes.map((stroke) => {
    const points: Point[] =
      stroke.kind === "curve" ? [stroke.from, stroke.c1, stroke.c2, stroke.to] : [stroke.from, stroke.to];
    return stroke.kind !== "arc" && points.every(([x]) => Math.abs(x - border) <= slack);
  });
  const n = strokes.length;
  let best = { length: 0, last: 0, strokes: new Set<number>() };
  for (let start = 0; start < n; start += 1) {
    if (!straight[start] || straight[(start + n - 1) % n]) continue;
    const run = new Set<number>();
    let length = 0;
    let last = start;
    for (let i = start; straight[i % n] && run.size < n; i += 1) {
      last = i % n;
      run.add(last);
      length += strokeLength(strokes[last]!);
    }
    if (length > best.length + slack) best = { length, last, strokes: run };
  }
  return best;
}

function firstAfter(edges: readonly Edge[], point: Point, slack: number): number {
  const found = edges.findIndex(
    (edge) => Math.hypot(edge[0]!.from[0] - point[0], edge[0]!.from[1] - point[1]) <= slack,
  );
  return Math.max(found, 0);
}
