import { define } from "../define.ts";
import { pointsOf } from "../drafting/coordinates.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { smoothClosed, smoothThrough } from "../geometry/smooth-curve.ts";
import { type Edge, line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { readEdgeNames } from "../pieces/edge-names.ts";
import { type Piece, pieceOf, requireSimple } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * A piece from points measured off a paper pattern: x across the grain, y along it, in the book's
 * unit, going round from the upper left corner along the top first. Points are joined by straight
 * edges; those that `smooth` names lie on a smooth curve, one edge ("2-5": points 2 to 5;
 * "6-2": round through the first point, edge 1 then begins at point 2; "all": one curve all round). The curve is the spline of
 * smooth-curve.ts. `names` says what the edges are called, in order. Refuses an outline that crosses itself or has no area. Source: geometry.
 */
export const OUTLINE = define({
  name: "OUTLINE",
  summary: "A pattern piece from points measured off paper, joined by straight edges and smooth curves.",
  source: "geometry",
  words: "digitise trace coordinates points draw shape copy a pattern polygon french curve",
  takes: {
    xs: {
      kind: "length",
      about: "distance of each point across the grain",
      from: -5000,
      to: 5000,
      many: true,
    },
    ys: { kind: "length", about: "distance of each point down the grain", from: -5000, to: 5000, many: true },
    smooth: {
      kind: "text",
      about: 'runs of points on one smooth curve, such as "2-5, 7-9", or "all"',
      otherwise: "",
    },
    names: {
      kind: "text",
      about: 'what the edges are called, in order: "waist, side, hem, centre back"',
      otherwise: "",
    },
  },
  returns: "piece",
  alike: { "xs, ys": "points on paper have no up and down of their own" },
  compute({ xs, ys, smooth, names }) {
    const points = pointsOf(xs, ys, 3);
    const [first, last] = [points[0]!, points.at(-1)!];
    if (first[0] === last[0] && first[1] === last[1]) points.pop();
    if (points.length < 3) throw new Refusal(phrase`xs and ys must have at least 3 different points, not 2`);
    const all = smooth.trim().toLowerCase() === "all";
    const edges = all ? [smoothClosed(points)] : edgesThrough(points, smooth);
    return sound(pieceOf(edges, namesOf(names, edges.length)));
  },
  draw: (_, __, piece) => (typeof piece === "object" ? drawPattern(piece) : []),
  examples: [
    {
      given: { xs: [0, 10, 13, 0], ys: [0, 0, 4, 4] },
      gives: { area: 46, width: 13, length: 4, edges: [10, 5, 13, 4] },
      because: "a yoke with one sloped side: (10 + 13)/2 × 4",
    },
    {
      given: {
        xs: [0, 6, 8, 9, 9, 0],
        ys: [0, 0, 3, 8, 20, 20],
        smooth: "2-4",
        names: "waist, hip curve, side, hem, centre back",
      },
      gives: { length: 20, width: 9 },
      within: 0.002,
      because: "a side shaped from waist to hip through three points, five edges",
    },
  ],
});

/** The names of the edges; one that is no name, or one too many, is refused. */
function namesOf(names: string, count: number): string[] {
  try {
    return readEdgeNames(names, count);
  } catch (reason) {
    throw new Refusal(phrase`names must be as many as edges at most: ${(reason as Error).message}`);
  }
}

/** Straight edges from point to point, but one curve for each run that `smooth` names. */
function edgesThrough(points: readonly Point[], smooth: string): Edge[] {
  const n = points.length;
  const ends = new Map<number, number>();
  for (const word of smooth.split(/[\s,;]+/).filter((part) => part !== "")) {
    const found = /^(\d{1,4})[-–](\d{1,4})$/.exec(word);
    const [start, end] = [Number(found?.[1]), Number(found?.[2])];
    if (!found)
      throw new Refusal(phrase`smooth must be runs such as "2-5" or "all", not "${word.slice(0, 20)}"`);
    if (start < 1 || start > n || end < 1 || end > n || start === end)
      throw new Refusal(phrase`smooth must run between two different points from 1 to ${n}, not "${word}"`);
    if (ends.has(start - 1))
      throw new Refusal(phrase`smooth must name runs that do not overlap, not "${smooth.slice(0, 40)}"`);
    ends.set(start - 1, end > start ? end - 1 : end - 1 + n);
  }
  const edges: Edge[] = [];
  const begin = firstCorner(ends, n);
  let at = begin;
  while (at < begin + n) {
    const end = ends.get(at % n);
    const to = end === undefined ? at + 1 : at - (at % n) + end;
    if (to > begin + n || overlaps(ends, at, to, n))
      throw new Refusal(phrase`smooth must name runs that do not overlap, not "${smooth.slice(0, 40)}"`);
    const run = Array.from({ length: to - at + 1 }, (_, i) => points[(at + i) % n]!);
    edges.push(run.length === 2 ? [line(run[0]!, run[1]!)] : smoothThrough(run));
    at = to;
  }
  return edges;
}

/** Where the edges may begin: at the first point, or at the end of the run that goes through it. */
function firstCorner(ends: ReadonlyMap<number, number>, n: number): number {
  for (const [, end] of ends) if (end > n) return end - n;
  return 0;
}

/** Does another run begin inside this one? */
function overlaps(ends: ReadonlyMap<number, number>, from: number, to: number, n: number): boolean {
  for (let i = from + 1; i < to; i += 1) if (ends.has(i % n)) return true;
  return false;
}

function sound(piece: Piece): Piece {
  try {
    return requireSimple(piece);
  } catch (reason) {
    throw new Refusal(phrase`xs and ys do not make a valid piece: ${(reason as Error).message}`);
  }
}
