/** The map of a pattern: all its sheets small, with the pieces across them. */

import { type Bounds, boundingBox, type Point } from "../../functions/geometry/strokes.ts";
import { flattenPiece } from "../../functions/pieces/piece.ts";
import { type Bands, bandsIn, moveToBand } from "./bands.ts";
import type { PdfDocument } from "./document.ts";
import { OVERLAP } from "./paper.ts";
import type { PatternSheet } from "./pattern-sheet.ts";
import { tileAt } from "./tiles.ts";

/** The narrowest sheet on a map whose name can be read. */
const NARROWEST = 6;
/** The height of the words on a map: of a sheet's name, of a piece's, and the least that can be read. */
const SIZES = { sheet: 2.4, piece: 2.6, least: 1.4 };
/** How far down a sheet the name of a piece stands, as a share of its height. */
const UNDER_NAME = 0.72;
/** The most letters of a piece's name. */
const MOST_LETTERS = 40;

const bandsFor = ({ tiling }: PatternSheet, { left, right, low, high }: Bounds): Bands =>
  bandsIn(tiling, { width: right - left, height: high - low });

/** Whether the names of the sheets can be read on a map in this room. */
export const isLegible = (sheet: PatternSheet, room: Bounds): boolean =>
  bandsFor(sheet, room).part * sheet.tiling.wide >= NARROWEST;

/** Draws the map; a sheet that is not printed is grey. A name that would be too small to read is left out. */
export function patternMap(doc: PdfDocument, sheet: PatternSheet, room: Bounds): void {
  const { tiling } = sheet;
  const { columns, rows } = tiling;
  const bands = bandsFor(sheet, room);
  const { part } = bands;
  const printed = new Set(sheet.tiles.map(({ name }) => name));
  const pieces = sheet.pieces.map(({ title, piece }) => ({ title, outline: flattenPiece(piece, 1) }));
  for (let first = 0; first < rows; first += bands.rows) {
    const [moveX, moveY] = moveToBand(bands, tiling, first);
    const at = ([x, y]: Point): Point => [room.left + (x + moveX) * part, room.low + (y + moveY) * part];
    const last = Math.min(rows, first + bands.rows) - 1;
    for (let row = first; row <= last; row += 1)
      for (let column = 0; column < columns; column += 1) {
        const { name, window } = tileAt(tiling, column, row);
        const [x, y] = at([window.left, window.low]);
        // The strip in common is shown with the right or lower sheet.
        const wide = (window.right - window.left - (column < columns - 1 ? OVERLAP : 0)) * part;
        const tall = (window.high - window.low - (row < last ? OVERLAP : 0)) * part;
        if (!printed.has(name)) doc.shade(x, y, wide, tall, 0.85);
        doc.box(x, y, wide, tall, 0.15);
        const size = sizeWithin(doc, name, SIZES.sheet, wide - 1);
        if (printed.has(name) && size !== null) doc.text(name, x + 0.6, y + 0.4 + size, { size });
      }
    const [x, y] = at([0, tileAt(tiling, 0, first).window.low]);
    const end = at([tileAt(tiling, columns - 1, last).window.right, tileAt(tiling, 0, last).window.high]);
    doc.clip(x, y, end[0] - x, end[1] - y);
    const band = { low: y, high: end[1], sheet: (tiling.tall - OVERLAP) * part };
    for (const { title, outline } of pieces) drawPiece(doc, title, outline.map(at), band);
    doc.unclip();
  }
}

function drawPiece(
  doc: PdfDocument,
  title: string,
  outline: readonly Point[],
  band: { readonly low: number; readonly high: number; readonly sheet: number },
): void {
  const { left, right, low, high } = boundingBox(outline);
  if (high < band.low || low > band.high) return;
  const edges = outline.map((from, i) => ({
    kind: "line" as const,
    from,
    to: outline[(i + 1) % outline.length]!,
  }));
  const subpaths = [{ start: outline[0]!, edges: [edges], closed: true }];
  doc.ink({ subpaths, width: 0.3, dashes: [], filled: false }, 0, 0);
  const text = title.slice(0, MOST_LETTERS);
  const size = sizeWithin(doc, text, SIZES.piece, right - left - 1);
  if (size === null) return;
  // In the middle of the part that this band shows, beneath the names of the sheets there.
  const middle = (Math.max(low, band.low) + Math.min(high, band.high)) / 2;
  const row = Math.floor((middle - band.low) / band.sheet);
  const usual = band.low + (row + UNDER_NAME) * band.sheet;
  const y = Math.min(high - 0.5, Math.max(low + size, usual));
  doc.text(text, (left + right) / 2, y, { size, align: "middle" });
}

/** The size at which a text is no longer than a length, at most `usual`; null where it could not be read. */
function sizeWithin(doc: PdfDocument, text: string, usual: number, length: number): number | null {
  const size = Math.min(usual, (usual * length) / doc.measure(text, usual));
  return size >= SIZES.least ? size : null;
}
