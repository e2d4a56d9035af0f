/** Things set evenly in a row along an edge, no farther apart than wanted: eyelets, hooks. */
import type { CallContext, StepValues, Takes } from "../define.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import type { Shape } from "../drawing/shapes.ts";
import { roundUpToWhole } from "../whole-number.ts";

/** What is kept clear at either end of the edge of an even row. */
export const ROW_ENDS = {
  top: {
    kind: "length",
    about: "distance from the upper end to the first",
    from: 0,
    to: 100,
    otherwise: 0,
  },
  bottom: {
    kind: "length",
    about: "distance from the last to the lower end",
    from: 0,
    to: 500,
    otherwise: 0,
  },
} as const satisfies Takes;

/** Places at even distances, the first at `first`. */
export const evenPlaces = (count: number, first: number, spacing: number): number[] =>
  Array.from({ length: count }, (_, i) => first + i * spacing);

interface EvenRow {
  readonly edge: number;
  /** The most from one thing to the next. */
  readonly spacing: number;
  /** From each end of the edge to the nearest thing. */
  readonly inset: number;
}

/**
 * How many stand in the row: at least 2, or 1 where nothing is left between the spaces kept clear. Notes the steps
 * "end", "row", "gaps", "actual_spacing" and "count".
 */
export function evenRowCount({ edge, spacing, inset }: EvenRow, { step }: Pick<CallContext, "step">): number {
  const end = step("end", "inset", inset);
  const row = step("row", "edge - 2 * end", rowBetween(edge, end, end));
  return countInRow(row, spacing, step);
}

/** How many stand in a row of this length. Notes the steps "gaps", "actual_spacing" and "count". */
export function countInRow(row: number, spacing: number, step: CallContext["step"]): number {
  const gaps = step("gaps", "ROUNDUP(ROUND(row / spacing; 8); 0)", roundUpToWhole(row / spacing));
  step("actual_spacing", "row / MAX(1; gaps)", row / Math.max(1, gaps));
  return step("count", "gaps + 1", gaps + 1);
}

/** The row on its edge, from the steps of `evenRowCount`; `label` names the things. */
export function drawEvenRow(
  edge: number,
  { end = 0, actual_spacing = 0, count = 0 }: StepValues,
  label: string,
): Shape[] {
  const places = evenPlaces(count, end, actual_spacing);
  return drawRow(edge, places, label, { marksShow: "count", gapShows: "actual_spacing" });
}
