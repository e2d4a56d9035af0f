/** Words and tables set on sheets of paper one under another, with a head and a foot on every sheet. Millimetres. */
import { phrase } from "../../functions/phrase.ts";
import { versionText, withoutVersion } from "../book/version.ts";
import type { Letters, PdfDocument, Sheet } from "./document.ts";
import { LONGEST, type Paper } from "./paper.ts";

/** What all documents of one printing share. */
export interface Manner {
  readonly paper: Paper;
  /** Large type, to be read from where one stands at the sewing table. */
  readonly large: boolean;
  /** The book's title. */
  readonly title: string;
  readonly day: Date;
}

export const isoDay = (day: Date): string => {
  const two = (part: number) => String(part).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
};

const MARGIN = { side: 14, top: 12, foot: 14 };
/** The height of plain words, and what large type is more than it. */
const SIZE = 3.3;
const LARGE = 1.6;
/** From line to line, as a share of the height of the words. */
export const LEAD = 1.4;

type Stroke = (doc: PdfDocument) => void;

/** The text with "…" for what does not fit in one line. */
export function fitted(letters: Letters, text: string, size: number, within: number, bold = false): string {
  if (letters.measure(text, size, bold) <= within) return text;
  const signs = [...text];
  let [least, most] = [0, signs.length];
  while (least < most) {
    const middle = (least + most + 1) >> 1;
    if (letters.measure(`${signs.slice(0, middle).join("")}…`, size, bold) <= within) least = middle;
    else most = middle - 1;
  }
  return `${signs.slice(0, least).join("").trimEnd()}…`;
}

/** The title of a book in the same way, its version always whole. */
export function fittedTitle(letters: Letters, title: string, size: number, within: number, bold = false) {
  const version = versionText(title);
  if (version === "") return fitted(letters, title, size, within, bold);
  const end = `, ${version}`;
  const rest = within - letters.measure(end, size, bold);
  return `${fitted(letters, withoutVersion(title), size, rest, bold)}${end}`;
}

/** Lines no wider than this, broken between words. A word that is too wide for a line is broken within. */
export function wrapped(
  letters: Letters,
  text: string,
  size: number,
  within: number,
  bold = false,
): string[] {
  // A hair less, because widths that were added and taken apart again differ in their last digit.
  const wide = (words: string) => letters.measure(words, size, bold) - 0.01;
  return text.split(/\r\n|[\n\r]/).flatMap((paragraph) => {
    const lines: string[] = [];
    let line = "";
    // A tape fraction stays with its whole number.
    for (const word of paragraph.split(/[ \t]+(?!\d+\/\d)/)) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (wide(longer) <= within) {
        line = longer;
        continue;
      }
      if (line !== "") lines.push(line);
      line = word;
      while (wide(line) > within && [...line].length > 1) {
        const signs = [...line];
        let count = Math.max(1, Math.min(signs.length - 1, Math.floor((signs.length * within) / wide(line))));
        while (count > 1 && wide(signs.slice(0, count).join("")) > within) count -= 1;
        lines.push(signs.slice(0, count).join(""));
        line = signs.slice(count).join("");
      }
    }
    return [...lines, line];
  });
}

export class Flow {
  readonly letters: Letters;
  readonly #manner: Manner;
  readonly #what: string;
  readonly #isTurned: boolean;
  readonly #sheets: { readonly strokes: Stroke[]; low: number }[] = [];
  /** Where the next line begins, from the top of the sheet. */
  y = 0;
  /** What a new sheet begins with, such as the headings of a table that goes on. */
  atTop: (() => void) | null = null;

  /** `what` is the document's title; a turned sheet lies on its long side. */
  constructor(letters: Letters, manner: Manner, what: string, isTurned = false) {
    this.letters = letters;
    this.#manner = manner;
    this.#what = what;
    this.#isTurned = isTurned && manner.paper.height !== null;
    this.#begin();
  }

  get size(): number {
    return SIZE * (this.#manner.large ? LARGE : 1);
  }

  get width(): number {
    const { width, height } = this.#manner.paper;
    return this.#isTurned ? height! : width;
  }

  get #height(): number {
    const { width, height } = this.#manner.paper;
    return this.#isTurned ? width : (height ?? LONGEST);
  }

  readonly left = MARGIN.side;

  get right(): number {
    return this.width - MARGIN.side;
  }

  get bottom(): number {
    return this.#height - MARGIN.foot;
  }

  /** The height that is free for what flows on a sheet of its own. */
  get tall(): number {
    return this.bottom - this.#top;
  }

  get #top(): number {
    return MARGIN.top + 3.6 * this.size;
  }

  /** Draws on the present sheet. */
  on(stroke: Stroke): void {
    this.#sheets.at(-1)!.strokes.push(stroke);
  }

  #begin(): void {
    this.#sheets.push({ strokes: [], low: 0 });
    const { size, left, right, letters } = this;
    const y = MARGIN.top + size;
    const isFirst = this.#sheets.length === 1;
    const what = isFirst ? this.#what : phrase`${this.#what}, continued`;
    const wide = right - left;
    const words = fitted(letters, what, 1.4 * size, 0.65 * wide, true);
    const rest = wide - letters.measure(words, 1.4 * size, true) - 2 * size;
    const title = fittedTitle(letters, this.#manner.title, size, rest);
    this.on((doc) => {
      doc.text(words, left, y, { size: 1.4 * size, bold: true });
      doc.text(title, right, y, { size, align: "right" });
      doc.line(left, y + 0.8 * size, right, y + 0.8 * size, 0.4);
    });
    this.y = this.#top;
  }

  /** Goes on with a new sheet. */
  turn(): void {
    this.#sheets.at(-1)!.low = this.y;
    this.#begin();
    this.atTop?.();
  }

  /** Begins a new sheet unless this height is free. */
  need(height: number): void {
    if (this.y + height > this.bottom) this.turn();
  }

  /** A paragraph; its lines may go on to the next sheet. */
  say(text: string, { bold = false, size = this.size, indent = 0 } = {}): void {
    const left = this.left + indent;
    for (const line of wrapped(this.letters, text, size, this.right - left, bold)) {
      this.need(LEAD * size);
      const y = this.y + size;
      this.on((doc) => doc.text(line, left, y, { size, bold }));
      this.y += LEAD * size;
    }
  }

  /** A heading, with room for some lines beneath it on the same sheet. */
  heading(text: string): void {
    const size = 1.15 * this.size;
    this.need(6 * size);
    this.y += 0.6 * size;
    this.say(text, { bold: true, size });
    this.y += 0.3 * size;
  }

  space(lines: number): void {
    this.y += lines * LEAD * this.size;
  }

  sheets(): Sheet[] {
    this.#sheets.at(-1)!.low = this.y;
    const { paper, title, day } = this.#manner;
    const { left, right, letters, width } = this;
    return this.#sheets.map(({ strokes, low }): Sheet => {
      // A roll is cut off where the document ends.
      const height = paper.height === null ? Math.min(LONGEST, low + MARGIN.foot) : this.#height;
      return {
        width,
        height,
        draw: (doc, number, of) => {
          for (const stroke of strokes) stroke(doc);
          const size = Math.min(3.6, 0.85 * this.size);
          const y = height - MARGIN.foot + 7;
          doc.line(left, y - 4.5, right, y - 4.5, 0.15);
          const count = phrase`page ${number} of ${of}`;
          doc.text(fittedTitle(letters, title, size, (right - left) / 2), left, y, { size });
          doc.text(`${phrase`printed ${isoDay(day)}`}    ${count}`, right, y, { size, align: "right" });
        },
      };
    });
  }
}
