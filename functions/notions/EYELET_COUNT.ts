import { CORDS, LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { drawEvenRow, evenRowCount } from "../drafting/even-row.ts";
import { phrase } from "../phrase.ts";

/**
 * How many eyelets one edge takes when the first and the last stand `inset` from its ends and no
 * two are farther apart than `spacing`; evenly spread, they stand `actual_spacing` apart. A
 * whole number, at least 2, or 1 where both insets meet. Source: division; 1/2 in inset from McGlauflin 1910 (book cover exercise).
 */
export const EYELET_COUNT = define({
  name: "EYELET_COUNT",
  summary: "How many eyelets to set along one edge so that they are no farther apart than wanted.",
  source: "geometry; inset of 1/2 in: McGlauflin, Handicraft for Girls, 1910",
  words: "grommets lacing holes corset stays bodice back how many rings hooks",
  takes: {
    edge: { kind: "length", about: "length of the edge to be laced, from top to bottom", from: 1, to: 500 },
    spacing: { kind: "length", about: "greatest distance from one eyelet to the next", from: 0.5, to: 50 },
    inset: {
      kind: "length",
      about: "distance from each end of the edge to the middle of the nearest eyelet",
      from: 0,
      to: 50,
      otherwise: { cm: 1.2, in: 1 / 2 },
    },
  },
  returns: "count",
  usual: ["spacing < edge", "inset <= spacing"],
  compute: evenRowCount,
  draw: ({ edge }, steps) => drawEvenRow(edge, steps, phrase`eyelets`),
  examples: [
    { given: { edge: 13, spacing: 1 }, gives: 13, because: "12 in between the outer two make 12 gaps" },
    {
      given: { edge: 36, spacing: 2.5, inset: 1.25 },
      gives: 15,
      unit: "cm",
      because: "33.5 cm need 14 gaps of no more than 2.5 cm",
    },
    {
      given: { edge: 36, spacing: 6, inset: 0 },
      gives: 7,
      because: "rings every 6 in and one at each end, L/6 + 1: Stephenson, Cutting and Draping, 1905",
    },
  ],
  cautions: `${LACING} ${CORDS}`,
});
