/** Things set in a row along an edge: eyelets, buttons, hooks, rings. */

import { isAbove } from "../compared-figures.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { dimension, type Shape, stroke } from "./shapes.ts";

/** The length of an edge between the first and the last thing of a row; refuses when they would pass each other. */
export function rowBetween(edge: number, first: number, last: number): number {
  if (!isAbove(first + last, edge)) return Math.max(0, edge - first - last);
  throw new Refusal(
    (say) =>
      phrase`edge must be at least ${say(first + last, edge)} for the spaces kept clear at its ends, not ${say(edge, first + last)}`,
  );
}

/** An edge upright at x = 0 with things at these distances from its top, the `chosen` one dimensioned from the top. */
export function drawRow(
  edge: number,
  places: readonly number[],
  label: string,
  more: { chosen?: number; chosenShows?: string; marksShow?: string; gapShows?: string } = {},
): Shape[] {
  const out = edge / 12;
  const at = (y: number, x = 0): Point => [x, y];
  const shapes: Shape[] = [
    stroke([at(0), at(edge)], "cut", { label: phrase`edge` }),
    {
      kind: "marks",
      at: places.map((y) => at(y, out / 2)),
      mark: "dot",
      label,
      ...(more.marksShow ? { shows: more.marksShow } : {}),
    },
    dimension(at(0, 3 * out), at(edge, 3 * out), { label: phrase`edge` }),
  ];
  if (more.gapShows && places.length > 1)
    shapes.push(dimension(at(places[0]!, 2 * out), at(places[1]!, 2 * out), { shows: more.gapShows }));
  if (more.chosen !== undefined)
    shapes.push(
      dimension(at(0, -out), at(more.chosen, -out), more.chosenShows ? { shows: more.chosenShows } : {}),
    );
  return shapes;
}
