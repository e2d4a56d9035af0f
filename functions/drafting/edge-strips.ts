/** Strips of paper by which a row of places is marked along an edge. */
import type { EdgeStrip, StripMark } from "../define.ts";

/** A row of points; `says` is what stands at the one of a number, such as "eyelet 3": the number alone when it is left out. */
export const rowStrip = (
  edge: number,
  places: readonly number[],
  says: (number: number) => string = String,
): EdgeStrip => ({
  length: edge,
  marks: places.map((at, i): StripMark => ({ at, role: "notch", says: says(i + 1) })),
});

/** Places on an edge of unknown length: the strip ends at the last place. */
export const openStrip = (places: readonly number[]): EdgeStrip => ({
  ...rowStrip(Math.max(0, ...places), places),
  goesOn: true,
});
