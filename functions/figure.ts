/** A figure told in a unit of the tape, brought into the book's unit, and the tape drawn beside it. */
import type { Bench } from "./define.ts";
import { dimension, type Shape, stroke } from "./drawing.ts";
import { convert, type TapeUnit } from "./units.ts";

/** The length of `x` units, noted as the step "length". */
export function inBookUnit(x: number, unit: TapeUnit, bench: Bench): number {
  const size = convert(1, unit, bench.unit);
  // A whole factor is told as it is, 1 yd = 36 in; a broken one by the definition, 1 in = 25.4 mm.
  const inverse = convert(1, bench.unit, unit);
  const decimal = (factor: number) => String(Number(factor.toPrecision(12)));
  const rule =
    size === 1 ? "x" : size > 1 || inverse === 1 ? `x * ${decimal(size)}` : `x / ${decimal(inverse)}`;
  return bench.step("length", rule, convert(x, unit, bench.unit));
}

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
