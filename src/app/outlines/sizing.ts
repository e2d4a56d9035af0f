/** How large a drawing is, as the maker says it: as its file has it, or by one length that is known. */

import type { Decimal } from "../../../functions/decimal.ts";
import { readTape } from "../../../functions/fractions.ts";
import { phrase } from "../../../functions/phrase.ts";
import { edgeLabel } from "../../../functions/pieces/edge-names.ts";
import { BOOK_UNITS, type Unit } from "../../../functions/units.ts";
import type { Found } from "../../exchange/outlines/find-pieces.ts";
import { drawnLength, factorOfFile, type Known } from "../../exchange/outlines/scale.ts";

export interface Sizing {
  readonly by: "file" | "known";
  /** What is known, as `knownThings` writes it. */
  readonly what: string;
  /** Its length as it was typed. */
  readonly typed: string;
}

/** What may be known of a drawing: its value in the list, and its words. */
export function knownThings({ pieces }: Found, names: readonly string[]): { value: string; words: string }[] {
  return [
    ...pieces.flatMap(({ piece }, i) =>
      piece.edges.map((_, edge) => ({
        value: `${i}/${edge}`,
        words: `${names[i]}: ${edgeLabel(piece, edge + 1)}`,
      })),
    ),
    { value: "width", words: phrase`all pieces together, across` },
    { value: "height", words: phrase`all pieces together, down` },
    { value: "unit", words: phrase`one unit of the drawing` },
  ];
}

const knownOf = (what: string): Known => {
  const [piece, edge] = what.split("/").map(Number);
  if (what === "width" || what === "height" || what === "unit") return { of: what };
  return { of: "edge", piece: piece!, edge: edge! };
};

/** What one unit of the drawing is worth in the book's unit, or what is still wanted, in a sentence. */
export function factorOf(
  found: Found,
  { by, what, typed }: Sizing,
  unit: Unit,
  decimal: Decimal,
): { readonly factor: number } | { readonly wanted: string } {
  if (by === "file") {
    const factor = factorOfFile(found, unit);
    return factor === null ? { wanted: phrase`${found.size} Give one length that you know.` } : { factor };
  }
  if (typed.trim() === "")
    return { wanted: phrase`Type the true length of what you know, such as ${BOOK_UNITS[unit].across}.` };
  const length = readTape(typed, unit, decimal)?.length;
  if (length === undefined || !(length > 0))
    return {
      wanted: phrase`The true length must be a length above 0, such as ${BOOK_UNITS[unit].across}, not “${typed.trim().slice(0, 24)}”.`,
    };
  return { factor: length / drawnLength(found, knownOf(what)) };
}
