/** The cloth in stock: a list of its pieces, each measured, and drawn when it is not a rectangle. */

import { boundingBox, distance, signedArea } from "../geometry/strokes.ts";
import type { LayCloth } from "../lay.ts";
import { phrase, written } from "../phrase.ts";
import { flattenPiece, type Piece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { toSelvedge } from "./lay-question.ts";

interface StockColumns {
  readonly widths: readonly (number | null)[];
  readonly lengths: readonly (number | null)[];
  readonly shapes: readonly (Piece | null)[] | null;
}

/** The cloths of three columns, row by row; rows that are blank in all of them are left out. */
export function clothsInStock(hand: StockColumns, cm: (figure: number) => number): LayCloth[] {
  const { widths, lengths, shapes } = hand;
  for (const column of ["lengths", "shapes"] as const) {
    const cells = hand[column];
    if (cells && cells.length !== widths.length)
      throw new Refusal(
        phrase`${column} must have the same number of cells as widths, not ${cells.length} against ${widths.length}`,
      );
  }
  const cloths = widths.flatMap((width, i): LayCloth[] => {
    const length = lengths[i] ?? null;
    const shape = shapes?.[i] ?? null;
    const name = written`cloth ${i + 1}`;
    if (shape) return [oddCloth({ name, width, length }, shape, { number: i + 1, cm })];
    if (width === null && length === null) return [];
    const missing = width === null ? "widths" : length === null ? "lengths" : null;
    if (missing)
      throw new Refusal(phrase`${missing}, number ${i + 1}, is empty: measure that piece of cloth`);
    return [{ name, width: width!, length }];
  });
  if (cloths.length === 0)
    throw new Refusal(phrase`widths is empty: give the width and length of at least one cloth`);
  return cloths;
}

/** The most by which a measured width or length may differ from the drawn shape, in centimetres. */
const AS_DRAWN = 0.5;
/** Chords of a drawn cloth stray no more than this from its curves, in centimetres. */
const CHORDS = 0.02;

/** A cloth that is drawn. `number` is its place in columns of widths and lengths, or its name in a list. */
export function oddCloth(
  measured: { readonly name: string; readonly width: number | null; readonly length: number | null },
  shape: Piece,
  { number, cm }: { readonly number: number | string; readonly cm: (figure: number) => number },
): LayCloth {
  const points = flattenPiece(shape, cm(CHORDS));
  const there = toSelvedge(points);
  const { left, right, low, high } = boundingBox(points);
  const drawn = { width: right - left, length: high - low };
  for (const measure of ["width", "length"] as const) {
    const typed = measured[measure];
    if (typed !== null && Math.abs(typed - drawn[measure]) > cm(AS_DRAWN))
      throw new Refusal(
        (say) =>
          phrase`${typeof number === "number" ? phrase`${measure}s, number ${number},` : measure === "width" ? phrase`the width of ${number}` : phrase`the length of ${number}`} is ${say(typed, drawn[measure])}, but its shape measures ${say(drawn[measure], typed)}: leave it empty, or correct the shape`,
      );
  }
  // A line drawn inside that encloses something is a hole or a flaw.
  const flaws = shape.marks
    .map(({ line: mark }) => {
      const ring = flattenPiece({ edges: [mark] }, cm(CHORDS));
      // The corners are where strokes end; one that is closed by Z alone begins at another.
      const { from } = mark[0]!;
      return distance(from, ring.at(-1)!) > 0 ? [from, ...ring] : ring;
    })
    .filter((ring) => Math.abs(signedArea(ring)) > 1e-6 * drawn.width * drawn.length)
    .map((ring) => ring.map(there));
  return {
    name: measured.name,
    ...drawn,
    outline: points.map(there),
    ...(flaws.length > 0 ? { flaws } : {}),
  };
}
