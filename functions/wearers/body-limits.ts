/**
 * Figures that no body has, of a child or of an adult, and figures of a child that can't be of one body. The survey's
 * people are adults, so that these limits are wide: they find the wrong unit, a slipped point and a slip of the keys.
 */

import { written } from "../phrase.ts";
import { MEASURES, type Measure, SURVEYS } from "../survey/body-data.ts";
import { MISREADINGS } from "../survey/outlier.ts";
import { type KnownMeasures, measureNamed, ORDERS } from "../survey/survey.ts";
import { BOOK_UNITS, type Unit } from "../units.ts";

/** The least and the greatest of a measure in both surveys, and the middle of their means, in millimetres. */
const ADULTS = new Map(
  MEASURES.map((measure) => {
    const all = [SURVEYS.female, SURVEYS.male].map(({ summaries }) => summaries[measure]);
    const [least, most] = [Math.min(...all.map((one) => one[2]!)), Math.max(...all.map((one) => one[3]!))];
    return [measure, { least, most, mean: (all[0]![0]! + all[1]![0]!) / 2 }];
  }),
);

/** A newborn is about a third as tall as an adult and half as big round; a quarter leaves room. */
const LEAST_SHARE = 0.25;
/** The greatest of bodies beside the greatest of the survey, which has soldiers only; and of a girth over hoops and pads. */
const MOST_SHARES = { body: 1.6, dressed: 3 } as const;
/** Any other length of a body, in millimetres. */
const OTHERS = [2, 4000] as const;
/** Headings that name a length of a body; others, such as a telephone number, may hold anything. */
const OF_A_BODY =
  /girth|height|length|width|depth|breadth|round|across|drop|rise|waist|hip|seat|bust|chest|back|front|shoulder|neck|nape|arm|wrist|hand|leg|thigh|knee|calf|ankle|foot|head|\bto\b/;

/**
 * What is wrong with a figure, in millimetres, that no body has; null for every other. `dressed` says that it is a girth
 * over layers that are not thin.
 */
export function beyondBodies(
  heading: string,
  figure: number,
  dressed: boolean,
  say: (millimetres: number) => string,
): string | null {
  const measure = measureNamed(heading);
  const adults = measure && ADULTS.get(measure);
  if (!adults && !OF_A_BODY.test(heading)) return null;
  const [least, most] = adults
    ? [LEAST_SHARE * adults.least, MOST_SHARES[dressed ? "dressed" : "body"] * adults.most]
    : OTHERS;
  if (figure >= least && figure <= most) return null;
  return figure > most
    ? written`${heading} of ${say(figure)} is far above that of any body: measure again, and check the unit`
    : written`${heading} of ${say(figure)} is far below that of any body, a child's too: measure again, and check the unit`;
}

/** A figure of a child that can't be of one body with the others. */
export interface ChildMisfit {
  readonly measures: readonly Measure[];
  readonly finding: string;
}

/** Beside the others of the same child a figure is at least and at most so many times as large as an adult's beside an adult's. */
const SHARES = [0.45, 2.2] as const;
/** So few other figures tell nothing. */
const FEWEST_OTHERS = 2;

/** The figures of a child that can't belong together, the worst first. Only those of `mine` are blamed. */
export function childMisfits(
  known: KnownMeasures,
  mine: ReadonlySet<Measure>,
  unit: Unit,
  say: (millimetres: number, ...beside: number[]) => string,
): ChildMisfit[] {
  const left = new Map(known);
  const found: ChildMisfit[] = [];
  for (;;) {
    const worst = [...left.keys()]
      .filter((measure) => mine.has(measure))
      .map((measure) => ({ measure, ratio: besideOthers(left, measure) }))
      .filter(({ ratio }) => ratio !== null && (ratio < SHARES[0] || ratio > SHARES[1]))
      .toSorted((a, b) => Math.abs(Math.log(b.ratio!)) - Math.abs(Math.log(a.ratio!)))[0];
    if (!worst) break;
    found.push({
      measures: [worst.measure],
      finding: findingOf(worst.measure, worst.ratio!, left, unit, say),
    });
    left.delete(worst.measure);
  }
  for (const [lesser, greater] of ORDERS) {
    const [low, high] = [left.get(lesser), left.get(greater)];
    if (low === undefined || high === undefined || low < high) continue;
    const blamed = [lesser, greater].filter((one) => mine.has(one));
    const finding = written`${lesser} is less than ${greater} in every body, but here they are ${say(low, high)} and ${say(high, low)}; please measure again`;
    if (blamed.length > 0) found.push({ measures: blamed, finding });
  }
  return found;
}

/** How large a figure is as a share of an adult's, divided by the middle of the same shares of the others; null where there are too few. */
function besideOthers(known: KnownMeasures, measure: Measure): number | null {
  const share = (one: Measure) => known.get(one)! / ADULTS.get(one)!.mean;
  const others = [...known.keys()].filter((one) => one !== measure).map(share);
  if (others.length < FEWEST_OTHERS) return null;
  const inOrder = others.toSorted((a, b) => a - b);
  const middle = (inOrder[(others.length - 1) >> 1]! + inOrder[others.length >> 1]!) / 2;
  return share(measure) / middle;
}

function findingOf(
  measure: Measure,
  ratio: number,
  known: KnownMeasures,
  unit: Unit,
  say: (millimetres: number, ...beside: number[]) => string,
): string {
  const figure = known.get(measure)!;
  const expected = figure / ratio;
  const slip = MISREADINGS.map(([factor, words]) => ({ words, far: Math.abs(Math.log(ratio * factor)) }))
    .filter(({ words }) => !words.startsWith(BOOK_UNITS[unit].tape === "in" ? "inches" : "centimetres"))
    .reduce((a, b) => (b.far < a.far ? b : a));
  const [given, likely, others] = [say(figure, expected), say(expected, figure), known.size - 1];
  const far =
    ratio < 1
      ? written`${measure} of ${given} is far too small beside the child's ${others} other measurements, which lead to about ${likely}`
      : written`${measure} of ${given} is far too large beside the child's ${others} other measurements, which lead to about ${likely}`;
  return slip.far < Math.log(1.5)
    ? written`${far}; ${slip.words}; please measure again`
    : written`${far}; please measure again`;
}
