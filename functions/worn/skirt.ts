/**
 * A skirt or peplum as a garment to hang, and the plain proportions of the figure where the
 * arguments do not tell (common practice: an adult of 165 cm, a waist of 72 cm, a hip three tenths
 * more than the waist and an eighth of the stature below it).
 */
import type { FigureMeasures } from "./figure.ts";
import type { Garment, PleatTurn } from "./garment.ts";

/** What the proportions need of a call: lengths known in centimetres, and lengths in words. */
export interface Lengths {
  cm(figure: number): number;
  say(length: number, ...beside: number[]): string;
}

const STATURE = 165;
const USUAL_WAIST = 72;
/** A figure with a waist below this is taken as a smaller one of the same build. */
const SMALL_WAIST = 56;
const HIP_TO_WAIST = 1.3;
const HIP_DROP = 0.125;
/** Round the hip from one soft fold to the next, in centimetres. */
const FOLD = 9;

export const statureFor = (waist: number, { cm }: Lengths): number =>
  cm(STATURE) * Math.min(1, waist / cm(SMALL_WAIST));

/** How many soft folds go round: a multiple of four, so that front, back and sides look alike. */
export const foldsRound = (girth: number, { cm }: Lengths): number =>
  4 * Math.max(2, Math.min(8, Math.round(girth / cm(4 * FOLD))));

/** How many panels with this top edge go round a usual waist, and the sentence that says so. */
export function panelsRound(top: number, what: string, lengths: Lengths): { count: number; says: string } {
  const waist = lengths.cm(USUAL_WAIST);
  const count = Math.max(1, Math.round(waist / top));
  const said = count === 1 ? `one such ${what} goes` : `${count} such ${what}s go`;
  return { count, says: `${said} round, the number that comes nearest to a waist of ${lengths.say(waist)}` };
}

export interface Skirt {
  /** The edge of the body it is sewn to. */
  readonly waist: number;
  /** The body's hip, when it is told. */
  readonly hip?: number | null;
  readonly hip_drop?: number | null;
  /** The cloth all round, at a share of the way down; beyond 1 as it would go on. */
  readonly round: (share: number) => number;
  /** What of it goes round once pleats are folded; the same when left out. */
  readonly folded?: (share: number) => number;
  readonly depth: number | ((share: number) => number);
  readonly drop?: (share: number) => number;
  readonly folds?: number;
  readonly pleats?: readonly PleatTurn[];
  /** A gathered edge lets its cloth go over the first part of the way down. */
  readonly gathered?: boolean;
  readonly assumed?: readonly string[];
  readonly hips?: Pick<FigureMeasures, "hip_shape" | "hip_level">;
}

export function skirt(made: Skirt, lengths: Lengths): Garment {
  const { waist, round, pleats = [], drop = () => 0, gathered = false } = made;
  const depth = typeof made.depth === "number" ? () => made.depth as number : made.depth;
  const longest = Math.max(depth(0), depth(0.25), depth(0.5));
  const stature = statureFor(waist, lengths);
  const hip_drop = made.hip_drop ?? stature * HIP_DROP;
  const usual = Math.min(waist * HIP_TO_WAIST, (made.folded ?? round)(hip_drop / longest));
  const hip = made.hip ?? Math.max(usual, 0.5 * waist);
  const assumed = [...(made.assumed ?? [])];
  if (made.hip === undefined || made.hip === null)
    assumed.push(`a hip of ${lengths.say(hip)} lies ${lengths.say(hip_drop)} below the waist`);
  const clear = Math.max(...[0, 0.25, 0.5].map((at) => drop(at) + depth(at))) + lengths.cm(2);
  assumed.push(
    `the figure stands ${lengths.say(stature)} tall${clear > 0.62 * stature ? ", its waist lifted so that the hem clears the floor" : ""}`,
  );
  return {
    figure: { waist, hip, hip_drop, stature, clear, ...made.hips },
    from: "waist",
    drop,
    depth,
    round: gathered ? (share) => waist + (round(share) - waist) * Math.min(1, share / GATHERED) : round,
    folds: made.folds ?? foldsRound(hip, lengths),
    pleats,
    assumed,
  };
}

/** The share of the way down at which gathers are wholly let out. */
const GATHERED = 0.2;

/** What lies evenly between two lengths, at a share of the way and beyond it. */
export const between =
  (from: number, to: number) =>
  (share: number): number =>
    from + (to - from) * share;
