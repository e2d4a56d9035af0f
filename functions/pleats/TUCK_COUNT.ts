import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { ROUNDING, roundCount, roundCountRule } from "../rounding.ts";
import { DRESS_MAKING } from "../sources.ts";

/**
 * How many tucks, or rows of stitching or trimming, go on a finished width: one more than the gaps
 * that fit between the plain parts at both edges. The Working gives the gap that makes this number
 * come out even. Source: Dress Making, Trade Practical, p. 209.
 */
export const TUCK_COUNT = define({
  name: "TUCK_COUNT",
  summary: "How many tucks go on a width when the gap between them and the plain edges are chosen.",
  source: `${DRESS_MAKING}, p. 209`,
  words: "pin tucks number of rows spacing gap edge corrected even yoke front",
  takes: {
    finished: { kind: "length", about: "the width they go on, once tucked", from: 1, to: 5000 },
    gap: {
      kind: "length",
      about: "from one tuck's stitching to the next, approximately",
      from: 0.1,
      to: 500,
    },
    edge: { kind: "length", about: "width kept plain at each edge", from: 0, to: 500, otherwise: 0 },
    rounding: ROUNDING,
  },
  returns: "count",
  alike: { "gap, edge": "the plain edge may be wider or narrower than the gap" },
  compute({ finished, gap, edge, rounding }, { step }) {
    if (isAbove(2 * edge, finished))
      throw new Refusal(
        (say) => phrase`edge must be at most half the finished ${say(finished)}, not ${say(edge)}`,
      );
    const between = step("between", "finished - 2 * edge", finished - 2 * edge);
    const exact = step("exact", "between / gap", between / gap);
    const gaps = step("gaps", roundCountRule("exact"), roundCount(exact, rounding));
    step("corrected_gap", "between / MAX(1; gaps)", between / Math.max(1, gaps));
    return step("count", "gaps + 1", gaps + 1);
  },
  draw({ finished, edge }, { count = 0, corrected_gap = 0 }) {
    const deep = finished / 4;
    const shapes = [
      ...Array.from({ length: Math.min(count, 400) }, (_, i) => {
        const x = edge + i * corrected_gap;
        return stroke([[x, 0], [x, deep]], "stitch");
      }),
      stroke([[0, 0], [finished, 0], [finished, deep], [0, deep], [0, 0]], "cut"),
      dimension([0, deep * 1.2], [finished, deep * 1.2], { label: phrase`finished` }),
    ]; // biome-ignore format: points in pairs
    if (count > 1)
      shapes.push(
        dimension([edge, -deep / 8], [edge + corrected_gap, -deep / 8], { shows: "corrected_gap" }),
      );
    return shapes;
  },
  examples: [
    {
      given: { finished: 39, gap: 1.2, edge: 1.5 },
      gives: 31,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 209 ex. 1: 36/1.2 = 30 gaps",
    },
    {
      given: { finished: 44, gap: 2, edge: 2 },
      gives: 21,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 209 exercise 1a: 40/2 = 20 gaps",
    },
    {
      given: { finished: 10, gap: 0.75, edge: 0.5, rounding: "down" },
      gives: 13,
      because: "9 in hold twelve gaps of 3/4",
    },
  ],
});
