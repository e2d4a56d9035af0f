/**
 * Where the words of a drawing go: each near what it belongs to and never across a line of the drawing
 * or another label. A label that finds room only farther off gets a leader, a thin line to its place.
 * Lengths are in whatever the drawing is shown in: pixels on the page, millimetres on paper.
 */
import type { Point } from "../../functions/geometry/strokes.ts";

export interface Label {
  readonly key: string;
  readonly text: string;
  /** Where it belongs; the first place is the best. */
  readonly at: readonly Point[];
  /** Placed the sooner, the greater it is. */
  readonly weight: number;
  /** The direction to move aside in first: across a dimension line, say. */
  readonly aside: Point;
  /** True when it is read from bottom to top. */
  readonly upright: boolean;
  readonly wide: number;
  readonly tall: number;
  /** A label that must stay within the piece it names has no leader. */
  readonly within: boolean;
}

export interface PlacedLabel extends Label {
  readonly place: Point;
  /** From the label to where it belongs, when it stands off. */
  readonly leader: readonly [Point, Point] | null;
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly halfX: number;
  readonly halfY: number;
}

/** The box a placed label takes. */
export const boxOf = ({ place: [x, y], wide, tall, upright }: PlacedLabel): Rect => ({
  x,
  y,
  halfX: (upright ? tall : wide) / 2,
  halfY: (upright ? wide : tall) / 2,
});

const meet = (a: Rect, b: Rect): boolean =>
  Math.abs(a.x - b.x) < a.halfX + b.halfX && Math.abs(a.y - b.y) < a.halfY + b.halfY;

/** Whether a straight line touches a box (Liang and Barsky's clipping of a line, 1984). */
export function crosses([ax, ay]: Point, [bx, by]: Point, { x, y, halfX, halfY }: Rect): boolean {
  const [dx, dy] = [bx - ax, by - ay];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, ax - (x - halfX)],
    [dx, x + halfX - ax],
    [-dy, ay - (y - halfY)],
    [dy, y + halfY - ay],
  ] as const) {
    if (p === 0 && q < 0) return false;
    if (p < 0) from = Math.max(from, q / p);
    else if (p > 0) to = Math.min(to, q / p);
    if (from > to) return false;
  }
  return true;
}

type Segment = readonly [Point, Point];

/** The lines of a drawing by the squares of a grid that they pass through. */
class Lines {
  private readonly squares = new Map<string, Segment[]>();
  private readonly size: number;

  constructor(size: number) {
    this.size = size;
  }

  add(a: Point, b: Point): void {
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / this.size));
    // A part of at most one square's length touches no square but those about its ends.
    for (let i = 0; i < Math.min(steps, 4000); i += 1) {
      const at = (share: number): Point => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
      const part: Segment = [at(i / steps), at((i + 1) / steps)];
      for (const key of this.keys(part)) {
        const square = this.squares.get(key);
        if (square) square.push(part);
        else this.squares.set(key, [part]);
      }
    }
  }

  touch(rect: Rect): boolean {
    const low: Point = [rect.x - rect.halfX, rect.y - rect.halfY];
    const high: Point = [rect.x + rect.halfX, rect.y + rect.halfY];
    return this.keys([low, high]).some((key) => this.squares.get(key)?.some(([a, b]) => crosses(a, b, rect)));
  }

  private keys([[ax, ay], [bx, by]]: Segment): string[] {
    const square = (value: number) => Math.floor(value / this.size);
    const keys: string[] = [];
    for (let i = square(Math.min(ax, bx)); i <= square(Math.max(ax, bx)); i += 1)
      for (let k = square(Math.min(ay, by)); k <= square(Math.max(ay, by)); k += 1) keys.push(`${i},${k}`);
    return keys;
  }
}

