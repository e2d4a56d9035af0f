/**
 * A pattern piece on a sheet of its own, to true scale: an SVG file whose unit is the millimetre
 * or the inch, for a plotter, a print shop or a drawing program. Beneath the piece stand its name,
 * what its lines are, and a square to measure before anything is cut.
 */

import type { Point } from "../../functions/geometry/strokes.ts";
import { phrase } from "../../functions/phrase.ts";
import {
  flattenPiece,
  outlinePath,
  type Piece,
  pieceBounds,
  type Role,
  writePiece,
} from "../../functions/pieces/piece.ts";
import { BOOK_UNITS, convert } from "../../functions/units.ts";
import type { Book } from "../book/shape.ts";
import { careText } from "./cautions.ts";
import { type Label, placeLabels } from "./label-places.ts";
import { type Picture, pictureOf, placesInside } from "./picture.ts";
import type { FoundPiece } from "./pieces.ts";
import { scalePath } from "./rescale.ts";
import { MARK_SIGNS, ROLE_WORDS } from "./roles.ts";
import { sameFigures } from "./same-figures.ts";
import { show } from "./show.ts";

export interface Sheet {
  readonly svg: string;
  /** The unit that the sheet is measured in. */
  readonly unit: "mm" | "in";
  readonly width: number;
  readonly height: number;
}

/** Millimetres: width of a line, then dash and gap by turns. Each kind has a pattern of its own, so that the kinds differ without colour. */
export const LINES: Record<Role, readonly [width: number, ...dashes: number[]]> = {
  cut: [0.8], seam: [0.35, 1.9, 1.1], fold: [0.35, 3.7, 1.1, 0.5, 1.1], placement: [0.4, 0.5, 0.8], grain: [0.3],
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
  /** A length on paper, given in millimetres. */
  readonly mm: (length: number) => number;
}

