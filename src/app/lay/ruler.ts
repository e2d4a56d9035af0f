/** The marks of a tape laid along the selvedge. */
import type { Decimal } from "../../../functions/decimal.ts";
import { type TapeMark, tapeText } from "../../../functions/fractions.ts";
import type { Unit } from "../../../functions/units.ts";

export interface Tick {
  readonly at: number;
  /** Figures stand at the longer ticks only. */
  readonly label: string | null;
}

/** Steps from figure to figure, and from tick to tick between them, as a tape is marked. */
const STEPS: Readonly<Record<Unit, readonly (readonly [figure: number, tick: number])[]>> = {
  in: [
    [1, 1 / 8],
    [2, 1 / 4],
    [4, 1 / 2],
    [6, 1],
    [12, 3],
    [36, 12],
    [72, 36],
    [180, 36],
    [360, 72],
  ],
  cm: [
    [1, 0.1],
    [2, 0.5],
    [5, 1],
    [10, 5],
    [20, 10],
    [50, 10],
    [100, 50],
    [200, 50],
    [500, 100],
    [1000, 500],
  ],
};

/** Ticks from 0 up to `length`, their figures at least `apart` from one another, all in the book's unit. */
export function ticksOf(
  length: number,
  unit: Unit,
  mark: TapeMark,
  apart: number,
  decimal?: Decimal,
): Tick[] {
  const steps = STEPS[unit];
  const [figure, tick] = steps.find(([step]) => step >= apart) ?? steps.at(-1)!;
  const every = Math.round(figure / tick);
  return Array.from({ length: Math.floor(length / tick + 1e-9) + 1 }, (_, i) => ({
    at: i * tick,
    label: i % every === 0 ? tapeText(i * tick, unit, mark, decimal) : null,
  }));
}
