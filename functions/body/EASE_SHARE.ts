import { LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { girthRings } from "../drawing/girth-rings.ts";
import { phrase } from "../phrase.ts";

/**
 * The ease as a share of the body's girth: (garment − body) / body. 0.07 is 7 %,
 * negative where the garment is smaller. Source: geometry.
 */
export const EASE_SHARE = define({
  name: "EASE_SHARE",
  summary: "The ease as a share of the body: 0.05 means that the garment is 5 % larger.",
  source: "geometry",
  words: "ease percent ratio room",
  takes: {
    body: { kind: "length", about: "girth of the body", from: 1, to: 500 },
    garment: { kind: "length", about: "girth of the sewn garment there", from: 1, to: 5000 },
  },
  returns: "share",
  usual: ["garment >= 0.6 * body"],
  alike: { "body, garment": "stays draw the body in, a coat goes over it: either may be the larger" },
  compute({ body, garment }, { step }) {
    const ease = step("ease", "garment - body", garment - body);
    return step("ease_share", "ease / body", ease / body);
  },
  draw: ({ body, garment }) =>
    girthRings({ girth: body, label: phrase`body` }, { girth: garment, label: phrase`garment` }, null),
  examples: [
    { given: { body: 36, garment: 38.7 }, gives: 0.075, because: "2.7 in over 36" },
    {
      given: { body: 70, garment: 63 },
      gives: -0.1,
      unit: "cm",
      because: "stays a tenth smaller than the waist",
    },
  ],
  cautions: `Where the garment is to be smaller than the body: ${LACING}`,
});
