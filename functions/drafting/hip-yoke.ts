/** A yoke that fits the hip: the body below the waist rolled out flat (body-cone.ts), down to a lower edge that may dip. */

import { curveBetween } from "../geometry/curve-between.ts";
import { type Edge, line, type Point } from "../geometry/strokes.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { type Piece, pieceOf } from "../pieces/piece.ts";
import { developedLevel, developedPoint, type WaistSeam } from "./body-cone.ts";

interface YokeMeasures {
  readonly waist: number;
  /** Below the waist at centre back and at centre front. */
  readonly back_drop: number;
  readonly front_drop: number;
}

/** How far below the waist a curved lower edge runs at a share of the girth from centre back: level at both centres, and changing most at the side. */
export const curvedLevel = ({ back_drop, front_drop }: YokeMeasures, share: number): number =>
  back_drop + ((front_drop - back_drop) * (1 - Math.cos(2 * Math.PI * share))) / 2;

/** Into how many curves half a curved edge is drawn. */
const CURVES = 12;

/** Half a curved lower edge from centre back to centre front. */
export function curvedEdge(yoke: YokeMeasures, angle: number): Edge {
  const { waist, back_drop, front_drop } = yoke;
  const places = Array.from({ length: CURVES + 1 }, (_, i) => {
    const share = i / CURVES / 2;
    const level = curvedLevel(yoke, share);
    const girth = waist + angle * level;
    const falling = (front_drop - back_drop) * Math.PI * Math.sin(2 * Math.PI * share);
    // Round the body by the girth and down it by the fall, for each share, as the paper is turned there.
    const [cos, sin] = [Math.cos(angle * share), Math.sin(angle * share)];
    const speed: Point = [girth * cos + falling * sin, falling * cos - girth * sin];
    return { at: developedPoint(waist, angle, level, share), speed };
  });
  return places.slice(1).map((end, i) => curveBetween(places[i]!, end, 1 / CURVES / 2));
}

/** Half a lower edge that runs level at the back, then straight to a point in front: the seam of a DIPPED_PANEL. */
export function pointedEdge({ waist, back_drop, front_drop }: YokeMeasures, seam: WaistSeam): Edge {
  const { angle, slope_from, slope_to, sloped } = seam;
  const [from, to] = [
    developedPoint(waist, angle, back_drop, slope_from),
    developedPoint(waist, angle, front_drop, slope_to),
  ];
  return [
    ...(seam.level > 0 ? [developedLevel(waist, angle, back_drop, 0, slope_from)] : []),
    ...(sloped > 0 ? [line(from, to)] : []),
    ...(seam.front_level > 0 ? [developedLevel(waist, angle, front_drop, slope_to, 0.5)] : []),
  ];
}

/** Edges: 1 waist from centre back to centre front, 2 centre front, 3 lower edge, 4 centre back, which lies along the y axis from (0, 0). */
export function hipYoke({ waist, back_drop, front_drop }: YokeMeasures, angle: number, lower: Edge): Piece {
  const at = (level: number, share: number) => developedPoint(waist, angle, level, share);
  return pieceOf(
    [
      [developedLevel(waist, angle, 0, 0, 0.5)],
      [line(at(0, 0.5), at(front_drop, 0.5))],
      reverseEdge(lower),
      [line(at(back_drop, 0), at(0, 0))],
    ],
    ["waist", "centre front", "lower edge", "centre back"],
  );
}
