/**
 * Compares one body measurement with the others of the same wearer by means of a survey of bodies.
 * Lengths in this file are in millimetres, as in the survey.
 */

import { comparedName } from "../compared-name.ts";
import { remember, rememberWithObject } from "../memo.ts";
import { misspeltPhrase, nearestWord } from "../nearest-word.ts";
import { phrase, writtenIn } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { MEASURES, type Measure, PERCENTILES, SURVEYS, type Survey } from "./body-data.ts";

/** Other names a chart may use, and how the survey's way of measuring differs from a tape's. */
const NAMED: Partial<Record<Measure, { also?: readonly string[]; unlike?: string }>> = {
  "waist girth": { also: ["waist"], unlike: "in the survey the waist was taken level with the navel" },
  "hip girth": { also: ["hip", "hips", "seat girth", "full hip girth"] },
  "bust girth": { also: ["bust", "chest girth", "chest"] },
  "neck girth": { also: ["neck"], unlike: "in the survey the neck was taken at the Adam's apple" },
  "upper arm girth": {
    also: ["upper arm", "bicep girth", "biceps girth"],
    unlike: "in the survey the arm was bent and tensed",
  },
  "wrist girth": { also: ["wrist"] },
  "back waist length": {
    also: ["back neck point to waist", "nape to waist", "cervical to waist length", "waist back length"],
    unlike: "in the survey it ran down to the level of the navel",
  },
  "shoulder length": { also: ["shoulder"] },
  "arm length": {
    also: ["outer arm length", "sleeve length", "shoulder to wrist"],
    unlike: "in the survey it ran straight from shoulder to wrist",
  },
  "waist height": {
    also: ["waist to floor"],
    unlike: "in the survey the waist was taken level with the navel",
  },
  "hip height": {
    also: ["hip to floor"],
    unlike: "in the survey it was the level where the seat stands out farthest",
  },
  "cervical height": {
    also: ["cervical height (back)", "back neck height", "back neck point height", "nape to floor"],
  },
  stature: { also: ["height", "body height"] },
  "thigh girth": { also: ["thigh"] },
  "neck base girth": { also: ["base of neck girth"] },
  "head girth": { also: ["head"] },
  "hand girth": { also: ["hand"] },
  "calf girth": { also: ["calf"] },
  "ankle girth": { also: ["ankle"] },
  "knee height": { also: ["knee to floor"] },
  "inside leg height": { also: ["inside leg length", "inside leg", "crotch height", "inseam"] },
};

const names = new Map<string, Measure>(
  MEASURES.flatMap((measure) =>
    [measure, ...(NAMED[measure]?.also ?? [])].map((name) => [name, measure] as const),
  ),
);

/** Every name by which a measure of the survey is known, in small letters. */
export const MEASURE_NAMES: readonly string[] = [...names.keys()];

/** The measure a term of the chart means, or null. Capitals and spare spaces make no difference. */
export function measureNamed(term: string): Measure | null {
  return names.get(comparedName(term)) ?? null;
}

/** How the survey's figure differs from the tape's, as a clause; empty where it is the same. */
export const measuringNote = (measure: Measure): string => writtenIn(NAMED[measure]?.unlike ?? "");

/** Whether the survey has correlations of this measure with others; for the other measures it has only a range. */
export const isRelated = (measure: Measure): boolean =>
  MEASURES.indexOf(measure) <= SURVEYS.female.correlations.length;

/** Known figures of one wearer, by measure. */
export type KnownMeasures = ReadonlyMap<Measure, number>;

/**
 * The figures of a chart's rows whose measures are in the survey. Blank rows and other terms are
 * skipped, and the first of two rows with the same measure counts. `size` is a millimetre in the
 * rows' unit. Refuses a term that looks like a misspelt measure of the survey.
 */
export function knownFigures(
  terms: readonly (string | null)[],
  values: readonly (number | null)[],
  size: number,
): KnownMeasures {
  if (terms.length !== values.length) {
    throw new Refusal(
      phrase`terms and values must have the same number of cells, not ${terms.length} and ${values.length}`,
    );
  }
  const known = new Map<Measure, number>();
  terms.forEach((term, i) => {
    const measure = measureNamed(term ?? "");
    const value = values[i]!;
    const near = measure ? undefined : misspeltPhrase(term ?? "", names.keys());
    if (near)
      throw new Refusal(
        phrase`terms, number ${i + 1}, "${term!.trim().slice(0, 40)}", is not a measurement the survey has; is ${near} meant?`,
      );
    if (measure && value !== null && !known.has(measure)) known.set(measure, value / size);
  });
  return known;
}

/** The measure of a term, or a refusal that names some that would do. */
export function requireMeasure(term: string): Measure {
  const measure = measureNamed(term);
  if (measure) return measure;
  const near = nearestWord(term.trim(), names.keys());
  throw new Refusal(
    phrase`term must be a measurement the survey has, such as waist girth, back waist length or stature, not "${term.trim().slice(0, 40)}"${near ? phrase`; is ${near} meant?` : ""}`,
  );
}

/** Whose figures to compare with, as an argument's choices say it. */
export const surveysOf = (data: "female" | "male" | "either"): readonly Survey[] =>
  data === "either" ? [SURVEYS.female, SURVEYS.male] : [SURVEYS[data]];

