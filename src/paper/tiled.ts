/** A large drawing over several sheets of paper: each with its border, what it shares with its neighbours, and crosses to align. Millimetres. */

import { isInPolygon } from "../../functions/geometry/point-in-polygon.ts";
import { type Bounds, boundingBox, distance, flatten, type Point } from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import type { PdfDocument, Sheet } from "./document.ts";
import { fitted, fittedTitle, isoDay } from "./flow.ts";
import { MARGIN, OVERLAP, type Paper } from "./paper.ts";
import type { Ink, Word } from "./pattern-sheet.ts";
import { type Tile, type Tiling, tileName } from "./tiles.ts";

export interface TiledDrawing {
  readonly inks: readonly Ink[];
  readonly words: readonly Word[];
  readonly tiling: Tiling;
  /** The sheets that have something on them. */
  readonly tiles: readonly Tile[];
  /** What lies on it by name: each sheet says of what it has a part. Outlines are closed lines. */
  readonly parts?: readonly { readonly text: string; readonly outline: readonly Point[] }[];
}

export interface TileManner {
  /** The book's title. */
  readonly title: string;
  readonly day: Date;
  /** What the foot of each sheet says, such as the scale. */
  readonly says: string;
}

/** The sheets of a drawing; `onFirst` draws what stands on the first one beside it. */
export function tiledSheets(
  drawing: TiledDrawing,
  paper: Paper,
  manner: TileManner,
  onFirst: ((doc: PdfDocument) => void) | null = null,
): Sheet[] {
  const { width } = paper;
  const height = paper.height ?? drawing.tiling.tall + 2 * MARGIN;
  const bounds = drawing.inks.map(boundsOf);
  return drawing.tiles.map((tile): Sheet => {
    const { window, name } = tile;
    const [x, y] = [MARGIN - window.left, MARGIN - window.low];
    return {
      width,
      height,
      tile,
      draw(doc, number, of) {
        doc.clip(MARGIN, MARGIN, window.right - window.left, window.high - window.low);
        for (const [k, ink] of drawing.inks.entries()) if (overlap(bounds[k]!, window)) doc.ink(ink, x, y);
        for (const { text, at, size } of drawing.words) {
          const half = doc.measure(text, size) / 2;
          const box = { left: at[0] - half, right: at[0] + half, low: at[1] - size, high: at[1] + size };
          if (overlap(box, window))
            doc.text(text, at[0] + x, at[1] + y + 0.35 * size, { size, align: "middle" });
        }
        doc.unclip();
        if (tile.column === 0 && tile.row === 0) onFirst?.(doc);
        frame(doc, drawing, tile);
        namesOn(doc, drawing, tile);
        tileFoot(doc, manner, { width, height, name, number, of });
      },
    };
  });
}

/** The names of what the sheet has a part of, above its border and left of the name of the sheet above. */
function namesOn(doc: PdfDocument, { parts = [] }: TiledDrawing, { window }: Tile): void {
  const middle: Point = [(window.left + window.right) / 2, (window.low + window.high) / 2];
  const names = parts.flatMap(({ text, outline }) =>
    overlap(boundingBox(outline), window) && (crosses(outline, window) || isInPolygon(middle, outline))
      ? [text]
      : [],
  );
  const size = 2.6;
  const words = [...new Set(names)].join("; ");
  const within = (window.right - window.left) / 2 - 8;
  doc.text(fitted(doc, words, size, within), MARGIN, MARGIN - 2.4, { size });
}

/** Whether a closed line has a part of its run within a window; points along it are tried, 2 mm apart. */
function crosses(outline: readonly Point[], { left, right, low, high }: Bounds): boolean {
  return outline.some((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    const steps = Math.ceil(distance(from, to) / 2) || 1;
    for (let k = 0; k < steps; k += 1) {
      const [x, y] = [0, 1].map((axis) => from[axis]! + ((to[axis]! - from[axis]!) * k) / steps) as [
        number,
        number,
      ];
      if (x >= left && x <= right && y >= low && y <= high) return true;
    }
    return false;
  });
}

