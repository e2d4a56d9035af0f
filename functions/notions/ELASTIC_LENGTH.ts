import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of elastic to cut for a girth, in the book's unit: the girth minus the share by which it
 * is stretched, plus the overlap where it is joined. Source: common practice; elastics differ, so
 * try a piece.
 */
export const ELASTIC_LENGTH = define({
  name: "ELASTIC_LENGTH",
  summary: "How much elastic to cut for a waist, wrist or garter.",
  source: "common practice: a tenth less than the girth and 2.5 cm or 1 in to join",
  words: "elastic waistband casing garter cuff stretch join",
  takes: {
    girth: { kind: "length", about: "girth of the body there", from: 3, to: 400 },
    less: {
      kind: "share",
      about: "how much shorter than the girth, as a share: 0.1 is 10 %",
      from: 0,
      to: 0.7,
      otherwise: 0.1,
    },
    overlap: {
      kind: "length",
      about: "overlap for joining the ends",
      from: 0,
      to: 20,
      otherwise: { cm: 2.5, in: 1 },
    },
  },
  returns: "length",
  usual: ["overlap < 0.5 * girth"],
  compute({ girth, less, overlap }, context) {
    const join = context.step("join", "overlap", overlap);
    const worn = context.step("closed", "girth * (1 - less)", girth * (1 - less));
    return context.step("cut", "closed + join", worn + join);
  },
  draw({ girth }, { cut = 0 }) {
    const width = girth / 20;
    return drawStrips(
      { length: girth, width, label: phrase`girth` },
      { length: cut, width, label: phrase`elastic`, lengthShows: "cut" },
    );
  },
  examples: [
    { given: { girth: 30 }, gives: 28, because: "common practice: 27 in and 1 in to join" },
    { given: { girth: 36, less: 0.25, overlap: 2 }, gives: 29, unit: "cm", because: "27 cm and 2 cm" },
  ],
  cautions: "Garters and cuffs that leave marks or numbness are too tight: lengthen them.",
});