/** The expected figure and range of a measure, and the number of other measures it was estimated from. */
export interface Expectation {
  readonly likely: number;
  readonly least: number;
  readonly most: number;
  readonly others: number;
}

/**
 * With other measures that have correlations: the regression on all of them and three residual
 * standard deviations either way. Without: from the survey's least to its greatest figure, with
 * one standard deviation to spare at both ends, and the median as the likeliest.
 */
export function expectation(survey: Survey, measure: Measure, known: KnownMeasures): Expectation {
  const [mean, sd, least, most] = survey.summaries[measure] as [number, number, number, number];
  const asked = MEASURES.indexOf(measure);
  const others: number[] = [];
  for (let i = 0; i <= survey.correlations.length; i += 1) {
    if (i !== asked && known.has(MEASURES[i]!)) others.push(i);
  }
  if (asked > survey.correlations.length || others.length === 0) {
    return { likely: percentile(survey, measure, 0.5), least: least - sd, most: most + sd, others: 0 };
  }
  const { weights, left } = regression(survey, asked, others);
  let standard = 0;
  others.forEach((other, i) => {
    const [theirs, deviation] = survey.summaries[MEASURES[other]!] as [number, number];
    standard += (weights[i]! * (known.get(MEASURES[other]!)! - theirs)) / deviation;
  });
  const likely = mean + sd * standard;
  return { likely, least: likely - 3 * sd * left, most: likely + 3 * sd * left, others: others.length };
}

interface Regression {
  readonly weights: readonly number[];
  /** The residual standard deviation, in standard deviations of the measure. */
  readonly left: number;
}

/** Kept because each row of a chart asks for the same regressions; they depend on which measures are known, not on their figures. */
const regressions = rememberWithObject<Survey, ReturnType<typeof remember<number, Regression>>>();
const MAX_REGRESSIONS = 4000;

/**
 * Multiple regression in standard units: the weights w solve R·w = r, where R holds the others'
 * correlations and r theirs with the measure. What is left is √(1 − r·w), widened by
 * (n − 1)/(n − p − 1) because the weights were fitted to the same people.
 */
function regression(survey: Survey, asked: number, others: readonly number[]): Regression {
  const kept = regressions(survey, () => remember<number, Regression>(MAX_REGRESSIONS));
  const key = others.reduce((mask, other) => mask | (1 << other), asked << 16);
  return kept(key, () => fitRegression(survey, asked, others));
}

function fitRegression(survey: Survey, asked: number, others: readonly number[]): Regression {
  const correlation = (a: number, b: number) =>
    a === b ? 1 : survey.correlations[Math.max(a, b) - 1]![Math.min(a, b)]!;
  const r = others.map((other) => correlation(other, asked));
  const weights = solve(
    others.map((a) => others.map((b) => correlation(a, b))),
    r,
  );
  const explained = weights.reduce((sum, weight, i) => sum + weight * r[i]!, 0);
  const freedom = (survey.people - 1) / (survey.people - others.length - 1);
  return { weights, left: Math.sqrt(Math.max(0, 1 - explained) * freedom) };
}

/** Solves a symmetric positive definite system by Cholesky's decomposition. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const low: number[][] = [];
  const forward: number[] = [];
  for (let i = 0; i < n; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= row[k]! * (i === j ? row[k]! : low[j]![k]!);
      row.push(i === j ? Math.sqrt(sum) : sum / low[j]![j]!);
    }
    low.push(row);
    let left = right[i]!;
    for (let k = 0; k < i; k += 1) left -= row[k]! * forward[k]!;
    forward.push(left / row[i]!);
  }
  const answer: number[] = new Array(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let left = forward[i]!;
    for (let k = i + 1; k < n; k += 1) left -= low[k]![i]! * answer[k]!;
    answer[i] = left / low[i]![i]!;
  }
  return answer;
}

/** The figure below which a share (0.01 to 0.99) of the people lie, on straight lines between the percentiles. */
export function percentile(survey: Survey, measure: Measure, share: number): number {
  const figures = survey.summaries[measure].slice(4);
  const at = share * 100;
  const next = Math.max(
    1,
    PERCENTILES.findIndex((one) => one >= at - 1e-9),
  );
  const [low, high] = [PERCENTILES[next - 1]!, PERCENTILES[next]!];
  return figures[next - 1]! + ((figures[next]! - figures[next - 1]!) * (at - low)) / (high - low);
}

/** Pairs of measures of which the first was less than the second in all 6068 people of the survey, by at least `by` millimetres. */
export const ORDERS: readonly (readonly [lesser: Measure, greater: Measure, by: number])[] = [
  ["cervical height", "stature", 194],
  ["waist height", "cervical height", 0],
  ["hip height", "waist height", 50],
  ["knee height", "inside leg height", 0],
  ["wrist girth", "upper arm girth", 0],
  ["upper arm girth", "thigh girth", 0],
  ["thigh girth", "hip girth", 0],
  ["neck girth", "bust girth", 0],
  ["neck girth", "neck base girth", 0],
  ["neck girth", "head girth", 0],
  ["wrist girth", "hand girth", 0],
  ["ankle girth", "calf girth", 0],
];
