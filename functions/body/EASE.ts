import { LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { girthRings } from "../drawing/girth-rings.ts";
import { phrase } from "../phrase.ts";

/**
 * What a garment has over the body at one level, in the book's unit: garment − body. Negative
 * where it is smaller than the body, as stays are. Spread evenly it stands off the body by its
 * 2π-th part. Both girths taken at the same level, over the same layers. Source: geometry.
 */
export const EASE = define({
  name: "EASE",
  summary: "How much larger the garment is than the body at the same place; negative where it is smaller.",
  source: "geometry",
  words: "room wearing ease looseness tight negative corset stays difference",
  takes: {
    body: { kind: "length", about: "girth of the body", from: 1, to: 500 },
    garment: { kind: "length", about: "girth of the sewn garment there", from: 1, to: 5000 },
  },
  returns: "length",
  usual: ["garment >= 0.6 * body"],
  alike: { "body, garment": "stays draw the body in, a coat goes over it: either may be the larger" },
  compute({ body, garment }, { step }) {
    step("stands_off", "(garment - body) / (2 * PI())", (garment - body) / (2 * Math.PI));
    return step("ease", "garment - body", garment - body);
  },
  draw: ({ body, garment }, { stands_off = 0 }) =>
    girthRings(
      { girth: body, label: phrase`body` },
      { girth: garment, label: phrase`garment` },
      stands_off > 0 ? "stands_off" : null,
    ),
  examples: [
    { given: { body: 36.5, garment: 39 }, gives: 2.5, because: "39 minus 36 1/2" },
    { given: { body: 28, garment: 25.5 }, gives: -2.5, because: "stays that draw the waist in by 2 1/2 in" },
  ],
  cautions: `Where the garment is to be smaller than the body: ${LACING}`,
});
