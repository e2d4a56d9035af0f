/** Strips of paper by which a row of places is marked along an edge. */
import type { EdgeStrip, StripMark } from "../define.ts";

/** A row of points; `says` is what stands at each, such as "eyelet", and may be left out. */
export const rowStrip = (edge: number, places: readonly number[], says = ""): EdgeStrip => ({
  length: edge,
  marks: places.map((at, i): StripMark => ({ at, role: "notch", says: `${says} ${i + 1}`.trim() })),
});

/** Places on an edge of unknown length: the strip ends at the last place. */
export const openStrip = (places: readonly number[]): EdgeStrip => ({
  ...rowStrip(Math.max(0, ...places), places),
  goesOn: true,
});
