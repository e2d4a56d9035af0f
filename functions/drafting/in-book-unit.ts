/** A length given in a unit of the tape, brought into the book's unit. */

import type { CallContext } from "../define.ts";
import { numberText } from "../number-text.ts";
import { convert, type TapeUnit } from "../units.ts";

/** The length of `x` units, noted as the step "length". */
export function inBookUnit(x: number, unit: TapeUnit, context: CallContext): number {
  const size = convert(1, unit, context.unit);
  // A whole factor is written as it is, 1 yd = 36 in; any other by the definition, 1 in = 25.4 mm.
  const inverse = convert(1, context.unit, unit);
  const rule =
    size === 1
      ? "x"
      : size > 1 || inverse === 1
        ? `x * ${numberText(size, 12)}`
        : `x / ${numberText(inverse, 12)}`;
  return context.step("length", rule, convert(x, unit, context.unit));
}