/** The ways aside that are tried, as parts of a full turn from the first. */
const TURNS = [0, 4, 2, 6, 1, 7, 3, 5, 0.5, 7.5, 3.5, 4.5, 1.5, 6.5, 2.5, 5.5].map(
  (part) => (part * Math.PI) / 4,
);
/** How far off, in heights of a line of words. */
const OFFS = [0, 0.35, 0.8, 1.4, 2.1, 3, 4.2, 5.6, 7.5, 10];
/** A label farther off than this many heights gets a leader. */
const NEAR = 1.1;

/** The area that labels may stand in. */
export interface Sheet {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The labels that find room, the weightiest first; `line` is the height of a line of words. */
export function placeLabels(
  labels: readonly Label[],
  strokes: readonly (readonly Point[])[],
  sheet: Sheet,
  line: number,
): PlacedLabel[] {
  const lines = new Lines(line * 3);
  for (const stroke of strokes)
    for (let i = 1; i < stroke.length; i += 1)
      if (isNear(stroke[i - 1]!, stroke[i]!, sheet)) lines.add(stroke[i - 1]!, stroke[i]!);
  const taken: Rect[] = [];
  const placed: PlacedLabel[] = [];
  for (const label of labels.toSorted((a, b) => b.weight - a.weight)) {
    const found = placeFor(label, lines, taken, sheet, line);
    if (!found) continue;
    placed.push(found);
    taken.push(boxOf(found));
    if (found.leader) lines.add(...found.leader);
  }
  return placed;
}

function placeFor(
  label: Label,
  lines: Lines,
  taken: readonly Rect[],
  sheet: Sheet,
  line: number,
): PlacedLabel | null {
  const size = {
    halfX: (label.upright ? label.tall : label.wide) / 2,
    halfY: (label.upright ? label.wide : label.tall) / 2,
  };
  const first = Math.atan2(label.aside[1], label.aside[0]);
  const isFree = (rect: Rect) =>
    rect.x - rect.halfX >= sheet.left &&
    rect.x + rect.halfX <= sheet.right &&
    rect.y - rect.halfY >= sheet.top &&
    rect.y + rect.halfY <= sheet.bottom &&
    !taken.some((one) => meet(one, rect)) &&
    !lines.touch(rect);
  if (label.within) {
    for (const place of label.at) {
      const rect = { x: place[0], y: place[1], ...size };
      if (isFree(rect)) return { ...label, place, leader: null };
    }
    return null;
  }
  for (const off of OFFS) {
    for (const at of label.at) {
      for (const turn of off === 0 ? [0] : TURNS) {
        const [dx, dy] = [Math.cos(first + turn), Math.sin(first + turn)];
        // From the middle of a box to its side, in this direction.
        const reach =
          off === 0
            ? 0
            : Math.min(size.halfX / Math.max(Math.abs(dx), 1e-9), size.halfY / Math.max(Math.abs(dy), 1e-9));
        const place: Point = [at[0] + dx * (reach + off * line), at[1] + dy * (reach + off * line)];
        const rect = { x: place[0], y: place[1], ...size };
        if (!isFree(rect)) continue;
        if (off <= NEAR) return { ...label, place, leader: null };
        const leader = leaderTo(rect, at);
        if (!taken.some((one) => crosses(...leader, one))) return { ...label, place, leader };
      }
    }
  }
  return null;
}

/** From the nearest place on a box's border to a point. */
const leaderTo = ({ x, y, halfX, halfY }: Rect, at: Point): [Point, Point] => [
  [Math.max(x - halfX, Math.min(at[0], x + halfX)), Math.max(y - halfY, Math.min(at[1], y + halfY))],
  at,
];

/** Whether a line may be seen on the sheet at all. */
const isNear = ([ax, ay]: Point, [bx, by]: Point, { left, top, right, bottom }: Sheet): boolean =>
  Math.max(ax, bx) >= left &&
  Math.min(ax, bx) <= right &&
  Math.max(ay, by) >= top &&
  Math.min(ay, by) <= bottom;
