import { define } from "../define.ts";
import { drawEvenRow, evenRowCount } from "../drafting/even-row.ts";
import { phrase } from "../phrase.ts";

/**
 * How many hooks and eyes close an edge without gaping when they stand no farther apart than
 * `spacing`, the outer two `inset` from its ends. At least 2, or 1 where both insets meet. Source: division;
 * 1/8 in inset and an inch or less apart on a fitted bodice are common practice.
 */
export const HOOK_COUNT = define({
  name: "HOOK_COUNT",
  summary: "How many hooks and eyes to sew along an opening so that it does not gape.",
  source: "geometry; 3 mm or 1/8 in inset: common practice",
  words: "hooks eyes bars closure fastening gape bodice placket waistband",
  takes: {
    edge: { kind: "length", about: "length of the opening, from top to bottom", from: 1, to: 500 },
    spacing: { kind: "length", about: "greatest distance from one hook to the next", from: 0.5, to: 30 },
    inset: {
      kind: "length",
      about: "distance from each end to the nearest hook",
      from: 0,
      to: 20,
      otherwise: { cm: 0.3, in: 1 / 8 },
    },
  },
  returns: "count",
  usual: ["spacing < edge", "inset <= spacing"],
  compute: evenRowCount,
  draw: ({ edge }, steps) => drawEvenRow(edge, steps, phrase`hooks`),
  examples: [
    { given: { edge: 14.25, spacing: 1 }, gives: 15, because: "14 in between the outer two make 14 gaps" },
    {
      given: { edge: 36, spacing: 2.5, inset: 0.5 },
      gives: 15,
      unit: "cm",
      because: "35 cm in fourteen gaps of 2.5 cm",
    },
  ],
});
