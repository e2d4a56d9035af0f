/** A tall drawing over many sheets, shown small: cut between rows of sheets into bands that stand side by side. Millimetres of the drawing, but for the room. */

import { OVERLAP } from "./paper.ts";
import { type Tiling, tileAt } from "./tiles.ts";

export interface Bands {
  /** How many rows of sheets a band has; the last may have fewer. */
  readonly rows: number;
  readonly count: number;
  /** How far the left border of a band is from that of the next. */
  readonly step: number;
  /** How large a millimetre of the drawing is shown. */
  readonly part: number;
}

/** What is free between two bands, as a share of a sheet's width. */
const GAP = 0.3;

/** How far from the top the sheets of a row begin. */
const topOf = ({ tall }: Tiling, row: number): number => row * (tall - OVERLAP);

/** The bands in which the sheets of a drawing are shown largest in a room of this size. */
export function bandsIn(tiling: Tiling, room: { readonly width: number; readonly height: number }): Bands {
  const wide = tileAt(tiling, tiling.columns - 1, 0).window.right;
  const step = wide + GAP * tiling.wide;
  let best: Bands | null = null;
  for (let count = 1; count <= tiling.rows; count += 1) {
    const rows = Math.ceil(tiling.rows / count);
    if ((count - 1) * rows >= tiling.rows) continue;
    const height = topOf(tiling, rows - 1) + tiling.tall;
    const part = Math.min(room.width / ((count - 1) * step + wide), room.height / height);
    if (!best || part > best.part) best = { rows, count, step, part };
  }
  return best!;
}

/** By how much what lies in a row of sheets is moved to its band. */
export function moveToBand(bands: Bands, tiling: Tiling, row: number): readonly [x: number, y: number] {
  const band = Math.floor(row / bands.rows);
  return [band * bands.step, -topOf(tiling, band * bands.rows)];
}
