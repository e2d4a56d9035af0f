/** A table on sheets of paper: its headings on every sheet, its columns in parts where they are too many, nothing cut off. */

import type { Point } from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Letters } from "./document.ts";
import { type Flow, LEAD, wrapped } from "./flow.ts";
import { straight } from "./lines.ts";

export interface TableCell {
  readonly text: string;
  readonly bold?: boolean;
  readonly right?: boolean;
  /** A small picture above the words: a closed line in any measure. */
  readonly outline?: readonly Point[];
  /** "write" leaves room to write in, "grey" is not to be written in; on a table with `least` every cell has a border. */
  readonly ground?: "write" | "grey";
}

export interface TableRow {
  /** One for each column; a row with a single cell is a heading over those beneath it. */
  readonly cells: readonly TableCell[];
  /** What is to be known of its figures, each in a sentence beneath the row. */
  readonly notes: readonly string[];
}

export interface Table {
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
  /** The least height of a row, where there has to be room to write. */
  readonly least?: number;
}

const PAD = 1.6;
const RULE = { thin: 0.12, thick: 0.35 };
/** The side of a small picture, as a share of the height of words. */
const PICTURE = 6;

/** Columns side by side with their widths; the first column stands in every part. */
interface Part {
  readonly columns: readonly number[];
  readonly widths: readonly number[];
}

/** The least width of each column, and the width at which no line is broken, up to a limit. */
function wishes(letters: Letters, { headings, rows }: Table, size: number, room: number) {
  const known = new Map<string, number>();
  const wide = (text: string, bold: boolean): number => {
    const key = `${bold}${text}`;
    const found = known.get(key) ?? letters.measure(text, size, bold);
    known.set(key, found);
    return found;
  };
  return headings.map((heading, i) => {
    const texts = [
      { text: heading, bold: true },
      ...rows.flatMap(({ cells }) => (cells.length > 1 && cells[i] ? [cells[i]] : [])),
    ];
    const hasPicture = rows.some(({ cells }) => cells.length > 1 && cells[i]?.outline);
    const hasRoom = rows.some(({ cells }) => cells.length > 1 && cells[i]?.ground === "write");
    let [least, whole] = [hasPicture ? PICTURE * size + PAD : hasRoom ? 18 : 6, 0];
    for (const { text, bold = false } of texts) {
      for (const line of text.slice(0, 2000).split("\n")) {
        whole = Math.max(whole, wide(line.slice(0, 200), bold));
        for (const word of line.split(/ (?!\d+\/\d)/)) least = Math.max(least, wide(word.slice(0, 60), bold));
      }
    }
    const most = i === 0 ? 0.4 * room : 0.5 * room;
    least = Math.min(least, 22 * size, most);
    return { least: least + 2 * PAD, whole: Math.min(Math.max(least, whole), 22 * size, most) + 2 * PAD };
  });
}

const sum = (figures: readonly number[]): number => figures.reduce((a, b) => a + b, 0);

/** Share of the way from the least width to the whole one that is still read with ease. */
const EASE = 0.35;

export function partsOf(letters: Letters, table: Table, size: number, room: number): Part[] {
  const wish = wishes(letters, table, size, room);
  const at = (column: number, share: number) =>
    wish[column]!.least + share * (wish[column]!.whole - wish[column]!.least);
  const parts: number[][] = [];
  let part: number[] = [0];
  for (let column = 1; column < wish.length; column += 1) {
    const longer = [...part, column];
    if (part.length > 1 && sum(longer.map((one) => at(one, EASE))) > room) {
      parts.push(part);
      part = [0, column];
    } else part = longer;
  }
  return [...parts, part].map((columns) => {
    const least = sum(columns.map((one) => at(one, 0)));
    const whole = sum(columns.map((one) => at(one, 1)));
    const share = whole <= room ? 1 : Math.max(0, (room - least) / (whole - least));
    return { columns, widths: columns.map((one) => at(one, share)) };
  });
}

export function setTable(flow: Flow, table: Table): void {
  const parts = partsOf(flow.letters, table, flow.size, flow.right - flow.left);
  for (const [i, part] of parts.entries()) {
    const names = part.columns.slice(1).map((column) => table.headings[column]!);
    if (parts.length > 1)
      flow.say(phrase`Part ${i + 1} of ${parts.length} of the columns: ${names[0]!} to ${names.at(-1)!}`);
    setPart(flow, table, part);
    flow.space(0.8);
  }
}

