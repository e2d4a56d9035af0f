/** Marking strips drawn under one another over as many sheets as they are long. Millimetres. */

import type { EdgeStrip } from "../../functions/define.ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Role } from "../../functions/pieces/piece.ts";
import { type Rule, show } from "../engine/show.ts";
import type { Letters } from "./document.ts";
import { fitted } from "./flow.ts";
import { roleLine, straight } from "./lines.ts";
import { MARGIN, OVERLAP, type Paper } from "./paper.ts";
import type { Ink, Word } from "./pattern-sheet.ts";
import type { TiledDrawing } from "./tiled.ts";
import { tilesWith, tilingOf, widthOf } from "./tiles.ts";

export interface TitledStrip {
  readonly strip: EdgeStrip;
  readonly title: string;
}

/** The height of the strip itself, where its lines stand, and the room for its title. */
const BAND = 14;
const TITLE = 7;
const APART = 6;

/** All strips under one another over the width of as many sheets as they need; no strip lies across two rows of sheets. */
export function drawnStrips(
  rule: Rule,
  letters: Letters,
  strips: readonly TitledStrip[],
  paper: Paper,
  size: number,
  factor: number,
): TiledDrawing {
  const inset = 4;
  const longest = Math.max(...strips.map(({ strip }) => strip.length * factor));
  let columns = 1;
  while (widthOf(paper, columns) - 2 * inset < longest) columns += 1;
  const width =
    paper.height === null ? Math.max(longest + 2 * inset, widthOf(paper, 1)) : widthOf(paper, columns);
  const wide = paper.width - 2 * MARGIN;
  const tall = paper.height === null ? Number.POSITIVE_INFINITY : paper.height - 2 * MARGIN;
  const inks: Ink[] = [];
  const words: Word[] = [];
  let y = inset;
  for (const { strip, title } of strips) {
    const flags = flagsOf(letters, rule, strip, { size, factor, inset, step: wide - OVERLAP });
    const rows = flags.reduce((most, { row }) => Math.max(most, row + 1), 0);
    const height = TITLE + BAND + (rows + 0.5) * 1.4 * size;
    const step = tall - OVERLAP;
    const row = Math.floor(y / step);
    if (Number.isFinite(tall) && y + height > row * step + step - 1 && height < tall)
      y = (row + 1) * step + OVERLAP + 1;
    drawStrip({ inks, words }, { strip, title, flags, height, y, inset, size, factor, letters, wide });
    y += height + APART;
  }
  const tiling = tilingOf(paper, width, y + inset);
  const lines = inks.flatMap(({ subpaths }) =>
    subpaths.map(({ start, edges }) => [start, ...edges.flat().map(({ to }) => to)]),
  );
  return { inks, words, tiling, tiles: tilesWith(tiling, lines) };
}

/** Words at a mark, in a row counted from the top. */
interface Flag {
  readonly text: string;
  readonly row: number;
  /** The line that leads to it, and where its words begin and end. */
  readonly x: number;
  readonly from: number;
  readonly to: number;
}

/** Space between a line and its words, and between words. */
const GAP = 0.8;
const MOST_ROWS = 40;

/**
 * Words beside the lines of the marks, in rows in which no words stand on others or on a line. They are placed
 * from the right to the left, so that a line comes down past words that begin after it.
 */
function flagsOf(
  letters: Letters,
  rule: Rule,
  { marks, length }: EdgeStrip,
  { size, factor, inset, step }: { size: number; factor: number; inset: number; step: number },
): Flag[] {
  const placed: Flag[] = [];
  const end = length * factor;
  for (const { at, says } of marks.toReversed()) {
    const text = `${says}  ${show(at, "length", rule)}`;
    const wide = letters.measure(text, size);
    const x = at * factor;
    // Past the border of the next sheet where the words would lie across it; at the left of the line at the end of the strip.
    const border = Math.ceil((x + GAP + inset) / step) * step - inset;
    const start = border < x + GAP + wide ? border + GAP : x + GAP;
    const isLast = start + wide > end && x - GAP - wide > 0;
    const side = isLast ? { from: x - GAP - wide, to: x - GAP } : { from: start, to: start + wide };
    // At the left there is to be room above for the words of the marks beside it.
    const first = isLast ? marks.filter((one) => one.at < at && one.at * factor > side.from - GAP).length : 0;
    const near = placed.filter(({ x: other, from }) => Math.min(other, from) <= side.to + GAP);
    const fits = (row: number) =>
      near.every(
        (one) =>
          (one.row !== row || one.from > side.to + GAP || one.to < side.from - GAP) &&
          (one.row >= row || one.from > x + GAP || one.to < x - GAP) &&
          (one.row <= row || one.x > side.to || one.x < side.from),
      );
    const free = Array.from({ length: MOST_ROWS }, (_, row) => row + first).find(fits);
    const lowest = near.reduce((most, { row }) => Math.max(most, row + 1), 0);
    placed.push({ text, row: free ?? lowest, x, ...side });
  }
  return placed.toReversed();
}

interface StripAt extends TitledStrip {
  readonly flags: readonly Flag[];
  readonly height: number;
  readonly y: number;
  readonly inset: number;
  readonly size: number;
  readonly factor: number;
  readonly letters: Letters;
  readonly wide: number;
}

function drawStrip(
  { inks, words }: { readonly inks: Ink[]; readonly words: Word[] },
  { strip, title, flags, height, y, inset, size, factor, letters, wide }: StripAt,
): void {
  const end = inset + strip.length * factor;
  const top = y + TITLE;
  const low = y + height;
  const box: Point[] = [[inset, top], [end, top], [end, low], [inset, low]]; // biome-ignore format: points in pairs
  inks.push(straight(box, 0.5, { closed: true }));
  // The title again on every sheet that the strip goes on to.
  for (let left = 0; left < end; left += wide - OVERLAP) {
    const from = Math.max(inset, left + OVERLAP + 2);
    const text = fitted(letters, left === 0 ? title : phrase`${title}, continued`, size, wide - OVERLAP - 8);
    const long = letters.measure(text, size);
    if (left === 0 || end - from > 15) words.push({ text, size, at: [from + long / 2, y + TITLE - 3] });
  }
  strip.marks.forEach(({ role }, i) => {
    const { text, row, x: off, from, to } = flags[i]!;
    const x = inset + off;
    const foot = top + BAND + row * 1.4 * size;
    inks.push(markLine([x, top], [x, top + BAND - 2], role));
    const lead: Point[] = [[x, top + BAND - 2], [x, foot + size], [inset + Math.max(from, off), foot + size]]; // biome-ignore format: points in pairs
    inks.push(straight(from > off + 2 * GAP ? lead : lead.slice(0, 2), 0.12));
    words.push({ text, size, at: [inset + (from + to) / 2, foot + 0.6 * size] });
  });
  words.push({ text: "0", size, at: [inset + 2.5, top + size] });
}

const markLine = (from: Point, to: Point, role: Role): Ink =>
  role === "notch" ? straight([from, to], 0.5) : roleLine([from, to], role);
