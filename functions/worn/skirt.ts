/**
 * A skirt or peplum as a garment to hang. What the arguments do not tell of the figure is taken from the
 * wearer's measurements in the book, and what these do not tell from plain proportions (common practice: an adult of 165 cm, a waist of 72 cm, a hip three tenths
 * more than the waist and an eighth of the stature below it).
 */
import { phrase, plural } from "../phrase.ts";
import { type Lengths, type Taken, taking } from "./body.ts";
import { type FigureMeasures, WAIST_HEIGHT } from "./figure.ts";
import type { Garment, PleatTurn } from "./garment.ts";

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

/** How many panels with this top edge go round the wearer's waist, or a usual one, and the sentence that says so. */
export function panelsRound(
  top: number,
  what: "panel" | "gore",
  lengths: Lengths,
): { count: number; says: string } {
  const known = lengths.body.known.waist;
  const waist = known?.length ?? lengths.cm(USUAL_WAIST);
  const count = Math.max(1, Math.round(waist / top));
  const goRound =
    what === "gore"
      ? phrase`${plural(count, "one such gore goes", "# such gores go")} round`
      : phrase`${plural(count, "one such panel goes", "# such panels go")} round`;
  return {
    count,
    says: known
      ? phrase`${goRound}, the number that comes nearest to a waist of ${lengths.say(waist)} from ${known.from}`
      : phrase`${goRound}, the number that comes nearest to a waist of ${lengths.say(waist)}`,
  };
}

/** Narrower panels are facings and guards; more than two panels go round only as the gores of a skirt (common practice). */
const LEAST_DEPTH = 7.5;
const GORE_DEPTH = 25;
/** How far the upper edge may be from the waist for ease, as a share of it. */
const EASE = 0.05;

/** Whether a panel can be a skirt's: once or twice round, or as often as a gore, its upper edge is as long as one of the seams at the waist. */
export function goesRound(
  { top, depth }: { readonly top: number; readonly depth: number },
  seams: readonly number[],
  { cm }: Pick<Lengths, "cm">,
): boolean {
  const most = depth >= cm(GORE_DEPTH) ? 12 : 2;
  if (depth < cm(LEAST_DEPTH)) return false;
  return seams.some((seam) => {
    const count = Math.round(seam / top);
    return count >= 1 && count <= most && Math.abs(count * top - seam) <= EASE * seam;
  });
}

export interface Skirt {
  /** The edge of the body it is sewn to. */
  readonly waist: number;
  /** The body's hip, when it is known. */
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
  /** What the caller has taken of the wearer's measurements. */
  readonly taken?: Taken;
  readonly quarters?: boolean;
  readonly pad?: Garment["pad"];
  readonly hips?: Pick<FigureMeasures, "hip_shape" | "hip_level">;
}

export function skirt(made: Skirt, lengths: Lengths): Garment {
  const { waist, round, pleats = [], drop = () => 0, gathered = false } = made;
  const depth = typeof made.depth === "number" ? () => made.depth as number : made.depth;
  const longest = Math.max(depth(0), depth(0.25), depth(0.5));
  const taken = made.taken ?? taking(lengths);
  const height = taken.take("stature");
  const stature = height ?? statureFor(waist, lengths);
  const drop_given = made.hip_drop ?? taken.take("hip_drop");
  const hip_drop = drop_given ?? stature * HIP_DROP;
  const usual = Math.min(waist * HIP_TO_WAIST, (made.folded ?? round)(hip_drop / longest));
  // A hip much less than the edge that is sewn on can't carry it: that edge is not worn at this waist.
  const measured = lengths.body.known.hip;
  const fits = measured === undefined || measured.length > 0.95 * waist;
  const hip_given = made.hip ?? (fits ? taken.take("hip") : undefined);
  const hip = hip_given ?? Math.max(usual, 0.5 * waist);
  const assumed = [...(made.assumed ?? [])];
  if (!fits)
    assumed.push(
      phrase`the hip girth ${lengths.say(measured.length, waist)} from ${measured.from} is not used, as the upper edge is longer, ${lengths.say(waist, measured.length)}`,
    );
  if (hip_given === undefined && drop_given === undefined)
    assumed.push(phrase`a hip of ${lengths.say(hip)} lies ${lengths.say(hip_drop)} below the waist`);
  else if (hip_given === undefined) assumed.push(phrase`the hip girth is ${lengths.say(hip)}`);
  else if (drop_given === undefined && !made.hips)
    assumed.push(phrase`the hip lies ${lengths.say(hip_drop)} below the waist`);
  const clear = Math.max(...[0, 0.25, 0.5].map((at) => drop(at) + depth(at))) + lengths.cm(2);
  const waist_height = taken.take("waist_height");
  const lifted = clear > (waist_height ?? WAIST_HEIGHT * stature);
  if (height === undefined) assumed.push(phrase`the figure stands ${lengths.say(stature)} tall`);
  if (lifted) assumed.push(phrase`the waist is lifted so that the hem clears the floor`);
  const above = { bust: taken.take("bust"), shoulder: taken.take("shoulder"), neck: taken.take("neck") };
  assumed.push(...taken.unsure);
  return {
    figure: { waist, hip, hip_drop, stature, clear, waist_height, ...above, ...made.hips },
    from: "waist",
    drop,
    depth,
    quarters: made.quarters ?? false,
    ...(made.pad ? { pad: made.pad } : {}),
    round: gathered ? (share) => waist + (round(share) - waist) * Math.min(1, share / GATHERED) : round,
    folds: made.folds ?? foldsRound(hip, lengths),
    pleats,
    measured: taken.measured,
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