function setPart(flow: Flow, table: Table, { columns, widths }: Part): void {
  const { letters, size, left } = flow;
  const right = left + sum(widths);
  const lead = LEAD * size;
  const starts = widths.map((_, i) => left + sum(widths.slice(0, i)));
  const rule = (y: number, width: number) => flow.on((doc) => doc.line(left, y, right, y, width));
  const words = (lines: readonly string[], i: number, { bold = false, right: toRight = false }) => {
    const x = toRight ? starts[i]! + widths[i]! - PAD : starts[i]! + PAD;
    const top = flow.y + PAD;
    flow.on((doc) => {
      for (const [k, line] of lines.entries())
        doc.text(line, x, top + k * lead + size, { size, bold, align: toRight ? "right" : "left" });
    });
  };

  const heads = columns.map((column, i) =>
    wrapped(letters, table.headings[column]!, size, widths[i]! - 2 * PAD, true),
  );
  const isRight = columns.map((column) => isOfFigures(table, column));
  const headings = () => {
    rule(flow.y, RULE.thick);
    for (const [i, lines] of heads.entries()) words(lines, i, { bold: true, right: isRight[i]! });
    flow.y += Math.max(...heads.map(({ length }) => length)) * lead + 2 * PAD;
    rule(flow.y, RULE.thick);
  };
  const headTall = Math.max(...heads.map(({ length }) => length)) * lead + 2 * PAD;
  flow.need(headTall + 4 * lead);
  headings();
  flow.atTop = headings;
  /** The most lines of a row on a sheet that has nothing else. */
  const most = Math.max(1, Math.floor((flow.tall - headTall - 4 * PAD) / lead) - 1);

  for (const { cells, notes } of table.rows) {
    if (cells.length === 1) {
      flow.need(5 * lead);
      flow.y += 0.5 * lead;
      const lines = wrapped(letters, cells[0]!.text, size, right - left - 2 * PAD, true);
      for (const line of lines) {
        flow.need(lead + 2 * PAD);
        words([line], 0, { bold: true });
        flow.y += lead;
      }
      flow.y += 2 * PAD;
      rule(flow.y, RULE.thin);
    } else {
      const set = columns.map((column, i) => ({
        ...cells[column]!,
        lines: wrapped(letters, cells[column]!.text, size, widths[i]! - 2 * PAD, cells[column]!.bold),
      }));
      const picture = Math.max(
        0,
        ...set.flatMap(({ outline }) => (outline ? [pictureTall(outline, PICTURE * size) + PAD] : [])),
      );
      let rest = set.map(({ lines }) => lines);
      for (let isFirst = true; isFirst || rest.some(({ length }) => length > 0); isFirst = false) {
        const above = isFirst ? picture : 0;
        const count = Math.max(...rest.map(({ length }) => length));
        const here = Math.min(count, Math.max(1, most - Math.ceil(above / lead)));
        const tall = Math.max(table.least ?? 0, here * lead + 2 * PAD + above);
        flow.need(tall);
        set.forEach(({ outline, ground, bold = false }, i) => {
          const [x, y, wide] = [starts[i]!, flow.y, widths[i]!];
          if (ground === "grey") flow.on((doc) => doc.shade(x, y, wide, tall, 0.88));
          if (table.least) flow.on((doc) => doc.box(x, y, wide, tall, RULE.thin));
          if (outline && isFirst) drawSmall(flow, outline, x + PAD, y + PAD, PICTURE * size);
          const low = outline ? above : 0;
          flow.y += low;
          words(rest[i]!.slice(0, here), i, { bold, right: isRight[i]! });
          flow.y -= low;
        });
        flow.y += tall;
        rest = rest.map((lines) => lines.slice(here));
        if (rest.every(({ length }) => length === 0) && notes.length === 0) rule(flow.y, RULE.thin);
      }
    }
    for (const note of notes) {
      const lines = wrapped(letters, note, 0.92 * size, right - left - 6 * PAD);
      for (const line of lines) {
        flow.need(lead);
        const y = flow.y + size;
        flow.on((doc) => doc.text(line, left + 4 * PAD, y, { size: 0.92 * size }));
        flow.y += lead;
      }
    }
    if (notes.length > 0) {
      flow.y += PAD;
      rule(flow.y, RULE.thin);
    }
  }
  flow.atTop = null;
}

/** Whether all of a column's words are figures, which stand under each other at the right. */
function isOfFigures({ rows }: Table, column: number): boolean {
  const texts = rows.flatMap(({ cells }) => (cells.length > 1 ? [cells[column]!] : []));
  const said = texts.filter(({ text }) => text !== "");
  return (
    said.length > 0 && said.every(({ text, outline }) => !outline && /^[^\p{L}]*\d[^\p{L}]*$/u.test(text))
  );
}

const extent = (figures: readonly number[]): readonly [least: number, most: number] =>
  figures.reduce<readonly [number, number]>(
    ([least, most], figure) => [Math.min(least, figure), Math.max(most, figure)],
    [Infinity, -Infinity],
  );

/** The height of a small picture that is at most `side` wide and tall. */
function pictureTall(outline: readonly Point[], side: number): number {
  const [left, right] = extent(outline.map(([x]) => x));
  const [low, high] = extent(outline.map(([, y]) => y));
  return (side * (high - low)) / Math.max(right - left, high - low, 1e-9);
}

function drawSmall(flow: Flow, outline: readonly Point[], x: number, y: number, side: number): void {
  const [left, right] = extent(outline.map(([px]) => px));
  const [low, high] = extent(outline.map(([, py]) => py));
  const part = side / Math.max(right - left, high - low, 1e-9);
  const points = outline.map(([px, py]): Point => [x + (px - left) * part, y + (py - low) * part]);
  flow.on((doc) => doc.ink(straight(points, 0.25, { closed: true }), 0, 0));
}
