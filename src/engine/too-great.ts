/**
 * Functions of the engine whose work grows with a figure they are given, and the most that each
 * takes: past it the work would not end in any time that a reader waits for.
 */

type Fault = (values: readonly unknown[]) => string | null;

/** The figure in a value; a text that reads as a figure counts, as the engine has it. A range has its greatest. */
function figureOf(value: unknown): number {
  if (typeof value === "number") return Math.abs(value);
  if (typeof value === "string") return Math.abs(Number(value)) || 0;
  if (typeof value !== "object" || value === null) return 0;
  if ("val" in value) return figureOf(value.val);
  if (!("data" in value) || !Array.isArray(value.data)) return 0;
  let most = 0;
  for (const row of value.data as unknown[][]) for (const one of row) most = Math.max(most, figureOf(one));
  return most;
}

/** Refuses a call in which an argument, counted from 1, is past the most. */
const atMost =
  (name: string, most: number, ...places: readonly number[]): Fault =>
  (values) => {
    for (const place of places) {
      const figure = figureOf(values[place - 1]);
      if (figure > most)
        return `argument ${place} of ${name} must be at most ${most}, not ${Number(figure.toPrecision(6))}`;
    }
    return null;
  };

const LIMITS: ReadonlyMap<string, Fault> = new Map(
  Object.entries<readonly [most: number, ...places: number[]]>({
    REPT: [100_000, 2],
    "POISSON.DIST": [100_000, 1],
    POISSON: [100_000, 1],
  }).map(([name, [most, ...places]]) => [name, atMost(name, most, ...places)]),
);

/** What looks at the arguments of a function before it is worked, if it needs that. */
export const argumentFault = (name: string): Fault | undefined => LIMITS.get(name);
