/** Whether a body measurement fits the others, and if not, which slip of the tape or the pen would explain it. */

import { plural, written, writtenIn } from "../phrase.ts";
import { semicolonList } from "../verdict.ts";
import type { Measure, Survey } from "./body-data.ts";
import { type Expectation, expectation, type KnownMeasures, measuringNote, ORDERS } from "./survey.ts";

/** Slips that multiply a value, and what each would look like. */
export const MISREADINGS: readonly (readonly [factor: number, words: string])[] = [
  [2.54, "inches may have been written where centimetres were meant: 2.54 times as much would fit"],
  [1 / 2.54, "centimetres may have been written where inches were meant: 2.54 times less would fit"],
  [2, "only half may have been written: twice as much would fit"],
  [0.5, "it may have been doubled: half as much would fit"],
  [10, "the decimal point may have slipped: ten times as much would fit"],
  [0.1, "the decimal point may have slipped: a tenth would fit"],
];

export interface Outlier {
  readonly expected: Expectation;
  /** How far outside the range: above it positive, below it negative, 0 when inside. */
  readonly beyond: number;
  /** The pair whose order was never otherwise, when this figure breaks it. */
  readonly order: (typeof ORDERS)[number] | null;
  /** The measure with which it would fit if the two changed places. */
  readonly swap: Measure | null;
  /** The measure without which it would fit. */
  readonly suspect: Measure | null;
  /** A slip that would explain it, in words. */
  readonly slip: string | null;
}

const beyondRange = ({ least, most }: Expectation, value: number): number =>
  value > most ? value - most : value < least ? value - least : 0;

/** The expectation that the value strays from most in one survey: beside the others, and at large. */
function strictest(survey: Survey, measure: Measure, value: number, known: KnownMeasures): Expectation {
  const beside = expectation(survey, measure, known);
  if (beyondRange(beside, value) !== 0 || beside.others === 0) return beside;
  const alone = expectation(survey, measure, new Map());
  return beyondRange(alone, value) !== 0 ? alone : beside;
}

/** The expectation of the survey that the value strays from least. */
export function bestFit(
  surveys: readonly Survey[],
  measure: Measure,
  value: number,
  known: KnownMeasures,
): Expectation {
  return surveys
    .map((survey) => strictest(survey, measure, value, known))
    .reduce((a, b) => (Math.abs(beyondRange(b, value)) < Math.abs(beyondRange(a, value)) ? b : a));
}

const brokenOrder = (measure: Measure, value: number, known: KnownMeasures) => {
  const all = new Map(known).set(measure, value);
  return ORDERS.find(([lesser, greater, by]) => {
    if (lesser !== measure && greater !== measure) return false;
    const [low, high] = [all.get(lesser), all.get(greater)];
    return low !== undefined && high !== undefined && (low >= high || high - low < by * (1 - 1e-9));
  });
};

/** Whether a figure fits the wearer's other measurements. */
export function fits(
  surveys: readonly Survey[],
  measure: Measure,
  value: number,
  known: KnownMeasures,
): boolean {
  const range = bestFit(surveys, measure, value, known);
  return beyondRange(range, value) === 0 && !brokenOrder(measure, value, known);
}

/** Of figures of one wearer, those that do not fit the others, the farthest from its range first. */
export function misfits(surveys: readonly Survey[], known: KnownMeasures): Measure[] {
  const far = (measure: Measure, value: number): number => {
    const rest = without(known, measure);
    const range = bestFit(surveys, measure, value, rest);
    const beyond = Math.abs(beyondRange(range, value)) / (range.most - range.least);
    return beyond > 0 ? beyond : brokenOrder(measure, value, rest) ? Number.EPSILON : 0;
  };
  return [...known]
    .map(([measure, value]) => ({ measure, far: far(measure, value) }))
    .filter((one) => one.far > 0)
    .toSorted((a, b) => b.far - a.far)
    .map(({ measure }) => measure);
}

/** How far a figure is from the likeliest, in widths of its range: the smaller of two distances is the better explanation. */
function fromLikely(
  surveys: readonly Survey[],
  measure: Measure,
  value: number,
  known: KnownMeasures,
): number {
  const { likely, least, most } = bestFit(surveys, measure, value, known);
  return Math.abs(value - likely) / (most - least);
}

const without = (known: KnownMeasures, left: Measure): KnownMeasures =>
  new Map([...known].filter(([measure]) => measure !== left));

/**
 * Why a figure is an outlier, or null when it fits. `known` are the wearer's other measurements, this
 * one not among them.
 */
