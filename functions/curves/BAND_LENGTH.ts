import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * How long to cut a waistband, in the book's unit: the waist plus the length that overlap and turnings take
 * together. Source: Johnson 1964: waist and 2 1/2 in.
 */
export const BAND_LENGTH = define({
  name: "BAND_LENGTH",
  summary: "How long to cut a waistband, its overlap and turnings included.",
  source:
    "Johnson, It's Fun to Sew Aprons and Skirts, Oregon/Utah State extension L-86, 1964: the waist and 2 1/2 in",
  words: "waistband skirt band apron belt cut strip overlap",
  takes: {
    waist: { kind: "length", usual: [40, 200], about: "girth of the waist it goes round", from: 20, to: 300 },
    extra: {
      kind: "length",
      about: "length for overlap and turnings together",
      from: 0,
      to: 100,
      otherwise: { cm: 6.5, in: 2.5 },
    },
  },
  returns: "length",
  usual: ["extra < waist"],
  compute({ waist, extra }, context) {
    const more = context.step("more", "extra", extra);
    return context.step("length", "waist + more", waist + more);
  },
  draw: (_, { length = 0 }) =>
    drawStrip({ length, width: length / 10, label: phrase`band`, lengthShows: "length" }),
  examples: [
    { given: { waist: 24 }, gives: 26.5, because: "Johnson 1964: 24 in and 2 1/2 in" },
    {
      given: { waist: 70, extra: 5 },
      gives: 75,
      because: "3 cm of overlap and 1 cm at both ends",
      unit: "cm",
    },
  ],
});
