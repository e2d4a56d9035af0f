/** Lengths that have a usual value in the trade when a maker does not tell one. */
import type { Bench } from "./define.ts";

/**
 * The length told in argument `argument`, or the usual one; noted as step `name` either way. `why`
 * says what the usual one is: "an eighth of a yard, as shops cut".
 */
export function usual(
  { step, measure, cm }: Bench,
  name: string,
  argument: string,
  told: number | null,
  centimetres: number,
  why: string,
): number {
  return told === null ? measure(name, why, cm(centimetres)) : step(name, argument, told);
}
