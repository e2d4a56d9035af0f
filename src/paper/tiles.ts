/** Sheets of paper laid over a large drawing, each with a strip in common with its neighbours. Millimetres. */
import type { Bounds, Point } from "../../functions/geometry/strokes.ts";
import { crosses } from "../engine/label-places.ts";
import { LONGEST, MARGIN, OVERLAP, type Paper } from "./paper.ts";

export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  /** The part of a sheet that is printed on. */
  readonly wide: number;
  readonly tall: number;
}

export interface Tile {
  /** A letter for the column and a number for the row, such as "B3". */
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** The part of the drawing that the sheet shows. */
  readonly window: Bounds;
}

/** The width of a drawing that is some sheets wide. */
export const widthOf = (paper: Paper, columns: number): number =>
  columns * (paper.width - 2 * MARGIN - OVERLAP) + OVERLAP;

/** Sheets in rows and columns that hold a drawing of this size. */
export function tilingOf(paper: Paper, width: number, height: number): Tiling {
  const wide = paper.width - 2 * MARGIN;
  const tall = paper.height === null ? Math.min(height, LONGEST) : paper.height - 2 * MARGIN;
  const count = (length: number, sheet: number) =>
    Math.max(1, Math.ceil((length - OVERLAP) / (sheet - OVERLAP) - 1e-9));
  return { columns: count(width, wide), rows: count(height, tall), wide, tall };
}

/** The letters of a column: A to Z, then AA and so on. */
function letters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : `${letters(Math.floor(column / 26) - 1)}${last}`;
}

export const tileName = (column: number, row: number): string => `${letters(column)}${row + 1}`;

/**
 * The sheets that a line runs on, row by row. A line in a strip that two sheets share counts for
 * the right or lower one alone, so a sheet that would only repeat its neighbour is left out.
 */
export function tilesWith(tiling: Tiling, strokes: readonly (readonly Point[])[]): Tile[] {
  const [stepX, stepY] = [tiling.wide - OVERLAP, tiling.tall - OVERLAP];
  const used = new Set<string>();
  const cell = (value: number, step: number, count: number) =>
    Math.max(0, Math.min(count - 1, Math.floor(value / step)));
  for (const stroke of strokes) {
    for (let i = 1; i < stroke.length; i += 1) {
      const [a, b] = [stroke[i - 1]!, stroke[i]!];
      const columns = [a[0], b[0]].map((x) => cell(x, stepX, tiling.columns)).sort((p, q) => p - q);
      const rows = [a[1], b[1]].map((y) => cell(y, stepY, tiling.rows)).sort((p, q) => p - q);
      for (let column = columns[0]!; column <= columns[1]!; column += 1)
        for (let row = rows[0]!; row <= rows[1]!; row += 1) {
          const key = `${column} ${row}`;
          if (used.has(key)) continue;
          // The last column and row reach to the end of their sheet.
          const right = column === tiling.columns - 1 ? Infinity : (column + 1) * stepX;
          const low = row === tiling.rows - 1 ? Infinity : (row + 1) * stepY;
          if (meets(a, b, column * stepX, right, row * stepY, low)) used.add(key);
        }
    }
  }
  const tiles: Tile[] = [];
  for (let row = 0; row < tiling.rows; row += 1)
    for (let column = 0; column < tiling.columns; column += 1)
      if (used.has(`${column} ${row}`)) tiles.push(tileAt(tiling, column, row));
  return tiles;
}

export function tileAt({ wide, tall }: Tiling, column: number, row: number): Tile {
  const [left, low] = [column * (wide - OVERLAP), row * (tall - OVERLAP)];
  return {
    name: tileName(column, row),
    column,
    row,
    window: { left, right: left + wide, low, high: low + tall },
  };
}

function meets(a: Point, b: Point, left: number, right: number, low: number, high: number): boolean {
  const [end, bottom] = [Math.min(right, left + 1e5), Math.min(high, low + 1e5)];
  return crosses(a, b, {
    x: (left + end) / 2,
    y: (low + bottom) / 2,
    halfX: (end - left) / 2,
    halfY: (bottom - low) / 2,
  });
}

/** All the sheets that a drawing of this size needs. */
export function tilesOfBox(paper: Paper, width: number, height: number): { tiling: Tiling; tiles: Tile[] } {
  const tiling = tilingOf(paper, width, height);
  const tiles: Tile[] = [];
  for (let row = 0; row < tiling.rows; row += 1)
    for (let column = 0; column < tiling.columns; column += 1) tiles.push(tileAt(tiling, column, row));
  return { tiling, tiles };
}
