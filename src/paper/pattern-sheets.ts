/** The pattern on paper: a first sheet with test squares, legend and map, then every sheet that has a line on it. */

import type { Bounds } from "../../functions/geometry/strokes.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { flattenPiece } from "../../functions/pieces/piece.ts";
import { ROLE_WORDS } from "../engine/roles.ts";
import { LINES } from "../engine/true-scale-sheet.ts";
import type { PdfDocument, Sheet } from "./document.ts";
import { fitted, fittedTitle, isoDay, wrapped } from "./flow.ts";
import { MARGIN, type Paper } from "./paper.ts";
import { isLegible, patternMap } from "./pattern-map.ts";
import { HEAD, type PatternSheet } from "./pattern-sheet.ts";
import { hasAllowances } from "./pattern-words.ts";
import { tiledSheets, tileFoot } from "./tiled.ts";

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
  const room = { left: MARGIN, right: width - MARGIN, low: MARGIN, high: (paper.height ?? 0) - MARGIN };
  const hasOwnMap = !paper.isLarge && !isLegible(sheet, { ...room, ...besideSquares(sheet, room) });
  const count = sheet.tiles.length + (paper.isLarge ? 0 : 1) + (hasOwnMap ? 1 : 0);
  const height = paper.height ?? sheet.tiling.tall + 2 * MARGIN;
  const about = { paper, heading, sheets: count };
  const heads = paper.isLarge ? (doc: PdfDocument) => head(doc, sheet, about) : null;
  const manner = { title: heading.title, day: heading.day, says: phrase`scale ${heading.scale}` };
  const parts = sheet.pieces.map(({ text, piece }) => ({ text, outline: flattenPiece(piece, 1) }));
  const tiles = tiledSheets({ ...sheet, parts }, paper, manner, heads);
  if (paper.isLarge) return tiles;
  const before = (name: string, draw: (doc: PdfDocument) => void): Sheet => ({
    width,
    height,
    draw(doc, number, of) {
      draw(doc);
      tileFoot(doc, manner, { width, height, name, number, of });
    },
  });
  const front = before(phrase`Pattern`, (doc) => smallFront(doc, sheet, about, { room, hasOwnMap }));
  const map = before(phrase`Map`, (doc) => patternMap(doc, sheet, room));
  return hasOwnMap ? [front, map, ...tiles] : [front, ...tiles];
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

/** How far the legend is from the left border of the paper's room, beside the test squares. */
const BESIDE = 110;
/** The most that the words above the squares take. */
const WORDS = 60;

/** About the room that the first sheet of small paper has for a map, beneath the legend. */
const besideSquares = ({ roles }: PatternSheet, { left, low }: Bounds): Pick<Bounds, "left" | "low"> => ({
  left: left + BESIDE,
  low: low + WORDS + 5 * (roles.length + 1) + 6,
});

/** The sheet before the others, for paper that is too small to hold this beside the pattern. */
function smallFront(
  doc: PdfDocument,
  sheet: PatternSheet,
  about: About,
  { room, hasOwnMap }: { readonly room: Bounds; readonly hasOwnMap: boolean },
): void {
  const top = Math.max(room.low + 45, words(doc, sheet, about, room) + 1);
  square(doc, 0, room.left, top);
  square(doc, 1, room.left, top + 103);
  const left = room.left + BESIDE;
  const low = legend(doc, sheet, left, top);
  if (hasOwnMap) doc.text(phrase`The map is on the next sheet.`, left, low + 6, { size: 3.4 });
  else patternMap(doc, sheet, { ...room, left, low: low + 3 });
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
  if (hasMap) patternMap(doc, sheet, { left: right - 105, right, low: top, high: MARGIN + HEAD - 5 });
}
