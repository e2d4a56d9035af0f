/** The part of a drawing that is looked at: which of its points is at the upper left, and how large it is shown. */
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Box } from "../../engine/picture.ts";

export interface View {
  /** The drawing's point at the upper left corner of the window. */
  readonly left: number;
  readonly top: number;
  /** Pixels to one unit of length. */
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const onScreen = ({ left, top, scale }: View, [x, y]: Point): Point => [
  (x - left) * scale,
  (y - top) * scale,
];

export const inDrawing = ({ left, top, scale }: View, [x, y]: Point): Point => [
  left + x / scale,
  top + y / scale,
];

/** All of the box in the middle of the window, with a margin in pixels. */
export function fitted(box: Box, { width, height }: Size, margin: number): View {
  const wide = Math.max(box.right - box.left, 1e-6);
  const tall = Math.max(box.high - box.low, 1e-6);
  const room = (size: number) => Math.max(size - 2 * margin, size / 3);
  const scale = Math.min(room(width) / wide, room(height) / tall);
  return {
    scale,
    left: (box.left + box.right - width / scale) / 2,
    top: (box.low + box.high - height / scale) / 2,
  };
}

/** Nearer or farther by a factor; the point of the window that is given stays where it is. */
export function zoomed(view: View, factor: number, around: Point, whole: number): View {
  const scale = Math.min(Math.max(view.scale * factor, whole / 8), whole * 400);
  const [x, y] = inDrawing(view, around);
  return { scale, left: x - around[0] / scale, top: y - around[1] / scale };
}

/** The view moved by `dx` and `dy` pixels. */
export const moved = (view: View, dx: number, dy: number): View => ({
  ...view,
  left: view.left - dx / view.scale,
  top: view.top - dy / view.scale,
});

/** A round length for the scale's bar: the longest of 1, 2, 5, 10 … that is no wider than `most` pixels. */
export function barLength(scale: number, most: number): number {
  const power = 10 ** Math.floor(Math.log10(most / scale));
  return [5, 2, 1].map((step) => step * power).find((length) => length * scale <= most) ?? power;
}
