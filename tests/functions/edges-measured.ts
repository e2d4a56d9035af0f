/** What the tests of drafts share: edges measured by a general-purpose curve library, turns between directions, random measurements. */
import { Bezier } from "bezier-js";
import fc from "fast-check";
import { distance, type Edge, type Point } from "../../functions/geometry/strokes.ts";

/** The length of an edge of lines and curves, measured by a library that the drafts do not use. */
export const lengthOf = (edge: Edge): number =>
  edge.reduce((sum, stroke) => {
    if (stroke.kind === "line") return sum + distance(stroke.from, stroke.to);
    if (stroke.kind !== "curve") throw new Error("lines and curves");
    return sum + new Bezier(...[stroke.from, stroke.c1, stroke.c2, stroke.to].flat()).length();
  }, 0);

/** The angle from one direction to another, in radians. */
export const turn = (a: Point, b: Point): number =>
  Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);

/** Random figures between two, both included. */
export const spread = (min: number, max: number) => fc.double({ min, max, noNaN: true });
