/** The seam of a sleeve from the underarm down. It begins along the grain, square to the cap, so that the cap has no corner where the seam is closed. */
import { curveBetween } from "../geometry/curve-between.ts";
import { distance, type Edge, type Point, toward } from "../geometry/strokes.ts";

/** A curve that begins straight down and comes over into the line from its beginning to its end. */
export const curveFromUpright = (from: Point, to: Point): Edge => [
  curveBetween({ at: from, speed: [0, 1] }, { at: to, speed: toward(from, to) }, distance(from, to)),
];

/** Two curves through three places that begin straight down; between them they run half-way between both chords' directions. */
export function smoothFromUpright([a, b, c]: readonly [Point, Point, Point]): Edge {
  const [first, second] = [toward(a, b), toward(b, c)];
  const through = toward([0, 0], [first[0] + second[0], first[1] + second[1]]);
  // At its end a curve leaves its chord by as much as at its beginning, on the other side.
  const along = 2 * (through[0] * second[0] + through[1] * second[1]);
  const last: Point = [along * second[0] - through[0], along * second[1] - through[1]];
  return [
    curveBetween({ at: a, speed: [0, 1] }, { at: b, speed: through }, distance(a, b)),
    curveBetween({ at: b, speed: through }, { at: c, speed: last }, distance(b, c)),
  ];
}
