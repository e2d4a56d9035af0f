/** A lay drawn to scale: its cloths with width and selvedges, a ruler along each, every copy with its name and grain. Millimetres. */

import { grainLine } from "../../functions/drawing/grain-line.ts";
import { boundingBox, type Point } from "../../functions/geometry/strokes.ts";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { lengthText, type Rule } from "../engine/show.ts";
import { spotFor } from "../lay/name-spot.ts";
import { turned } from "../lay/outline.ts";
import { ticksOf } from "../lay/ruler.ts";
import type { Letters } from "./document.ts";
import { arrowHead, roleLine, straight } from "./lines.ts";
import type { Ink, Word } from "./pattern-sheet.ts";

export interface LayOnPaper {
  readonly inks: readonly Ink[];
  readonly words: readonly Word[];
  readonly width: number;
  readonly height: number;
}

/** Room about each cloth: the ruler above, the words below, the words of the width at its left. */
export const ABOUT = { above: 9, below: 7, left: 14, right: 6 };
/** How far figures on the ruler stand apart. */
const FIGURES = 14;

/** The length of a cloth that is drawn: all of it when it is in stock, else what is used. */
export const longOf = ({ cloths }: LayQuestion, lay: Lay): number[] =>
  cloths.map(({ length }, i) => Math.max(length ?? 0, lay.lengths[i] ?? 0));

/** `factor` is millimetres of paper to one unit of the book; `size` is the height of the names. */
export function layOnPaper(
  letters: Letters,
  { question, lay }: { readonly question: LayQuestion; readonly lay: Lay },
  rule: Rule,
  factor: number,
  size: number,
): LayOnPaper {
  const inks: Ink[] = [];
  const words: Word[] = [];
  const say = (text: string, at: Point, high = size) => words.push({ text, at, size: high });
  const longs = longOf(question, lay);
  let top = 0;
  question.cloths.forEach((cloth, i) => {
    const [long, wide] = [longs[i]! * factor, cloth.width * factor];
    const [x0, y0] = [ABOUT.left, top + ABOUT.above];
    const at = ([x, y]: Point): Point => [x0 + x * factor, y0 + y * factor];
    const end = x0 + long;
    // The cut ends, and the selvedges as double lines.
    for (const x of [x0, end]) inks.push(straight([[x, y0], [x, y0 + wide]], 0.25)); // biome-ignore format: points in pairs
    for (const y of [y0, y0 + wide])
      for (const off of [-0.5, 0.5]) inks.push(straight([[x0, y + off], [end, y + off]], 0.2)); // biome-ignore format: points in pairs
    for (const { at: place, label } of ticksOf(
      longs[i]!,
      rule.unit,
      rule.mark,
      FIGURES / factor,
      rule.decimal,
    )) {
      const x = x0 + place * factor;
      inks.push(straight([[x, y0 - 1], [x, y0 - (label === null ? 2 : 3.4)]], 0.15)); // biome-ignore format: points in pairs
      if (label !== null) say(label, [x, y0 - 5], 2.4);
    }
    say(rule.unit, [x0 - 7, y0 - 5], 2.4);
    say(lengthText(cloth.width, rule), [x0 - 7, y0 + wide / 2], 2.4);
    // For translators: it stands beneath a length, the width of the cloth: "45 in" "wide".
    say(phrase`wide`, [x0 - 7, y0 + wide / 2 + 3.4], 2.4);
    const used = lay.lengths[i] ?? 0;
    if (longs[i]! > used * (1 + 1e-9)) {
      const x = x0 + used * factor;
      inks.push(straight([[x, y0], [x, y0 + wide]], 0.25, { dashes: [2, 1] })); // biome-ignore format: points in pairs
      if (long - used * factor > 20) say(phrase`left over`, [(x + end) / 2, y0 + wide / 2]);
    }
    if (cloth.outline) inks.push(straight(cloth.outline.map(at), 0.25, { closed: true }));
    for (const flaw of cloth.flaws ?? [])
      inks.push(straight(flaw.map(at), 0.3, { dashes: [0.6, 0.6], closed: true }));
    for (const { piece, copy, turn, x, y, cloth: on } of lay.placements) {
      if (on !== i) continue;
      const { name, outline, quantity } = question.pieces[piece]!;
      const points = turned(outline, turn, x, y).map(at);
      const [from, to] = grainLine(outline);
      const grain = turned([from, to], turn, x, y).map(at) as [Point, Point];
      inks.push(straight(points, 0.35, { closed: true }), roleLine(grain, "grain"));
      const far = Math.hypot(grain[1][0] - grain[0][0], grain[1][1] - grain[0][1]) || 1;
      const way: Point = [(grain[1][0] - grain[0][0]) / far, (grain[1][1] - grain[0][1]) / far];
      // One head, at the end that is the piece's lower one: it shows which way up the piece lies.
      if (far > 5) inks.push(arrowHead(grain[1], way));
      const numbered = `${piece + 1} ${name}`;
      const full = quantity > 1 ? phrase`${numbered}, ${copy + 1} of ${quantity}` : numbered;
      for (const [text, high] of [
        [full, size],
        [full, 0.8 * size],
        [`${piece + 1}`, size],
        [`${piece + 1}`, 1.8],
      ] as const) {
        const spot = spotFor(points, letters.measure(text, high) + 1, 1.3 * high, grain);
        if (spot?.turn !== 0) continue;
        say(text, spot.at, high);
        break;
      }
    }
    // For translators: the woven edge of the cloth.
    say(phrase`selvedge`, [x0 + 8, y0 + wide + 2.8], 2.2);
    top = y0 + wide + ABOUT.below;
  });
  const box = boundingBox(words.map(({ at }) => at));
  return {
    inks,
    words,
    width: Math.max(box.right, ABOUT.left + Math.max(...longs) * factor) + ABOUT.right,
    height: top,
  };
}
