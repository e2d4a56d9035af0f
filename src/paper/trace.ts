/** Outlines and lines for pens that draw lines and curves. */
import { arcCurves, type Subpath } from "../../functions/geometry/path.ts";
import type { Stroke } from "../../functions/geometry/strokes.ts";

/** Arcs become curves over at most 15 degrees, which stray less than a ten-millionth of the radius. */
const MOST_ARC = Math.PI / 12;

export interface PathPen {
  moveTo(x: number, y: number): unknown;
  lineTo(x: number, y: number): unknown;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): unknown;
  closePath(): unknown;
}

/** Draws a run of strokes, moved by x and y, with a pen that has no arcs. */
export function trace(pen: PathPen, { start, edges, closed }: Subpath, x: number, y: number): void {
  const draw = (one: Stroke): void => {
    if (one.kind === "arc") for (const curve of arcCurves(one, MOST_ARC)) draw(curve);
    else if (one.kind === "line") pen.lineTo(one.to[0] + x, one.to[1] + y);
    else {
      const [c1, c2, to] = [one.c1, one.c2, one.to];
      pen.bezierCurveTo(c1[0] + x, c1[1] + y, c2[0] + x, c2[1] + y, to[0] + x, to[1] + y);
    }
  };
  pen.moveTo(start[0] + x, start[1] + y);
  for (const one of edges.flat()) draw(one);
  if (closed) pen.closePath();
}
