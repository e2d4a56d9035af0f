/** Where the name of a piece is written: inside its outline and clear of its grain line. */
import { boundingBox, type Point } from "../../functions/geometry/strokes.ts";

export interface Spot {
  /** The middle of the text. */
  readonly at: Point;
  /** Written along the cloth, or across it, read from the right. */
  readonly turn: 0 | -90;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Places looked at along each side of the piece's box. */
const LEVELS = 15;
/** Half the breadth of the grain line's heads, in pixels, and a hair of cloth. */
const BARB = 5;

/**
 * The place for a text of this length and height that is nearest to the grain line, along the
 * cloth if there is one; null when the text fits nowhere. All in pixels.
 */
export function spotFor(
  outline: readonly Point[],
  long: number,
  high: number,
  grain: readonly [Point, Point],
): Spot | null {
  const about = boundingBox(outline);
  const middle: Point = [(grain[0][0] + grain[1][0]) / 2, (grain[0][1] + grain[1][1]) / 2];
  const level = (k: number, from: number, to: number) => from + ((to - from) * k) / (LEVELS + 1);
  const numbers = Array.from({ length: LEVELS }, (_, i) => i + 1);
  const places = numbers
    .flatMap((i) =>
      numbers.map((j): Point => [level(i, about.left, about.right), level(j, about.low, about.high)]),
    )
    // Just above or below the grain line, and anywhere else.
    .concat([-1, 1].map((side): Point => [middle[0], middle[1] + side * (high / 2 + BARB + 0.5)]))
    .sort((a, b) => far(a, middle) - far(b, middle));
  for (const turn of [0, -90] as const) {
    const [w, h] = turn === 0 ? [long, high] : [high, long];
    if (w > about.right - about.left || h > about.high - about.low) continue;
    const found = places.find((at) => {
      const box = boxAbout(at, w, h);
      return liesInside(outline, at, box) && !crosses(grain[0], grain[1], grown(box, BARB));
    });
    if (found) return { at: found, turn };
  }
  return null;
}

const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const boxAbout = ([x, y]: Point, wide: number, high: number): Box => ({
  left: x - wide / 2,
  right: x + wide / 2,
  low: y - high / 2,
  high: y + high / 2,
});

const grown = ({ left, right, low, high }: Box, by: number): Box => ({
  left: left - by,
  right: right + by,
  low: low - by,
  high: high + by,
});

/** No line of the outline touches the box, and its middle is inside. */
function liesInside(outline: readonly Point[], [x, y]: Point, box: Box): boolean {
  let odd = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [a, b] = [outline[j]!, outline[i]!];
    if (crosses(a, b, box)) return false;
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) odd = !odd;
  }
  return odd;
}

/** Whether a straight line touches the box: their own boxes meet, and the corners are not all on one side of it. */
function crosses(a: Point, b: Point, { left, right, low, high }: Box): boolean {
  if (Math.max(a[0], b[0]) < left || Math.min(a[0], b[0]) > right) return false;
  if (Math.max(a[1], b[1]) < low || Math.min(a[1], b[1]) > high) return false;
  const side = (x: number, y: number) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  const sides = [side(left, low), side(right, low), side(left, high), side(right, high)];
  return Math.min(...sides) <= 0 && Math.max(...sides) >= 0;
}
