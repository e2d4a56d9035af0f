/** How tall the grid is for a page, and the frame of nothing that the library is given. */
import { MOST_ROWS } from "../../book/shape.ts";

/** Blank rows below the page's own, at least; a page is shown with at least `FEWEST` rows. */
const SPARE = 10;
const FEWEST = 30;

/** How many rows are shown for a page of `rows` rows: in steps of ten, so that typing past the end seldom makes the grid anew. */
export const rowsShown = (rows: number): number =>
  Math.min(MOST_ROWS, Math.max(FEWEST, Math.ceil(rows / 10) * 10 + SPARE));

/** Only how tall and wide the page is. Frozen: a write past the hooks throws instead of becoming a second truth. */
export function shape(tall: number, wide: number): null[][] {
  const row = Object.freeze(Array<null>(wide).fill(null)) as null[];
  return Array.from({ length: tall }, () => row);
}
