/** The pattern on paper: a first sheet with test squares, legend and map, then every sheet that has a line on it. */

import { type Bounds, boundingBox, type Point } from "../../functions/geometry/strokes.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { flattenPiece } from "../../functions/pieces/piece.ts";
import { ROLE_WORDS } from "../engine/roles.ts";
import { LINES } from "../engine/true-scale-sheet.ts";
import type { PdfDocument, Sheet } from "./document.ts";
import { fitted, fittedTitle, isoDay, wrapped } from "./flow.ts";
import { MARGIN, OVERLAP, type Paper } from "./paper.ts";
import { HEAD, type PatternSheet } from "./pattern-sheet.ts";
import { hasAllowances } from "./pattern-words.ts";
import { tiledSheets, tileFoot } from "./tiled.ts";
import { tileAt } from "./tiles.ts";

export interface Heading {
  /** The book's title. */
  readonly title: string;
  /** What is printed, such as "all 6 pieces". */
  readonly what: string;
  /** For whom, of which day and version; "" when nothing of it is known. */
  readonly whose: string;
  /** The scale by its name, such as "1/4". */
  readonly scale: string;
  /** The day of printing. */
  readonly day: Date;
  /** What is left out on purpose, in sentences. */
  readonly notes: readonly string[];
}

/** The sheets of the pattern, its first sheet with squares and map among them. */
export function patternSheets(sheet: PatternSheet, paper: Paper, heading: Heading): Sheet[] {
  const { width } = paper;
  const count = sheet.tiles.length + (paper.isLarge ? 0 : 1);
  const height = paper.height ?? sheet.tiling.tall + 2 * MARGIN;
  const about = { paper, heading, sheets: count };
  const heads = paper.isLarge ? (doc: PdfDocument) => head(doc, sheet, about) : null;
  const manner = { title: heading.title, day: heading.day, says: phrase`scale ${heading.scale}` };
  const parts = sheet.pieces.map(({ text, piece }) => ({ text, outline: flattenPiece(piece, 1) }));
  const tiles = tiledSheets({ ...sheet, parts }, paper, manner, heads);
  if (paper.isLarge) return tiles;
  const front: Sheet = {
    width,
    height,
    draw(doc, number, of) {
      const room = { left: MARGIN, right: width - MARGIN, low: MARGIN, high: height - MARGIN };
      smallFront(doc, sheet, about, room);
      tileFoot(doc, manner, { width, height, name: phrase`Pattern`, number, of });
    },
  };
  return [front, ...tiles];
}

interface About {
  readonly paper: Paper;
  readonly heading: Heading;
  readonly sheets: number;
}

/** The sides of the test squares: true at every scale, because they measure the printer. */
const SQUARES = [
  { side: 100, says: "10 cm" },
  { side: 101.6, says: "4 in" },
] as const;

export function square(doc: PdfDocument, at: 0 | 1, x: number, y: number): void {
  const { side, says } = SQUARES[at];
  doc.box(x, y, side, side, 0.25);
  doc.text(phrase`${says} each way`, x + side / 2, y + side / 2, { size: 5, align: "middle" });
}

function headLines(sheet: PatternSheet, { paper, heading, sheets }: About): string[] {
  const isFull = heading.scale === "1";
  return [
    phrase`${heading.what}, printed ${isoDay(heading.day)}`,
    ...(heading.whose === "" ? [] : [heading.whose]),
    isFull ? phrase`Full size.` : phrase`A model: ${heading.scale} of full size.`,
    phrase`${plural(sheets, "# sheet", "# sheets")} of ${paper.name}.`,
    phrase`Print at 100 %; the squares must measure as they say.`,
    ...(sheet.tiles.length > 1
      ? [
          phrase`Cut along the left and upper border of a sheet.`,
          phrase`Lay it on the dashed lines of its neighbours, cross on cross.`,
        ]
      : []),
  ];
}

/** The most lines of what is left out: the head of large paper has no room for more. */
const MOST_NOTES = 3;

