/** The marks of a tape laid along the selvedge. */
import type { Decimal } from "../../functions/decimal.ts";
import { type TapeMark, tapeText } from "../../functions/fractions.ts";
import { BOOK_UNITS, type Unit } from "../../functions/units.ts";

export interface Tick {
  readonly at: number;
  /** Figures stand at the longer ticks only. */
  readonly label: string | null;
}

/** Ticks from 0 up to `length`, their figures at least `apart` from one another, all in the book's unit. */
export function ticksOf(
  length: number,
  unit: Unit,
  mark: TapeMark,
  apart: number,
  decimal?: Decimal,
): Tick[] {
  const steps: readonly (readonly [figure: number, tick: number])[] = BOOK_UNITS[unit].ruler;
  const [figure, tick] = steps.find(([step]) => step >= apart) ?? steps.at(-1)!;
  const every = Math.round(figure / tick);
  return Array.from({ length: Math.floor(length / tick + 1e-9) + 1 }, (_, i) => ({
    at: i * tick,
    label: i % every === 0 ? tapeText(i * tick, unit, mark, decimal) : null,
  }));
}
