/** The three views of a garment as worn, as an SVG file: front, side and back at one scale, with what is assumed beneath. */

import { phrase } from "../../functions/phrase.ts";
import { convert } from "../../functions/units.ts";
import type { Worn } from "../../functions/worn/worn-drawing.ts";
import type { Book } from "../book/shape.ts";
import { pictureOf } from "./picture.ts";

/** Wide enough for a sheet of A4 or Letter lying on its side, in millimetres. */
const WIDTH = 270;
const MARGIN = 12;
const LINE = 5;

const figure = (value: number): string => String(Number(value.toFixed(3)) + 0);
const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

const PAINT = {
  figure: 'fill="#fff" stroke="#777" stroke-width="0.3"',
  hem: 'fill="none" stroke="#000" stroke-width="0.6"',
  edge: 'fill="none" stroke="#000" stroke-width="0.5"',
  fold: 'fill="none" stroke="#000" stroke-width="0.3"',
} as const;

/** Grey that grows with the shade, light enough for lines to stand on. */
const grey = (shade: number, of: "cloth" | "inside"): string => {
  const level = Math.round(of === "inside" ? 196 : 253 - 36 * shade);
  return `rgb(${level},${level},${level})`;
};

/** `title` is the cell's name or address. */
export function wornSheet(book: Book, title: string, worn: Worn): string {
  const picture = pictureOf(worn.together, book);
  const { left, right, low, high } = picture.box;
  const scale = (WIDTH - 2 * MARGIN) / (right - left);
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    MARGIN + (x - left) * scale,
    MARGIN + (y - low) * scale,
  ];
  const tall = (high - low) * scale;
  const sayings = [
    ...wrapped(worn.says, 120),
    ...(worn.measured.length > 0 ? wrapped(phrase`The figure has ${worn.measured.join(", ")}.`, 120) : []),
    ...worn.assumed.flatMap((one) => wrapped(phrase`Assumed: ${one}.`, 120)),
    phrase`Drawn at 1 to ${figure(convert(1, book.unit, "mm") / scale)}.`,
  ];
  const height = tall + 3 * MARGIN + (sayings.length + 1) * LINE;
  const place = `translate(${figure(MARGIN - left * scale)} ${figure(MARGIN - low * scale)}) scale(${figure(scale)})`;
  const layers = picture.layers.flatMap(({ d, of, shade }) => {
    if (of === "silhouette") return [];
    if (of === "cloth" || of === "inside") {
      const colour = grey(shade, of);
      return `<path d="${d}" fill="${colour}" stroke="${colour}" stroke-width="0.15" vector-effect="non-scaling-stroke"/>`;
    }
    return `<path d="${d}" ${PAINT[of]} vector-effect="non-scaling-stroke"/>`;
  });
  const dimensions = picture.dimensions.map(({ from, to }) => {
    const [[ax, ay], [bx, by]] = [at(from), at(to)];
    const long = Math.hypot(bx - ax, by - ay) || 1;
    const [nx, ny] = [(-(by - ay) / long) * 1.5, ((bx - ax) / long) * 1.5];
    const bar = (x: number, y: number) =>
      `M ${figure(x - nx)} ${figure(y - ny)} L ${figure(x + nx)} ${figure(y + ny)}`;
    return `<path d="M ${figure(ax)} ${figure(ay)} L ${figure(bx)} ${figure(by)} ${bar(ax, ay)} ${bar(bx, by)}"/>`;
  });
  const lines = picture.lines.map(
    ({ d }) =>
      `<path d="${d}" transform="${place}" vector-effect="non-scaling-stroke" stroke-dasharray="0.5 1"/>`,
  );
  const words = picture.words.map(({ text, at: point, aside, is }) => {
    const [x, y] = at(point);
    const upright = is === "dimension" && Math.abs(aside[0]) > Math.abs(aside[1]);
    const place = upright
      ? `transform="translate(${figure(x - 1.6)} ${figure(y)}) rotate(-90)"`
      : `x="${figure(x)}" y="${figure(y + (is === "note" ? 0 : 4.2))}"`;
    return `<text ${place}>${escaped(is === "dimension" ? `${text} ${book.unit}` : text)}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}mm" height="${figure(height)}mm" viewBox="0 0 ${WIDTH} ${figure(height)}" role="img">
<title>${escaped(phrase`${title} as worn`)}</title>
<desc>${escaped(worn.says)}</desc>
<g transform="${place}" stroke-linejoin="round" stroke-linecap="round">
${layers.join("\n")}
</g>
<g fill="none" stroke="#000" stroke-width="0.25">
${[...dimensions, ...lines].join("\n")}
</g>
<g font-family="sans-serif" font-size="3.2" text-anchor="middle" stroke="#fff" stroke-width="0.8" paint-order="stroke">
${words.join("\n")}
</g>
<g font-family="sans-serif" font-size="3.6">
<text x="${MARGIN}" y="${figure(tall + 2 * MARGIN)}" font-weight="bold">${escaped(phrase`${title} as worn`)}</text>
${sayings.map((text, i) => `<text x="${MARGIN}" y="${figure(tall + 2 * MARGIN + (i + 1) * LINE)}">${escaped(text)}</text>`).join("\n")}
</g>
</svg>
`;
}

/** Lines of at most so many letters, parted between words. */
function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