interface Foot {
  readonly width: number;
  readonly height: number;
  readonly name: string;
  readonly number: number;
  readonly of: number;
}

/** The line at the foot of a sheet, beside the name of the sheet beneath. */
export function tileFoot(
  doc: PdfDocument,
  { title, day, says }: TileManner,
  { width, height, name, number, of }: Foot,
): void {
  const within = width / 2 - MARGIN - 24;
  const [size, left, y] = [2.6, MARGIN + 18, height - MARGIN + 4.2];
  doc.text(name, MARGIN, y, { size: 3.4, bold: true });
  const words = `${phrase`page ${number} of ${of}`}    ${isoDay(day)}    ${says}`;
  doc.text(words, left, y, { size, within });
  // The other half of the foot, to the right of the name of the sheet beneath.
  const right = width - MARGIN;
  doc.text(fittedTitle(doc, title, size, within), right, y, { size, align: "right" });
}

function boundsOf({ subpaths, width }: Ink): Bounds {
  const { left, right, low, high } = boundingBox(
    subpaths.flatMap(({ start, edges }) => [start, ...edges.flat().flatMap((one) => flatten(one, 0.2))]),
  );
  const more = width + 0.5;
  return { left: left - more, right: right + more, low: low - more, high: high + more };
}

const overlap = (a: Bounds, b: Bounds): boolean =>
  a.left <= b.right && a.right >= b.left && a.low <= b.high && a.high >= b.low;

/** The border to cut along, the lines to lay the next sheets on, crosses to align, and the neighbours' names. */
function frame(doc: PdfDocument, { tiling, tiles }: TiledDrawing, { column, row, window }: Tile): void {
  const [wide, tall] = [window.right - window.left, window.high - window.low];
  const end = { x: MARGIN + wide, y: MARGIN + tall };
  doc.box(MARGIN, MARGIN, wide, tall, 0.15);
  const names = new Set(tiles.map(({ name }) => name));
  const beside = (dx: number, dy: number): string | null => {
    const [c, r] = [column + dx, row + dy];
    if (c < 0 || r < 0 || c >= tiling.columns || r >= tiling.rows) return null;
    const name = tileName(c, r);
    return names.has(name) ? name : null;
  };
  const cross = (x: number, y: number) => {
    doc.line(x - 3, y, x + 3, y, 0.2);
    doc.line(x, y - 3, x, y + 3, 0.2);
  };
  const half = OVERLAP / 2;
  const parts = [1 / 4, 3 / 4];
  const [left, right, above, below] = [beside(-1, 0), beside(1, 0), beside(0, -1), beside(0, 1)];
  const size = 3.2;
  const middle = { x: MARGIN + wide / 2, y: MARGIN + tall / 2 };
  if (right) {
    doc.line(end.x - OVERLAP, MARGIN, end.x - OVERLAP, end.y, 0.15, [2, 2]);
    for (const part of parts) cross(end.x - half, MARGIN + part * tall);
    doc.text(right, end.x + half, middle.y, { size, align: "middle" });
  }
  if (left) {
    for (const part of parts) cross(MARGIN + half, MARGIN + part * tall);
    doc.text(left, half, middle.y, { size, align: "middle" });
  }
  if (below) {
    doc.line(MARGIN, end.y - OVERLAP, end.x, end.y - OVERLAP, 0.15, [2, 2]);
    for (const part of parts) cross(MARGIN + part * wide, end.y - half);
    doc.text(below, middle.x, end.y + 4.2, { size, align: "middle" });
  }
  if (above) {
    for (const part of parts) cross(MARGIN + part * wide, MARGIN + half);
    doc.text(above, middle.x, MARGIN - 3, { size, align: "middle" });
  }
}
