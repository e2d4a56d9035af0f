/**
 * Units of length. Each unit of a tape is one entry of `TAPE_UNITS`, and each unit that a book can
 * measure in is one entry of `BOOK_UNITS`; everything else is derived from these two tables.
 *
 * 1 in = 25.4 mm, 1 ft = 12 in and 1 yd = 0.9144 m, all exact (NIST SP 811, appendix B).
 */

/**
 * Every unit a tape may be marked in: its size in tenths of a millimetre, so that all sizes are
 * whole, and the ways to write it beside its symbol. A point may follow a word, as in "27 ins.".
 */
const TAPE_UNITS = {
  in: { size: 254, spellings: ["inch", "inches", "ins", '"', "''", "″", "′′"] },
  cm: { size: 100, spellings: ["centimetre", "centimetres", "centimeter", "centimeters", "cms"] },
  mm: { size: 10, spellings: ["millimetre", "millimetres", "millimeter", "millimeters", "mms"] },
  yd: { size: 9144, spellings: ["yard", "yards", "yds"] },
  ft: { size: 3048, spellings: ["foot", "feet", "'", "′"] },
  m: { size: 10_000, spellings: ["metre", "metres", "meter", "meters"] },
} as const;

export type TapeUnit = keyof typeof TAPE_UNITS;

/** The two tapes: whatever is usual, limited or printed in round figures has one figure for each. */
export type Tape = "in" | "cm";

/** What a book unit says about itself; lengths are in the unit. */
interface BookUnit {
  /** The tape whose round figures are used in this unit. */
  readonly tape: Tape;
  /** The finest marks that a book can show, the coarsest first. */
  readonly marks: readonly string[];
  readonly defaultMark: string;
  /** Decimal places of a length that is not shown as a fraction. */
  readonly places: number;
  /** A usual error in taking a measurement. */
  readonly measuringError: number;
  /** A usual seam allowance, with a decimal point or as a fraction. */
  readonly seam: string;
  /** A length across a piece and a length of cloth as a maker writes them, for sentences that ask for a length. */
  readonly across: string;
  readonly cloth: string;
  /** The step of an arrow key when a piece is moved on the cloth. */
  readonly nudge: number;
  /** The side of the test square on a printed sheet. */
  readonly square: number;
  /** The unit of a printed sheet. */
  readonly sheet: "in" | "mm";
  /** A tape along an edge: steps from figure to figure and from tick to tick, the closest first. */
  readonly ruler: readonly (readonly [figure: number, tick: number])[];
}

/** Every unit that a book can measure in. */
export const BOOK_UNITS = {
  in: {
    tape: "in", marks: ["1/2", "1/4", "1/8", "1/16", "1/32"], defaultMark: "1/8",
    places: 2, measuringError: 1 / 4, seam: "1/2", across: "16 in", cloth: "2 yd", nudge: 1 / 4, square: 2, sheet: "in",
    ruler: [[1, 1 / 8], [2, 1 / 4], [4, 1 / 2], [6, 1], [12, 3], [36, 12], [72, 36], [180, 36], [360, 72]],
  },
  cm: {
    tape: "cm", marks: ["1 cm", "5 mm", "1 mm"], defaultMark: "1 mm",
    places: 1, measuringError: 0.5, seam: "1.5", across: "40 cm", cloth: "2 m", nudge: 0.5, square: 5, sheet: "mm",
    ruler: [[1, 0.1], [2, 0.5], [5, 1], [10, 5], [20, 10], [50, 10], [100, 50], [200, 50], [500, 100], [1000, 500]],
  },
  mm: {
    tape: "cm", marks: ["1 cm", "5 mm", "1 mm"], defaultMark: "1 mm",
    places: 0, measuringError: 5, seam: "15", across: "400 mm", cloth: "2 m", nudge: 5, square: 50, sheet: "mm",
    ruler: [[10, 1], [20, 5], [50, 10], [100, 50], [200, 100], [500, 100], [1000, 500], [2000, 500], [5000, 1000], [10_000, 5000]],
  },
} as const satisfies Record<string, BookUnit>; // biome-ignore format: a table

/** A book measures in one of these. */
export type Unit = keyof typeof BOOK_UNITS;

/** The book units in the order in which they are offered. */
export const UNITS = Object.keys(BOOK_UNITS) as readonly Unit[];

export const isUnit = (text: string): text is Unit => Object.hasOwn(BOOK_UNITS, text);

export function isTapeUnit(text: string): text is TapeUnit {
  return Object.hasOwn(TAPE_UNITS, text);
}

const bySpelling = new Map<string, TapeUnit>(
  Object.entries(TAPE_UNITS).flatMap(([unit, { spellings }]) =>
    [unit, ...spellings].map((word) => [word, unit as TapeUnit] as const),
  ),
);

/** The unit that a word or a sign on a pattern names, whatever its case; a point may follow it. */
export const unitNamed = (word: string): TapeUnit | undefined =>
  bySpelling.get(word.toLowerCase().replace(/\.$/, ""));

/** Every word of letters that names a unit. */
export const UNIT_WORDS: readonly string[] = [...bySpelling.keys()].filter((word) => /[a-z]/.test(word));

/** The same length in another unit; exact to the last bit of the division. */
export function convert(length: number, from: TapeUnit, to: TapeUnit): number {
  if (from === to) return length;
  return (length * TAPE_UNITS[from].size) / TAPE_UNITS[to].size;
}

/** A length that has a figure for each tape, in `unit`. */
export function fromTape(lengths: Readonly<Record<Tape, number>>, unit: Unit): number {
  const { tape } = BOOK_UNITS[unit];
  return convert(lengths[tape], tape, unit);
}