export function findOutlier(
  surveys: readonly Survey[],
  measure: Measure,
  value: number,
  known: KnownMeasures,
): Outlier | null {
  const expected = bestFit(surveys, measure, value, known);
  const beyond = beyondRange(expected, value);
  const order = brokenOrder(measure, value, known) ?? null;
  if (beyond === 0 && !order) return null;

  const swap = [...known.keys()].find((other) => {
    const changed = new Map(without(known, other)).set(other, value);
    const theirs = new Map(without(known, other)).set(measure, known.get(other)!);
    return (
      isGirth(other) === isGirth(measure) &&
      !isNearlyEqual(known.get(other)!, value) &&
      fits(surveys, measure, known.get(other)!, changed) &&
      fits(surveys, other, value, theirs)
    );
  });
  // Another figure is to blame when this one fits without it, and that one does not fit without
  // this; of several, the one farthest outside its range, measured in widths of that range.
  let suspect: Measure | null = null;
  let farthest = 0;
  for (const [other, figure] of known.size > 1 ? known : []) {
    const rest = without(known, other);
    if (fits(surveys, other, figure, rest) || !fits(surveys, measure, value, rest)) continue;
    const range = bestFit(surveys, other, figure, rest);
    const far = Math.abs(beyondRange(range, figure)) / (range.most - range.least);
    if (suspect !== null && far <= farthest) continue;
    suspect = other;
    farthest = far;
  }
  const misreading = MISREADINGS.filter(([factor]) => fits(surveys, measure, value * factor, known))
    .map(([factor, words]) => ({ words, far: fromLikely(surveys, measure, value * factor, known) }))
    .reduce((a, b) => (b.far < a.far ? b : a), { words: null as string | null, far: Infinity });
  return {
    expected,
    beyond,
    order,
    swap: swap ?? null,
    suspect,
    slip: misreading.words,
  };
}

const isGirth = (measure: Measure): boolean => measure.endsWith("girth");

/** Whether two figures are so close that exchanging them would explain nothing. */
const isNearlyEqual = (a: number, b: number): boolean => Math.abs(a - b) < 0.02 * Math.max(a, b);

/** Why a figure is an outlier, in words; `figures` hold this measure too, `say` tells millimetres in the book's unit. */
export function outlierText(
  measure: Measure,
  figures: KnownMeasures,
  { expected, beyond, order, swap, suspect, slip }: Outlier,
  say: (millimetres: number, ...beside: number[]) => string,
): string {
  const figureOf = (one: Measure, ...beside: number[]) => say(figures.get(one)!, ...beside);
  const rangeFinding = (figure: string) => {
    const range =
      expected.others > 0
        ? written`the range expected beside ${plural(expected.others, "# other measurement", "# other measurements")}`
        : written`the range expected of an adult`;
    const [least, most] = [expected.least, expected.most].map((one) => say(one, figures.get(measure)!));
    const by = say(Math.abs(beyond), 0);
    return beyond > 0
      ? written`${measure} of ${figure} is ${by} above ${range}, ${least!} to ${most!}`
      : written`${measure} of ${figure} is ${by} below ${range}, ${least!} to ${most!}`;
  };
  const orderFinding = ([one, other, least]: NonNullable<typeof order>) => {
    const pair = [figureOf(one, figures.get(other)!), figureOf(other, figures.get(one)!)] as const;
    const here = written`in all 6068 people measured, but here they are ${pair[0]} and ${pair[1]}`;
    const than = /height|stature/.test(other) ? written`below ${other}` : written`less than ${other}`;
    return least > 0
      ? written`${one} was at least ${say(least)} ${than} ${here}`
      : written`${one} was ${than} ${here}`;
  };
  const finding = order
    ? orderFinding(order)
    : expected.least <= 0
      ? expected.others > 1
        ? written`${measure} of ${figureOf(measure)} and the ${expected.others} other measurements can't be of one body: one of them is far from right`
        : written`${measure} of ${figureOf(measure)} and the other measurement can't be of one body: one of them is far from right`
      : rangeFinding(figureOf(measure, expected.least, expected.most));
  const why = swap
    ? written`${measure} and ${swap} may be swapped, for both would fit the other way round`
    : suspect
      ? written`it fits when ${suspect} is left out, so measure ${suspect} first`
      : slip && writtenIn(slip);
  const note = order ? "" : measuringNote(measure);
  return semicolonList([finding, why ?? "", note, written`please measure again`].filter((one) => one !== ""));
}
