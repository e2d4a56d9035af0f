/** Pieces measured in another unit: every length in their text is scaled, everything else stays as it was typed. */

import { readPath } from "../../functions/geometry/path.ts";
import { type PathCommand, readCommands } from "../../functions/geometry/path-commands.ts";
import { numberText } from "../../functions/number-text.ts";

/** Which numbers of an arc are not lengths: its turn and its two flags (SVG 2, 9.3.8). */
const NO_LENGTHS_OF_AN_ARC: ReadonlySet<number> = new Set([2, 3, 4]);

/** A piece's text, or path data, at `factor` times its size; null when it is not path data. */
export function scalePath(text: string, factor: number): string | null {
  // The roles of a piece's marks and the names of its edges, behind a stroke, stay as they are.
  const [path = "", ...parts] = text.split("|");
  try {
    if (readPath(path).length === 0) return null;
  } catch {
    return null;
  }
  const scaled = readCommands(path).map((command) => scaledCommand(command, factor));
  return [scaled.join(" "), ...parts.map((part) => part.trim())].join(" | ");
}

/** One command letter stays one, because it is one edge of a piece; general-purpose libraries join or divide commands. */
function scaledCommand({ letter, groups }: PathCommand, factor: number): string {
  const isArc = letter.toUpperCase() === "A";
  const numbers = groups.flatMap((group) =>
    group.map((number, i) =>
      isArc && NO_LENGTHS_OF_AN_ARC.has(i) ? String(number) : numberText(number * factor, 12),
    ),
  );
  return [letter, ...numbers].join(" ");
}