/** The sheet of one piece of a book. */
export function trueScaleSheet(book: Book, one: FoundPiece, cautions: readonly string[] = []): Sheet {
  const unit = BOOK_UNITS[book.unit].sheet;
  const pen: Pen = {
    of: (length) => convert(length, book.unit, unit),
    mm: (length) => convert(length, "mm", unit),
  };
  const picture = pictureOf(one.shapes, book);
  const foot = footOf(book, one, { picture, pen, cautions });
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
${pieceDrawn(one.piece, picture, pen).join("\n")}
</g>
<g id="words" data-ellwand="aid" font-family="sans-serif" text-anchor="middle" stroke="#fff" stroke-width="${figure(pen.mm(0.8))}" paint-order="stroke">
${wordsOn(one, picture, pen).join("\n")}
</g>
<g id="foot" data-ellwand="aid" font-family="sans-serif" transform="translate(${figure(left)} ${figure(high + margin)})">
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

/**
 * The lines of a piece. So that the file can be read as the same piece again, its outline carries the piece's
 * text; "line" is what is drawn of its marks, and "aid" what is no part of it.
 */
function pieceDrawn(piece: Piece, picture: Picture, pen: Pen): string[] {
  const own = outlinePath(piece);
  const part = (d: string): string =>
    picture.outlines.length === 1 || sameFigures(d, own)
      ? `data-ellwand-piece="${escaped(writePiece(piece))}"`
      : 'data-ellwand="line"';
  const scaled = (d: string): string => scalePath(d, pen.of(1)) ?? d;
  const point = ([x, y]: Point): string => `${figure(pen.of(x))} ${figure(pen.of(y))}`;
  const head = ([dx, dy]: Point): number => (Math.atan2(dy, dx) * 180) / Math.PI;
  const marks = picture.marks.flatMap(({ at, mark }) =>
    at.map(
      (place) =>
        `<path class="mark-${mark}" data-ellwand="aid" d="${MARK_SIGNS[mark]}" transform="translate(${point(place)}) scale(${figure(pen.mm(0.4))})" stroke-width="1"/>`,
    ),
  );
  return [
    ...picture.outlines.map(
      (d) => `<path class="outline" ${part(d)} d="${scaled(d)}" ${lineStyle("cut", pen)}/>`,
    ),
    ...picture.lines.map(
      ({ d, role }) => `<path class="${role}" data-ellwand="line" d="${scaled(d)}" ${lineStyle(role, pen)}/>`,
    ),
    ...picture.lines.flatMap(({ arrows }) =>
      arrows.map(
        ({ at, to }) =>
          `<path class="head" data-ellwand="aid" d="M 0 0 L -9 -3.5 L -9 3.5 Z" transform="translate(${point(at)}) rotate(${figure(head(to))}) scale(${figure(pen.mm(0.4))})" fill="#000" stroke="none"/>`,
      ),
    ),
    ...marks,
  ];
}

/** The width of a letter of plain type, as a share of its height. */
export const LETTER = 0.56;

/** The words on the piece itself, because the foot is cut away, and the small words of its lines, which never cross a line. */
function wordsOn({ notes, piece }: FoundPiece, picture: Picture, { of, mm }: Pen): string[] {
  const box = pieceBounds(piece);
  const [wide, tall] = [box.right - box.left, box.high - box.low];
  const scaled = ([x, y]: Point): Point => [of(x), of(y)];
  const longest = Math.max(...notes.map((line) => line.length));
  const strokes = picture.strokes.map((stroke) => stroke.map(scaled));
  const margin = mm(12);
  const [left, right, top, bottom] = [
    picture.box.left,
    picture.box.right,
    picture.box.low,
    picture.box.high,
  ].map(of);
  const sheet = {
    left: left! - margin,
    top: top! - margin,
    right: right! + margin,
    bottom: bottom! + margin,
  };
  const inside = placesInside(flattenPiece(piece, Math.max(wide, tall) / 1000), box).map(scaled);
  const small = picture.words
    .filter(({ is }) => is !== "outline")
    .map(({ text, at, also, aside }, i): Label => {
      const width = LETTER * mm(4) * text.length + mm(1);
      return {
        key: `${i}`,
        text,
        at: [at, ...also].map(scaled),
        aside,
        upright: false,
        wide: width,
        tall: mm(5),
        within: false,
        weight: 0,
      };
    });
  // As large as it can be read from where one stands to cut, and as it fits between the lines.
  for (const height of [7, 6, 5, 4, 3, 2.2, 1.6].map(mm)) {
    const name: Label = {
      key: "notes", text: notes.join("\n"), at: inside, aside: [0, 1], upright: false, within: true, weight: 1,
      wide: LETTER * height * longest + mm(2), tall: 1.35 * height * notes.length + mm(1),
    }; // biome-ignore format: a label in few lines
    const placed = placeLabels([name, ...small], strokes, sheet, mm(4));
    if (height > mm(1.6) && !placed.some(({ key }) => key === "notes")) continue;
    return placed.flatMap(({ key, text, place: [x, y], leader }) => {
      const size = key === "notes" ? height : mm(4);
      const lines = text.split("\n");
      const first = y + size * 0.35 - ((lines.length - 1) / 2) * 1.35 * size;
      return [
        ...(leader
          ? [
              `<path class="leader" d="M ${leader.map((end) => end.map(figure).join(" ")).join(" L ")}" fill="none" stroke="#777" stroke-width="${figure(mm(0.2))}"/>`,
            ]
          : []),
        ...lines.map((line, i) =>
          textAt(line, [x, first + i * 1.35 * size], size, key === "notes" ? "" : ' fill="#444"'),
        ),
      ];
    });
  }
  return [];
}

/** Whether the outline has a sewing line within it. */
const hasSeam = ({ piece }: FoundPiece): boolean => piece.marks.some(({ role }) => role === "seam");

export const linesSay = (one: FoundPiece): string =>
  hasSeam(one)
    ? phrase`The solid outline is the cut line; the seam line is within it.`
    : phrase`No seam line is marked within the outline: put allowances to it unless they are in it.`;

/** A sentence in lines of at most so many letters. */
const inLines = (sentence: string, most = 70): string[] =>
  sentence.match(new RegExp(`\\S.{0,${most - 1}}(?=\\s|$)`, "g")) ?? [];

/** Beneath the piece: the square, what the sheet is, and its lines by name. */
function footOf(
  book: Book,
  one: FoundPiece,
  { picture, pen, cautions }: { picture: Picture; pen: Pen; cautions: readonly string[] },
) {
  const { mm } = pen;
  const side = BOOK_UNITS[book.unit].square;
  const says = `${side} ${book.unit}`;
  const square = pen.of(side);
  const column = square + mm(8);
  const [big, small, step] = [mm(7), mm(4), mm(6.5)];
  const { left, right, low, high } = pieceBounds(one.piece);
  const size = (length: number) => show(length, "length", book);
  const lines = [
    phrase`Across and along the grain: ${size(right - left)} × ${size(high - low)} ${book.unit}`,
    `${book.title}, ${one.address}`,
    linesSay(one),
    phrase`The square must measure ${says} each way: print at full size, 100 %.`,
    ...cautions.flatMap((caution) => inLines(careText(caution))),
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
