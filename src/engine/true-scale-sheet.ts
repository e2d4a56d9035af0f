/**
 * A pattern piece on a sheet of its own, to true scale: an SVG file whose unit is the millimetre
 * or the inch, for a plotter, a print shop or a drawing program. Beneath the piece stand its name,
 * what its lines are, and a square to measure before anything is cut.
 */

import { pointInside } from "../../functions/geometry/point-in-polygon.ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import { flattenPiece, pieceBounds, type Role, writePiece } from "../../functions/pieces/piece.ts";
import { BOOK_UNITS, convert } from "../../functions/units.ts";
import type { Book } from "../book/shape.ts";
import { type Picture, pictureOf } from "./picture.ts";
import type { FoundPiece } from "./pieces.ts";
import { scalePath } from "./rescale.ts";
import { MARK_SIGNS, ROLE_WORDS } from "./roles.ts";
import { show } from "./show.ts";

export interface Sheet {
  readonly svg: string;
  /** The unit that the sheet is measured in. */
  readonly unit: "mm" | "in";
  readonly width: number;
  readonly height: number;
}

/** Millimetres: width of a line, then dash and gap by turns. Each kind has a pattern of its own, told without colour. */
const LINES: Record<Role, readonly [width: number, ...dashes: number[]]> = {
  cut: [0.5], seam: [0.35, 1.9, 1.1], fold: [0.35, 3.7, 1.1, 0.5, 1.1], placement: [0.4, 0.5, 0.8], grain: [0.3],
  stitch: [0.3, 1.1, 0.5], inner: [0.3, 2.4, 0.8, 0.3, 0.8, 0.3, 0.8], dart: [0.4, 2.6, 0.7], notch: [0.6], slash: [0.3, 3.2, 0.8, 0.5, 0.8, 0.5, 0.8], guide: [0.3, 0.3, 1.1],
}; // biome-ignore format: a table

const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no place for them
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");

/** What is drawn, in the sheet's own unit. */
interface Pen {
  /** A length of the book. */
  readonly of: (length: number) => number;
  /** A length on paper, told in millimetres. */
  readonly mm: (length: number) => number;
}

/** The sheet of one piece of a book. */
export function trueScaleSheet(book: Book, one: FoundPiece): Sheet {
  const unit = BOOK_UNITS[book.unit].sheet;
  const pen: Pen = {
    of: (length) => convert(length, book.unit, unit),
    mm: (length) => convert(length, "mm", unit),
  };
  const picture = pictureOf(one.shapes, book);
  const foot = footOf(book, one, picture, pen);
  const margin = pen.mm(15);
  const [left, low, right, high] = [
    picture.box.left,
    picture.box.low,
    picture.box.right,
    picture.box.high,
  ].map(pen.of) as [number, number, number, number];
  const width = Math.max(right - left, foot.width) + 2 * margin;
  const height = high - low + 3 * margin + foot.height;
  const [w, h] = [figure(width), figure(height)];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}${unit}" height="${h}${unit}" viewBox="${figure(left - margin)} ${figure(low - margin)} ${w} ${h}">
