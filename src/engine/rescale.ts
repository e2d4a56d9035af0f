/** Outlines told in another unit: every length of SVG path data scaled, its letters and turns kept. */

import { readPath } from "../../functions/geometry/path.ts";
import { numberText } from "../../functions/number-text.ts";

const LETTER = /[\s,]*([A-Za-z])/y;
const NUMBER = /[\s,]*([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?)/y;
const FLAG = /[\s,]*([01])/y;

/** The figures of an arc (SVG 2, 9.3.8): two radii, a turn, two flags, the end. */
const ARC = [true, true, false, null, null, true, true] as const;

/** The path data at `factor` times its size; null when the text is no path data. */
export function scalePath(whole: string, factor: number): string | null {
  // The roles of a piece's marks, behind a stroke, stay as they are.
  const [text = "", ...roles] = whole.split("|");
  try {
    if (readPath(text).length === 0) return null;
  } catch {
    return null;
  }
  const out: string[] = [];
  let at = 0;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) at = pattern.lastIndex;
    return found?.[1] ?? null;
  };
  let arc = false;
  let place = 0;
  while (at < text.length) {
    const letter = take(LETTER);
    if (letter) {
      [arc, place] = [/a/i.test(letter), 0];
      out.push(letter);
      continue;
    }
    const part = arc ? ARC[place % 7]! : true;
    const figure = take(part === null ? FLAG : NUMBER);
    if (figure === null) break;
    out.push(part ? numberText(Number(figure) * factor, 12) : figure);
    place += 1;
  }
  return [out.join(" "), ...roles.map((part) => part.trim())].join(" | ");
}
