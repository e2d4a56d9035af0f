/** The sheets of a pattern small, beside each other as they are glued, with the outlines across them. Millimetres. */
import { bandsIn, moveToBand } from "../../paper/bands.ts";
import type { DrawnSheet } from "../../paper/marks.ts";
import { MARGIN } from "../../paper/paper.ts";
import type { Ink } from "../../paper/pattern-sheet.ts";
import { type Tile, type Tiling, tileAt } from "../../paper/tiles.ts";
import { pathOf } from "./sheet-picture.ts";

export interface MapTile {
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** Which sheet of the document it is, counted from 0. */
  readonly sheet: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A window on the lines: where it stands on the map, and where in the drawing. */
export interface MapBand {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  /** How far its top is from that of the drawing. */
  readonly from: number;
}

export interface PageMap {
  readonly width: number;
  readonly height: number;
  /** Where each sheet stands on the map. */
  readonly tiles: readonly MapTile[];
  /** A tall drawing is cut into bands that stand side by side, from the top of the map. */
  readonly bands: readonly MapBand[];
  /** SVG path data of the lines that are cut along, where they are in the drawing. */
  readonly outlines: string;
}

/** The room for a map on the screen: only how its sides compare counts. */
const ROOM = { width: 9, height: 20 };

/** Thinner lines than those that are cut along would only blacken the map. */
const CUT = 0.6;

interface Tiled extends DrawnSheet {
  readonly tile: Tile;
}

/** The maps of the drawings that are spread over several sheets each, in the order of the sheets. */
export function mapsOf(sheets: readonly DrawnSheet[]): PageMap[] {
  const runs: Map<number, Tiled>[] = [];
  for (const [i, sheet] of sheets.entries()) {
    if (!sheet.tile) continue;
    const [run, before] = [runs.at(-1), sheets[i - 1]?.tile];
    const isNext =
      before &&
      (sheet.tile.row > before.row || (sheet.tile.row === before.row && sheet.tile.column > before.column));
    if (run && isNext) run.set(i, sheet as Tiled);
    else runs.push(new Map([[i, sheet as Tiled]]));
  }
  return runs.filter(({ size }) => size > 1).map(mapOf);
}

function mapOf(sheets: ReadonlyMap<number, Tiled>): PageMap {
  const all = [...sheets.values()].map(({ tile }) => tile);
  const tiling: Tiling = {
    columns: 1 + Math.max(...all.map(({ column }) => column)),
    rows: 1 + Math.max(...all.map(({ row }) => row)),
    wide: all[0]!.window.right - all[0]!.window.left,
    tall: all[0]!.window.high - all[0]!.window.low,
  };
  const bands = bandsIn(tiling, ROOM);
  const tiles = [...sheets].map(([sheet, { tile }]): MapTile => {
    const { name, column, row, window } = tile;
    const [x, y] = moveToBand(bands, tiling, row);
    const [left, top] = [window.left + x, window.low + y];
    return { name, column, row, sheet, left, top, width: tiling.wide, height: tiling.tall };
  });
  // Each line stands on every sheet that it crosses, moved to the place of that sheet.
  const seen = new Set<Ink>();
  const outlines: string[] = [];
  for (const { tile, marks } of sheets.values()) {
    for (const mark of marks) {
      if (mark.is !== "ink" || mark.ink.width < CUT || seen.has(mark.ink)) continue;
      seen.add(mark.ink);
      const [x, y] = [mark.x - MARGIN + tile.window.left, mark.y - MARGIN + tile.window.low];
      outlines.push(pathOf({ ink: mark.ink, x, y }));
    }
  }
  return {
    width: Math.max(...tiles.map(({ left, width }) => left + width)),
    height: Math.max(...tiles.map(({ top, height }) => top + height)),
    tiles,
    bands: Array.from({ length: bands.count }, (_, band): MapBand => {
      const [first, last] = [band * bands.rows, Math.min(tiling.rows, (band + 1) * bands.rows) - 1];
      const [left, up] = moveToBand(bands, tiling, first);
      const end = tileAt(tiling, tiling.columns - 1, last).window;
      return { left, width: end.right, height: end.high + up, from: -up };
    }),
    outlines: outlines.join(""),
  };
}

/** The nearest sheet below another on the map, or above it with -1; null where nothing is printed there. */
export function tileBeside({ tiles }: PageMap, sheet: number, down: 1 | -1): number | null {
  const from = tiles.find((one) => one.sheet === sheet);
  const along = tiles.filter(({ column, row }) => column === from?.column && (row - from.row) * down > 0);
  const near = Math.min(...along.map(({ row }) => row * down));
  return along.find(({ row }) => row * down === near)?.sheet ?? null;
}