/** Draws the title, the remarks and the legend of lines. Returns the y beneath them. */
function words(doc: PdfDocument, sheet: PatternSheet, about: About, { left, right, low }: Bounds): number {
  const { heading } = about;
  const within = right - left;
  doc.text(fittedTitle(doc, heading.title, 6, within, true), left, low + 6, { size: 6, bold: true });
  let y = low + 12;
  for (const line of headLines(sheet, about)) {
    doc.text(fitted(doc, line, 3.6, within), left, y, { size: 3.6 });
    y += 5;
  }
  const notes = heading.notes.flatMap((note) => wrapped(doc, note, 3, within));
  for (const line of notes.slice(0, MOST_NOTES - 1)) {
    doc.text(line, left, y, { size: 3 });
    y += 4;
  }
  const rest = notes.slice(MOST_NOTES - 1).join(" ");
  if (rest) {
    doc.text(fitted(doc, rest, 3, within), left, y, { size: 3 });
    y += 4;
  }
  return y;
}

function legend(doc: PdfDocument, { roles, pieces }: PatternSheet, left: number, top: number): number {
  const lines = roles.map((role) => ({ line: LINES[role], says: ROLE_WORDS[role] as string }));
  // The outline of a piece without marked allowances is drawn as a cut line is.
  if (pieces.some(({ piece }) => !hasAllowances(piece)))
    lines.push({ line: LINES.cut, says: phrase`outline` });
  for (const [i, { line, says }] of lines.entries()) {
    const [width, ...dashes] = line;
    const y = top + 3 + i * 5;
    doc.line(left, y, left + 14, y, width, dashes);
    doc.text(says, left + 17, y + 1.2, { size: 3.4 });
  }
  return top + 3 + lines.length * 5;
}

/** The sheet before the others, for paper that is too small to hold this beside the pattern. */
function smallFront(doc: PdfDocument, sheet: PatternSheet, about: About, room: Bounds): void {
  const top = Math.max(room.low + 45, words(doc, sheet, about, room) + 1);
  square(doc, 0, room.left, top);
  square(doc, 1, room.left, top + 103);
  const left = room.left + 110;
  const low = legend(doc, sheet, left, top);
  map(doc, sheet, { left, right: room.right, low: low + 3, high: room.high });
}

/** The same at the top of large paper. */
function head(doc: PdfDocument, sheet: PatternSheet, about: About): void {
  const [left, top] = [MARGIN + 3, MARGIN + 3];
  square(doc, 0, left, top);
  square(doc, 1, left + 104, top);
  const beside = left + 212;
  const right = MARGIN + sheet.tiling.wide - 3;
  const hasMap = sheet.tiles.length > 1 && right - beside > 200;
  const room = { left: beside, right: hasMap ? right - 110 : right, low: top, high: MARGIN + HEAD };
  legend(doc, sheet, beside, words(doc, sheet, about, room));
  if (hasMap) map(doc, sheet, { left: right - 105, right, low: top, high: MARGIN + HEAD - 5 });
}

/** All sheets small, with the pieces across them; a sheet that is not printed is grey. */
function map(doc: PdfDocument, sheet: PatternSheet, room: Bounds): void {
  const { columns, rows } = sheet.tiling;
  const last = tileAt(sheet.tiling, columns - 1, rows - 1).window;
  const part = Math.min((room.right - room.left) / last.right, (room.high - room.low) / last.high);
  const at = ([x, y]: Point): Point => [room.left + x * part, room.low + y * part];
  const printed = new Set(sheet.tiles.map(({ name }) => name));
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const { name, window } = tileAt(sheet.tiling, column, row);
      const [x, y] = at([window.left, window.low]);
      // The strip in common is shown with the right or lower sheet.
      const wide = (window.right - window.left - (column < columns - 1 ? OVERLAP : 0)) * part;
      const tall = (window.high - window.low - (row < rows - 1 ? OVERLAP : 0)) * part;
      if (!printed.has(name)) doc.shade(x, y, wide, tall, 0.85);
      doc.box(x, y, wide, tall, 0.15);
      if (printed.has(name)) doc.text(name, x + 0.6, y + 2.8, { size: 2.4, within: Math.max(1, wide - 1) });
    }
  for (const { title, piece } of sheet.pieces) {
    const outline = flattenPiece(piece, 1).map(at);
    const edges = outline.map((from, i) => ({
      kind: "line" as const,
      from,
      to: outline[(i + 1) % outline.length]!,
    }));
    doc.ink(
      {
        subpaths: [{ start: outline[0]!, edges: [edges], closed: true }],
        width: 0.3,
        dashes: [],
        filled: false,
      },
      0,
      0,
    );
    const { left, right, low, high } = boundingBox(outline);
    doc.text(title.slice(0, 40), (left + right) / 2, (low + high) / 2 + 1, {
      size: 2.6,
      align: "middle",
      within: right - left - 1,
    });
  }
}
