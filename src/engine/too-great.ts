/**
 * Functions of the engine whose work grows with a figure they are given, and the most that each
 * takes: with more the calculation would take longer than anyone waits.
 */

import { numberText } from "../../functions/number-text.ts";
import { phrase } from "../../functions/phrase.ts";

type Fault = (values: readonly unknown[]) => string | null;

/** The numbers in a value, without their signs. A text that reads as a number counts as one, as it does in the engine. */
function figuresIn(value: unknown): number[] {
  if (typeof value === "number" || typeof value === "string") return [Math.abs(Number(value)) || 0];
  if (typeof value !== "object" || value === null) return [];
  if ("val" in value) return figuresIn(value.val);
  return "data" in value && Array.isArray(value.data) ? value.data.flat().flatMap(figuresIn) : [];
}

/** The number in a value; of a range the greatest, and 0 where there is no number. */
const figureOf = (value: unknown): number =>
  figuresIn(value).reduce((most, figure) => Math.max(most, figure), 0);

/** Refuses a call in which an argument, counted from 1, is past the most; "all" looks at every one. */
const atMost =
  (name: string, most: number, places: readonly number[] | "all"): Fault =>
  (values) => {
    for (const place of places === "all" ? values.map((_, i) => i + 1) : places) {
      const figure = figureOf(values[place - 1]);
      if (figure > most)
        return phrase`argument ${place} of ${name} must be at most ${most}, not ${numberText(figure)}; more would take too long`;
    }
    return null;
  };

/** The windows of MAXPOOL and MEDIANPOOL: their size, then the steps between them. */
const windows =
  (name: string): Fault =>
  (values) => {
    const steps = values.length > 2 ? figureOf(values[2]) : 1;
    if (steps < 1) return phrase`argument 3 of ${name} must be at least 1, not ${steps}`;
    return atMost(name, 100, [2])(values);
  };

/** Which of the places where a text is found SUBSTITUTE changes: with a part of one it would look for ever in a blank text, and change nothing in another. */
const whichPlace: Fault = (values) => {
  const part = figuresIn(values[3]).find((figure) => !Number.isInteger(figure));
  if (!part) return atMost("SUBSTITUTE", 100_000, [4])(values);
  return phrase`argument 4 of SUBSTITUTE must be a whole number, not ${part}`;
};

/** What each function takes at most, and in which arguments. */
const MOST: Readonly<Record<string, readonly [most: number, places: readonly number[] | "all"]>> = {
  // How often a text is repeated.
  REPT: [100_000, [2]],
  // The work is repeated as often as this argument says.
  "POISSON.DIST": [100_000, [1]], POISSON: [100_000, [1]], POISSONDIST: [100_000, [1]],
  "NEGBINOM.DIST": [100_000, [1, 2]], NEGBINOMDIST: [100_000, [1, 2]],
  "HYPGEOM.DIST": [100_000, [1, 2, 3, 4]], HYPGEOMDIST: [100_000, [1, 2, 3, 4]],
  "BINOM.DIST": [1_000_000, [1, 2]], BINOMDIST: [1_000_000, [1, 2]],
  "BINOM.INV": [1_000_000, [1]], CRITBINOM: [1_000_000, [1]],
  MULTINOMIAL: [100_000, "all"],
  BESSELI: [100_000, [2]], BESSELJ: [100_000, [2]], BESSELK: [100_000, [2]], BESSELY: [100_000, [2]],
  // A series that grows with the degrees of freedom or the shape.
  "CHISQ.DIST": [1_000_000, [2]], "CHISQ.DIST.RT": [1_000_000, [2]], CHIDIST: [1_000_000, [2]], CHIDISTRT: [1_000_000, [2]],
  "CHISQ.INV": [1_000_000, [2]], "CHISQ.INV.RT": [1_000_000, [2]], CHIINV: [1_000_000, [2]], CHIINVRT: [1_000_000, [2]],
  "GAMMA.DIST": [1_000_000, [2]], GAMMADIST: [1_000_000, [2]], "GAMMA.INV": [1_000_000, [2]], GAMMAINV: [1_000_000, [2]],
  // The periods of a loan are calculated one by one.
  CUMIPMT: [100_000, [4, 5]], CUMPRINC: [100_000, [4, 5]], DB: [100_000, [3, 4]],
  // The days are searched by doubling.
  WORKDAY: [10_000_000, [1, 2]], "WORKDAY.INTL": [10_000_000, [1, 2]],
}; // biome-ignore format: a table

const LIMITS: ReadonlyMap<string, Fault> = new Map([
  ...Object.entries(MOST).map(([name, [most, places]]) => [name, atMost(name, most, places)] as const),
  ["SUBSTITUTE", whichPlace] as const,
  ...["MAXPOOL", "MEDIANPOOL"].map((name) => [name, windows(name)] as const),
]);

/** The check of the arguments of a function before it is calculated; undefined for functions that need no check. */
export const argumentFault = (name: string): Fault | undefined => LIMITS.get(name);
