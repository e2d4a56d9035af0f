/** Where the words of a drawing go, so that none lies over another. All in pixels. */
import type { Point } from "../../../functions/geometry.ts";

export interface Label {
  readonly key: string;
  readonly text: string;
  /** Where its middle would best be. */
  readonly at: Point;
  /** Shown first, and with less need to be moved aside, the greater it is. */
  readonly weight: number;
  /** Directions to move aside in; across a dimension line, say. */
  readonly aside: Point;
}

export interface PlacedLabel extends Label {
  readonly place: Point;
}

export const LINE = 16;

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
}

const meet = (a: Rect, b: Rect): boolean =>
  Math.abs(a.x - b.x) < (a.wide + b.wide) / 2 + 2 && Math.abs(a.y - b.y) < LINE;

/** The labels that find room, the weightiest first; the others come into sight when the drawing is nearer. */
export function placeLabels(labels: readonly Label[], widthOf: (text: string) => number): PlacedLabel[] {
  const taken: Rect[] = [];
  const placed: PlacedLabel[] = [];
  for (const label of labels.toSorted((a, b) => b.weight - a.weight)) {
    const wide = widthOf(label.text);
    const [ax, ay] = label.aside;
    for (const step of [0, 1, -1, 2, -2]) {
      const reach = step * (Math.abs(ay) > Math.abs(ax) ? LINE : Math.max(LINE, wide / 2 + 8));
      const x = label.at[0] + ax * reach;
      const y = label.at[1] + ay * reach;
      if (taken.some((one) => meet(one, { x, y, wide }))) continue;
      taken.push({ x, y, wide });
      placed.push({ ...label, place: [x, y] });
      break;
    }
  }
  return placed;
}
