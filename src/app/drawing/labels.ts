/** Where the words of a drawing go, so that none lies over another. All in pixels. */
import type { Point } from "../../../functions/geometry/strokes.ts";

export interface Label {
  readonly key: string;
  readonly text: string;
  /** Where its middle would best be. */
  readonly at: Point;
  /** Shown first, and with less need to be moved aside, the greater it is. */
  readonly weight: number;
  /** The direction to move aside in: across a dimension line, say. */
  readonly aside: Point;
  /** True when it is read from bottom to top. */
  readonly upright: boolean;
}

export interface PlacedLabel extends Label {
  readonly place: Point;
  readonly wide: number;
}

/** The height of a line of words. */
export const LINE = 16;

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly tall: number;
}

const meet = (a: Rect, b: Rect): boolean =>
  Math.abs(a.x - b.x) < (a.wide + b.wide) / 2 && Math.abs(a.y - b.y) < (a.tall + b.tall) / 2;

/** The labels that find room, the weightiest first; the others come into sight when one looks nearer. */
export function placeLabels(labels: readonly Label[], widthOf: (text: string) => number): PlacedLabel[] {
  const taken: Rect[] = [];
  const placed: PlacedLabel[] = [];
  for (const label of labels.toSorted((a, b) => b.weight - a.weight)) {
    const long = widthOf(label.text);
    const size = label.upright ? { wide: LINE, tall: long } : { wide: long, tall: LINE };
    const [ax, ay] = label.aside;
    const reach = Math.abs(ax) * size.wide + Math.abs(ay) * size.tall;
    for (const step of [0, 1, -1, 2, -2]) {
      const x = label.at[0] + ax * reach * step;
      const y = label.at[1] + ay * reach * step;
      if (taken.some((one) => meet(one, { x, y, ...size }))) continue;
      taken.push({ x, y, ...size });
      placed.push({ ...label, place: [x, y], wide: long });
      break;
    }
  }
  return placed;
}
