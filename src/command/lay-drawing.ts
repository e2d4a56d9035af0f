/** Draws a lay to scale as SVG: the strip from left to right, pieces with their names and grain. */

import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { boundingBox, cosSin, turned } from "../lay/outline.ts";

const PAPER = "#fbf9f4";
const CLOTH = "#f1ece0";
const PIECE = "#dfe6e4";
const INK = "#2f3338";

export function layDrawing(question: LayQuestion, lay: Lay): string {
  const { width } = question.cloths[0]!;
  const length = lay.lengths[0]!;
  const margin = 0.04 * width;
  const line = width / 600;
  const number = (value: number) => String(Number((value / width).toFixed(6)));
  // All in shares of the cloth's width; y grows upwards on the cloth and downwards in SVG.
  const at = (x: number, y: number) => `${number(x)},${number(width - y)}`;
  const shapes = lay.placements.map(({ piece, copy, turn, x, y }) => {
    const { name, outline } = question.pieces[piece]!;
    const points = turned(outline, turn, x, y);
    const { left, right, low, high } = boundingBox(points);
    const [cx, cy] = [(left + right) / 2, (low + high) / 2];
    const size = Math.min(0.02 * width, (right - left) / (0.7 * (name.length + 2)), 0.4 * (high - low));
    const [c, s] = cosSin(turn);
    const long = 0.3 * Math.min(right - left, high - low);
    const [ax, ay] = [cx + c * long, cy + s * long];
    const barb = (side: number) => {
      const [bx, by] = [-0.25 * long, 0.12 * long * side];
      return at(ax + c * bx - s * by, ay + s * bx + c * by);
    };
    const grain = `M${at(cx - c * long, cy - s * long)}L${at(ax, ay)}M${barb(1)}L${at(ax, ay)}L${barb(-1)}`;
    return [
      `<path d="M${points.map((p) => at(p[0], p[1])).join("L")}Z" fill="${PIECE}" stroke="${INK}"/>`,
      `<path d="${grain}" fill="none" stroke="${INK}" opacity="0.4"/>`,
      `<text x="${number(cx)}" y="${number(width - cy - size * 0.5)}" font-size="${number(size)}">${escaped(name)} ${copy + 1}</text>`,
    ].join("");
  });
  const title = phrase`${plural(lay.placements.length, "# piece", "# pieces")}, length ${Number(length.toFixed(4))}, width ${Number(width.toFixed(4))}, ${(100 * lay.density).toFixed(1)} % used`;
  const box = [-margin, -margin, length + 2 * margin, width + 2 * margin].map(number).join(" ");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${Math.round((600 * (length + 2 * margin)) / width)}">
<title>${escaped(title)}</title>
<rect x="${number(-margin)}" y="${number(-margin)}" width="100%" height="100%" fill="${PAPER}"/>
<rect x="0" y="0" width="${number(length)}" height="1" fill="${CLOTH}" stroke="${INK}" stroke-width="${number(line)}"/>
<g stroke-width="${number(line)}" stroke-linejoin="round" font-family="sans-serif" text-anchor="middle">
${shapes.join("\n").replaceAll("<text", `<text fill="${INK}"`)}
</g>
</svg>
`;
}

/** As XML takes it: control characters and halves of pairs may not stand in it at all. */
function escaped(text: string): string {
  return text
    .replace(/(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu, "\ufffd")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");
}
