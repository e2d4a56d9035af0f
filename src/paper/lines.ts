/** Straight lines as ink. Millimetres. */
import type { Point } from "../../functions/geometry/strokes.ts";
import type { Role } from "../../functions/pieces/piece.ts";
import { LINES } from "../engine/true-scale-sheet.ts";
import type { Ink } from "./pattern-sheet.ts";

/** A run of straight lines through points, each at least two. */
export function straight(
  points: readonly Point[],
  width: number,
  { dashes = [] as readonly number[], closed = false, filled = false } = {},
): Ink {
  const all = closed ? [...points, points[0]!] : points;
  const edge = all.slice(1).map((to, i) => ({ kind: "line" as const, from: all[i]!, to }));
  return { subpaths: [{ start: points[0]!, edges: [edge], closed }], width, dashes, filled };
}

/** A line in the manner of its role. */
export function roleLine(points: readonly Point[], role: Role): Ink {
  const [width, ...dashes] = LINES[role];
  return straight(points, width, { dashes });
}

/** An arrow's head at a point; the direction has length 1. */
export const arrowHead = ([x, y]: Point, [dx, dy]: Point, long = 2.4): Ink =>
  straight(
    [
      [x, y],
      [x - dx * long - dy * long * 0.35, y - dy * long + dx * long * 0.35],
      [x - dx * long + dy * long * 0.35, y - dy * long - dx * long * 0.35],
    ],
    0.1,
    { closed: true, filled: true },
  );
