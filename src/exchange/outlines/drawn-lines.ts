/** The lines of a drawing as strokes, from path data and the map that places them. */

import SvgPath from "svgpath";
import { readPath } from "../../../functions/geometry/path.ts";
import {
  type Bounds,
  distance,
  type Edge,
  line,
  type Point,
  type Stroke,
} from "../../../functions/geometry/strokes.ts";
import { phrase } from "../../../functions/phrase.ts";
import type { Role } from "../../../functions/pieces/piece.ts";
import { collapses, type Matrix } from "./affine.ts";

/** A line of the drawing, in the drawing's own units with y downwards. */
export interface DrawnLine {
  /** What the drawing calls it; empty when it has no name of its own. */
  readonly name: string;
  readonly strokes: Edge;
  /** The last stroke ends where the first begins. */
  readonly closed: boolean;
  /** What its name says it is: a fold, the grain. */
  readonly role?: Role;
  /** The text of the piece that Ellwand drew this line for. */
  readonly piece?: string;
  /** Whether Ellwand drew it as a mark on the piece. */
  readonly isAid?: boolean;
}

/** What a file's reader gives. */
export interface Drawing {
  readonly lines: readonly DrawnLine[];
  /** Millimetres in one unit of the drawing; null when the file does not say. */
  readonly millimetres: number | null;
  /** How the size was understood, in a sentence. */
  readonly size: string;
  /** The page that the drawing stands on, where the file has one. */
  readonly page?: Bounds;
  /** What was ignored or is uncertain, a sentence each. */
  readonly said: readonly string[];
}

/** The most strokes that a drawing may have in all. */
export const MOST_STROKES = 100_000;

/** The largest coordinate that is read; of a drawing in thousandths of a millimetre, 100 m. */
const FARTHEST = 1e8;

/** An arc whose radii agree to this share is an arc of a circle: the difference comes from the turning of the figures. */
const ROUND = 1e-9;

/**
 * The subpaths of path data after a map. Lines, circular arcs and cubic curves stay what they are,
 * quadratic curves are raised to cubic ones exactly, elliptical arcs become cubic curves of at most 15°,
 * which stray by less than 1e-8 of their greater radius (0.00002 mm at 2 m). Throws an Error with a
 * sentence when the data make no sense.
 */
export function linesOf(d: string, matrix: Matrix): Pick<DrawnLine, "strokes" | "closed">[] {
  if (/^\s*(?:none)?\s*$/.test(d)) return [];
  if (collapses(matrix)) throw new Error(phrase`its transform presses it flat`);
  const path = new SvgPath(d) as ReturnType<typeof SvgPath> & { readonly err?: string };
  if (path.err) throw new Error(phrase`its path data make no sense (${path.err.replace(/^SvgPath: /, "")})`);
  const placed = path
    .abs()
    .unshort()
    .matrix([...matrix])
    .iterate((segment) => {
      if (segment[0] !== "A") return;
      const [rx, ry] = [segment[1], segment[2]];
      if (Math.abs(rx - ry) > ROUND * Math.max(rx, ry)) return;
      segment[1] = (rx + ry) / 2;
      segment[2] = segment[1];
    })
    .toString();
  return readPath(placed).flatMap(({ start, edges, closed }) => {
    const strokes = edges.flat().filter(hasLength);
    if (strokes.some(({ to }) => Math.max(Math.abs(to[0]), Math.abs(to[1])) > FARTHEST))
      throw new Error(phrase`it reaches farther than ${FARTHEST.toLocaleString("en")} units of the drawing`);
    const end = strokes.at(-1)?.to;
    if (!end) return [];
    const gap = distance(end, start);
    const size = strokes.reduce((sum, stroke) => sum + distance(stroke.from, stroke.to), 0);
    if (closed && gap > 0) return [{ strokes: [...strokes, line(end, start)], closed }];
    return [{ strokes, closed: closed || gap <= 1e-9 * size }];
  });
}

const hasLength = (stroke: Stroke): boolean =>
  distance(stroke.from, stroke.to) > 0 ||
  (stroke.kind === "curve" && (distance(stroke.from, stroke.c1) > 0 || distance(stroke.to, stroke.c2) > 0)) ||
  stroke.kind === "arc";

/** Strokes moved by (dx, dy) and then enlarged about (0, 0). */
export const placedStrokes = (strokes: Edge, dx: number, dy: number, factor: number): Edge => {
  const at = ([x, y]: Point): Point => [(x + dx) * factor, (y + dy) * factor];
  return strokes.map((stroke) => {
    const ends = { from: at(stroke.from), to: at(stroke.to) };
    if (stroke.kind === "line") return { kind: "line", ...ends };
    if (stroke.kind === "curve") return { kind: "curve", ...ends, c1: at(stroke.c1), c2: at(stroke.c2) };
    return { ...stroke, ...ends, centre: at(stroke.centre), radius: stroke.radius * factor };
  });
};
