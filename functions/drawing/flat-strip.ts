/** Straight lengths of cloth, tape and trimming, drawn flat with their length along x. */

import type { Point } from "../geometry/strokes.ts";
import { polygon } from "../pieces/piece.ts";
import { dimension, type Shape, showing } from "./shapes.ts";

export interface Strip {
  readonly length: number;
  readonly width: number;
  readonly label?: string;
  /** Its upper left corner. */
  readonly at?: Point;
  /** The steps that its length and its width show. */
  readonly lengthShows?: string;
  readonly widthShows?: string;
}

/** A strip with its length dimensioned beneath it and its width to its left; nothing when it has no area. */
export function drawStrip({ length, width, label, at = [0, 0], lengthShows, widthShows }: Strip): Shape[] {
  if (!(length > 0 && width > 0)) return [];
  const [x, y] = at;
  const off = width / 6;
  return [
    {
      kind: "outline",
      piece: polygon([
        [x, y],
        [x + length, y],
        [x + length, y + width],
        [x, y + width],
      ]),
      ...(label ? { label } : {}),
    },
    dimension([x, y + width + off], [x + length, y + width + off], showing(lengthShows)),
    dimension([x - off, y], [x - off, y + width], showing(widthShows)),
  ];
}

/** Two strips under one another, to be compared. */
export function drawStrips(above: Strip, below: Strip): Shape[] {
  return [...drawStrip(above), ...drawStrip({ ...below, at: [0, above.width * 1.6] })];
}
