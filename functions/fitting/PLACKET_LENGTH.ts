import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How long a slit must be so that an opening passes over the widest part on its way, in the book's
 * unit: the slit adds its length twice, so (passes + ease − opening) / 2, or 0 when the opening
 * passes without a slit. Waist over hips, neck over head, cuff over hand. Finishing the foot of
 * the slit and the lap are not included. Source: geometry.
 */
export const PLACKET_LENGTH = define({
  name: "PLACKET_LENGTH",
  summary: "How long a placket must be for a waist to pass the hips, a neck the head, or a cuff the hand.",
  source: "geometry",
  words: "opening slit pass over head hand hips get into dress placket vent",
  takes: {
    opening: { kind: "length", about: "length of the edge all round when closed", from: 1, to: 500 },
    passes: { kind: "length", about: "the widest girth that it must pass over", from: 1, to: 1000 },
    ease: { kind: "length", about: "extra room wanted while passing", from: 0, to: 100, otherwise: 0 },
  },
  returns: "length",
  usual: ["opening <= 1.2 * passes", "ease < opening"],
  alike: { "opening, passes": "an opening may be a little larger than what passes" },
  compute({ opening, passes, ease }, { step }) {
    step("missing", "passes + ease - opening", passes + ease - opening);
    return step(
      "placket",
      "MAX(0; (passes + ease - opening) / 2)",
      Math.max(0, (passes + ease - opening) / 2),
    );
  },
  draw({ opening }, { placket = 0 }): Shape[] {
    const half = opening / 2;
    const deep = Math.max(1.4 * placket, opening / 6);
    if (placket === 0)
      return [
        stroke(
          [
            [0, 0],
            [half, 0],
          ],
          "seam",
          { label: phrase`passes without a slit` },
        ),
      ];
    return [
      stroke([[0, 0], [half, 0], [half, deep]], "seam"),
      stroke([[0, 0], [0, deep]], "seam"),
      stroke([[half / 2, 0], [half / 2, placket]], "slash", { label: phrase`placket` }),
      dimension([half / 2 + half / 12, 0], [half / 2 + half / 12, placket], { shows: "placket" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { opening: 28, passes: 42, ease: 1 },
      gives: 7.5,
      because: "15 in are missing, and the slit counts twice",
    },
    {
      given: { opening: 60, passes: 57 },
      gives: 0,
      unit: "cm",
      because: "the head goes through without a slit",
    },
  ],
});
