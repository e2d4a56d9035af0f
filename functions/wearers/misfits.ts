/** Which figures of one wearer do not fit the others, each figure to blame once. */
import { remember } from "../memo.ts";
import type { Measure, Survey } from "../survey/body-data.ts";
import { findOutlier, fits, misfits, type Outlier } from "../survey/outlier.ts";
import type { KnownMeasures } from "../survey/survey.ts";

export interface Misfit {
  readonly measure: Measure;
  readonly outlier: Outlier;
  /** The figures that it was compared with, itself among them, in millimetres. */
  readonly figures: KnownMeasures;
}

/** The most figures of one wearer that are blamed one by one. Where more do not fit, the chart is wrong as a whole. */
const MOST = 4;

/** Kept because an edit of one wearer's figures has every wearer of the chart checked again. */
const found = remember<string, readonly Misfit[]>(300);

/**
 * The figures to blame, the worst first. A figure that is to blame is left out before the next is looked
 * for, so that one slip is not reported at every figure that it was compared with. Only those of `mine` are blamed.
 */
export function misfitsAmong(
  surveys: readonly Survey[],
  known: KnownMeasures,
  mine: ReadonlySet<Measure>,
): readonly Misfit[] {
  const key = JSON.stringify([surveys.map(({ people }) => people), [...known], [...mine]]);
  return found(key, () => blamed(surveys, known, mine));
}

function blamed(surveys: readonly Survey[], known: KnownMeasures, mine: ReadonlySet<Measure>): Misfit[] {
  const list: Misfit[] = [];
  let left = known;
  while (list.length < MOST) {
    const odd = misfits(surveys, left).filter((measure) => mine.has(measure));
    if (odd[0] === undefined) break;
    const figures = left;
    const judged = (measure: Measure) => {
      const rest = new Map([...figures].filter(([other]) => other !== measure));
      const outlier = findOutlier(surveys, measure, figures.get(measure)!, rest);
      return outlier && { measure, outlier, figures };
    };
    const first = judged(odd[0]);
    // One figure that explains the others is to blame, even where another lies farther out.
    const { suspect } = first?.outlier ?? {};
    const misfit = (suspect && mine.has(suspect) && judged(suspect)) || first;
    if (!misfit) break;
    list.push(misfit);
    const out = new Set([misfit.measure, misfit.outlier.swap]);
    left = new Map([...figures].filter(([measure]) => !out.has(measure)));
  }
  return list;
}

/**
 * Which measure is to blame where this one does not fit: the measure with which it may be swapped, another one, or
 * neither, so that it is to blame itself. All figures are looked at together: one that is far from right would make
 * others seem to be swapped, or to blame each other.
 */
export function blameAmong(
  surveys: readonly Survey[],
  measure: Measure,
  figures: KnownMeasures,
  { swap, suspect }: Outlier,
): Pick<Outlier, "swap" | "suspect"> {
  const worst = misfitsAmong(surveys, figures, new Set(figures.keys()));
  if (worst[0]?.measure === measure) return { swap: worst[0].outlier.swap, suspect: null };
  if (worst.some((one) => one.measure === measure || one.outlier.swap === measure)) return { swap, suspect };
  const explaining = worst.find((one) => {
    const rest = [...figures].filter(([other]) => other !== measure && other !== one.measure);
    return fits(surveys, measure, figures.get(measure)!, new Map(rest));
  });
  return explaining ? { swap: null, suspect: explaining.measure } : { swap, suspect };
}