<title>${escaped(one.title)}</title>
<desc>${escaped(`${book.title}, ${one.address}. ${linesSay(one)}`)}</desc>
<g id="piece" fill="none" stroke="#000" stroke-linejoin="round">
${pieceDrawn(picture, pen).join("\n")}
</g>
<g id="words" font-family="sans-serif" text-anchor="middle" stroke="#fff" stroke-width="${figure(pen.mm(0.8))}" paint-order="stroke">
${wordsOn(one, picture, pen).join("\n")}
</g>
<g id="foot" font-family="sans-serif" transform="translate(${figure(left)} ${figure(high + margin)})">
${foot.parts.join("\n")}
</g>
</svg>
`;
  return { svg, unit, width, height };
}

const figure = (value: number): string => String(Number(value.toFixed(9)) + 0);

const lineStyle = (role: Role, { mm }: Pen): string => {
  const [width, ...dashes] = LINES[role];
  const dashed =
    dashes.length > 0 ? ` stroke-dasharray="${dashes.map((dash) => figure(mm(dash))).join(" ")}"` : "";
  return `stroke-width="${figure(mm(width))}"${dashed}`;
};

const textAt = (text: string, [x, y]: Point, size: number, more = ""): string =>
  `<text x="${figure(x)}" y="${figure(y)}" font-size="${figure(size)}"${more}>${escaped(text)}</text>`;

function pieceDrawn(picture: Picture, pen: Pen): string[] {
  const scaled = (d: string): string => scalePath(d, pen.of(1)) ?? d;
  const point = ([x, y]: Point): string => `${figure(pen.of(x))} ${figure(pen.of(y))}`;
  const head = ([dx, dy]: Point): number => (Math.atan2(dy, dx) * 180) / Math.PI;
  const marks = picture.marks.flatMap(({ at, mark }) =>
    at.map(
      (place) =>
        `<path class="mark-${mark}" d="${MARK_SIGNS[mark]}" transform="translate(${point(place)}) scale(${figure(pen.mm(0.4))})" stroke-width="1"/>`,
    ),
  );
  return [
    ...picture.outlines.map((d) => `<path class="outline" d="${scaled(d)}" ${lineStyle("cut", pen)}/>`),
    ...picture.lines.map(({ d, role }) => `<path class="${role}" d="${scaled(d)}" ${lineStyle(role, pen)}/>`),
    ...picture.lines.flatMap(({ arrows }) =>
      arrows.map(
        ({ at, to }) =>
          `<path class="head" d="M 0 0 L -9 -3.5 L -9 3.5 Z" transform="translate(${point(at)}) rotate(${figure(head(to))}) scale(${figure(pen.mm(0.4))})" fill="#000" stroke="none"/>`,
      ),
    ),
    ...marks,
  ];
}

/** Letters of a plain type take about so much of their height across. */
const LETTER = 0.56;

/** The piece's name on the piece itself, for the foot is cut away, and the small words of its lines. */
function wordsOn({ title, piece }: FoundPiece, picture: Picture, { of, mm }: Pen): string[] {
  const box = pieceBounds(piece);
  const [wide, tall] = [box.right - box.left, box.high - box.low];
  const [x, y] = pointInside(flattenPiece(piece, Math.max(wide, tall) / 200));
  const size = Math.min(mm(7), (0.6 * of(wide)) / (LETTER * title.length), 0.3 * of(tall));
  return [
    textAt(title, [of(x), of(y) + size * 1.5], size),
    ...picture.words
      .filter(({ is }) => is !== "outline")
      .map(({ text, at }) => textAt(text, [of(at[0]), of(at[1])], mm(3), ' fill="#444"')),
  ];
}

/** Whether the outline has a sewing line within it. */
const hasSeam = ({ piece }: FoundPiece): boolean => piece.marks.some(({ role }) => role === "seam");

const linesSay = (one: FoundPiece): string =>
  hasSeam(one)
    ? "The solid outline is the cut line; the seam line is within it."
    : "No seam line is marked within the outline: put allowances to it unless they are in it.";

/** Beneath the piece: the square, what the sheet is, and its lines by name. */
function footOf(book: Book, one: FoundPiece, picture: Picture, pen: Pen) {
  const { mm } = pen;
  const side = BOOK_UNITS[book.unit].square;
  const says = `${side} ${book.unit}`;
  const square = pen.of(side);
  const column = square + mm(8);
  const [big, small, step] = [mm(7), mm(4), mm(6.5)];
  const lines = [
    `${show(writePiece(one.piece), "piece", book).replace("piece", "Across and along the grain:")} ${book.unit}`,
    `${book.title}, ${one.address}`,
    linesSay(one),
    `The square must measure ${says} each way: print at full size, 100 %.`,
  ];
  const legend = picture.roles.map((role, i) => {
    const y = mm(12) + (lines.length + i) * step;
    return [
      `<path d="M ${figure(column)} ${figure(y - small / 3)} h ${figure(mm(14))}" fill="none" stroke="#000" ${lineStyle(role, pen)}/>`,
      textAt(ROLE_WORDS[role], [column + mm(17), y], small),
    ].join("");
  });
  const parts = [
    `<rect id="square" x="0" y="0" width="${figure(square)}" height="${figure(square)}" fill="none" stroke="#000" ${lineStyle("grain", pen)}/>`,
    textAt(says, [square / 2, square / 2], small, ' text-anchor="middle"'),
    textAt(one.title, [column, mm(6)], big, ' font-weight="bold"'),
    ...lines.map((text, i) => textAt(text, [column, mm(12) + i * step], small)),
    ...legend,
  ];
  const letters = Math.max(...lines.map((text) => text.length * small), one.title.length * big);
  return {
    parts,
    width: column + LETTER * letters,
    height: Math.max(square, mm(12) + (lines.length + legend.length) * step),
  };
}
