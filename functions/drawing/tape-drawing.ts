/** A tape drawn beside a length. */
import { dimension, type Shape, stroke } from "./shapes.ts";

/** At most this many marks on a drawn tape; longer tapes are marked in tens, hundreds and so on. */
const MARKS = 60;

/** A tape as long as `length`, marked in inches above the line and in centimetres below it. */
export function tape(length: number, cm: (figure: number) => number, shows = "length"): Shape[] {
  const size = Math.abs(length);
  if (size === 0) return [];
  const height = size / 20;
  const way = Math.sign(length);
  return [
    stroke([[0, 0], [length, 0]], "guide"),
    ...marks(size, cm(2.54), 12).map((x) => stroke([[way * x, 0], [way * x, -height]], "guide")),
    ...marks(size, cm(1), 10).map((x) => stroke([[way * x, 0], [way * x, height]], "guide")),
    dimension([0, 2 * height], [length, 2 * height], length > 0 ? { shows } : {}),
    { kind: "note", at: [0, -1.4 * height], text: "in" },
    { kind: "note", at: [0, 1.4 * height], text: "cm" },
  ];
} // biome-ignore format: points in pairs

function marks(size: number, unit: number, grouped: number): number[] {
  let each = unit;
  while (size / each > MARKS) each *= each === unit ? grouped : 10;
  return Array.from({ length: Math.floor(size / each + 1e-9) + 1 }, (_, i) => i * each);
}
