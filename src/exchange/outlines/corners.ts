/** The edges of a closed line: it is cut at its corners, so that a smooth curve of many strokes is one edge. */
import {
  direction,
  type Edge,
  flatten,
  type Point,
  signedArea,
  strokeLength,
} from "../../../functions/geometry/strokes.ts";
import { reverseEdge } from "../../../functions/pieces/edges.ts";

/** A line that turns by more than this, in radians, has a corner there; less is a curve drawn in short strokes. */
const CORNER = Math.PI / 9;

/**
 * The line is looked at this far before and behind a corner, as a share of the way round, and turns there
 * too: a notch of 5 mm in a piece 2 m round, or a step as small, is not a corner.
 */
const NEAR = 6e-3;

/**
 * The edges of an outline, clockwise on paper, the first from the corner nearest to the upper left. An
 * outline without corners is one edge, from where it was begun.
 */
export function edgesOf(strokes: Edge): Edge[] {
  const round = clockwise(strokes);
  const corners = cornersOf(round);
  if (corners.length === 0) return [round];
  const first = upperLeft(round, corners);
  const order = [...corners.filter((i) => i >= first), ...corners.filter((i) => i < first)];
  return order.map((from, k) => {
    const to = order[k + 1] ?? first;
    return to > from ? round.slice(from, to) : [...round.slice(from), ...round.slice(0, to)];
  });
}

/** Points along a run of strokes, fine enough for its directions. */
const pointsOf = (strokes: Edge, size: number): Point[] =>
  strokes.flatMap((stroke) => flatten(stroke, size / 5000));

const lengthOf = (strokes: Edge): number => strokes.reduce((sum, stroke) => sum + strokeLength(stroke), 0);

/** y points down, so that a positive area runs clockwise on paper. */
const clockwise = (strokes: Edge): Edge =>
  signedArea(pointsOf(strokes, lengthOf(strokes))) < 0 ? reverseEdge(strokes) : strokes;

/** The strokes that begin at a corner, by their numbers from 0. */
function cornersOf(strokes: Edge): number[] {
  const lengths = strokes.map(strokeLength);
  const all = lengths.reduce((sum, one) => sum + one, 0);
  const sharp = strokes.flatMap((stroke, i) => {
    const before = strokes.at(i - 1)!;
    return turn(direction(before, 1), direction(stroke, 0)) > CORNER ? [i] : [];
  });
  if (sharp.length === 0) return [];
  const track = new Track(strokes, all);
  let passed = 0;
  const begins = lengths.map((length) => {
    const at = passed;
    passed += length;
    return at;
  });
  const near = NEAR * all;
  return sharp.filter((i) => {
    const at = begins[i]!;
    const coming = way(track.at(at - 1.5 * near), track.at(at - near));
    const going = way(track.at(at + near), track.at(at + 1.5 * near));
    return turn(coming, going) > CORNER;
  });
}

/** A closed line by the way gone along it, to a fine tolerance. */
class Track {
  readonly #points: Point[];
  readonly #ways: number[] = [0];
  readonly #all: number;

  constructor(strokes: Edge, length: number) {
    this.#points = [strokes[0]!.from, ...pointsOf(strokes, length)];
    for (let i = 1; i < this.#points.length; i += 1)
      this.#ways.push(this.#ways[i - 1]! + Math.hypot(...way(this.#points[i - 1]!, this.#points[i]!)));
    this.#all = this.#ways.at(-1)!;
  }

  at(gone: number): Point {
    const wanted = ((gone % this.#all) + this.#all) % this.#all;
    let [low, high] = [0, this.#ways.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.#ways[middle]! <= wanted) low = middle;
      else high = middle;
    }
    const span = this.#ways[high]! - this.#ways[low]!;
    const share = span > 0 ? (wanted - this.#ways[low]!) / span : 0;
    const [a, b] = [this.#points[low]!, this.#points[high]!];
    return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  }
}

const way = (a: Point, b: Point): Point => [b[0] - a[0], b[1] - a[1]];

/** The angle between two directions, 0 to π. */
const turn = ([ax, ay]: Point, [bx, by]: Point): number =>
  Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));

/** The corner nearest to the upper left of the outline's box. */
function upperLeft(strokes: Edge, corners: readonly number[]): number {
  const points = corners.map((i) => strokes[i]!.from);
  const left = Math.min(...strokes.map(({ from }) => from[0]));
  const top = Math.min(...strokes.map(({ from }) => from[1]));
  const away = points.map(([x, y]) => Math.hypot(x - left, y - top));
  return corners[away.indexOf(Math.min(...away))]!;
}
