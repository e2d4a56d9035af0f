/**
 * Units of length and their exact sizes.
 *
 * 1 in = 25.4 mm, 1 ft = 12 in and 1 yd = 0.9144 m, all exact (NIST SP 811, appendix B).
 */

/** A book measures in one of these. */
export type Unit = "in" | "cm";

/** Every unit a tape may be marked in, in tenths of a millimetre so that all sizes are whole. */
const TENTH_MILLIMETRES = { mm: 10, cm: 100, m: 10_000, in: 254, ft: 3048, yd: 9144 } as const;

export type TapeUnit = keyof typeof TENTH_MILLIMETRES;

export function isTapeUnit(text: string): text is TapeUnit {
  return Object.hasOwn(TENTH_MILLIMETRES, text);
}

/** The same length told in another unit; exact to the last bit of the division. */
export function convert(length: number, from: TapeUnit, to: TapeUnit): number {
  if (from === to) return length;
  return (length * TENTH_MILLIMETRES[from]) / TENTH_MILLIMETRES[to];
}
