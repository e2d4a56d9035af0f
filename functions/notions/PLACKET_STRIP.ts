import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of one strip that binds both sides of a slit, in the book's unit: twice the slit plus
 * `extra` for its foot and for trimming. BIAS_CUT_WIDTH gives its width. Source: Kinne & Cooley
 * 1916.
 */
export const PLACKET_STRIP = define({
  name: "PLACKET_STRIP",
  summary: "How long to cut the strip for a bound placket.",
  source: "Kinne & Cooley, Clothing and Health, 1916, bloomers: one inch more than twice the opening",
  words: "placket continuous bound opening slit sleeve skirt lap facing",
  takes: {
    opening: { kind: "length", about: "length of the slit", from: 1, to: 200 },
    extra: {
      kind: "length",
      about: "extra length for the foot of the slit and for trimming",
      from: 0,
      to: 50,
      otherwise: { cm: 2.5, in: 1 },
    },
  },
  returns: "length",
  usual: ["extra <= opening"],
  compute({ opening, extra }, context) {
    const more = context.step("more", "extra", extra);
    return context.step("length", "2 * opening + more", 2 * opening + more);
  },
  draw(_given, { length = 0 }) {
    return drawStrip({ length, width: length / 10, label: phrase`strip`, lengthShows: "length" });
  },
  examples: [
    { given: { opening: 10 }, gives: 21, because: "Kinne & Cooley 1916: twice 10 in and 1 in" },
    { given: { opening: 12, extra: 2 }, gives: 26, unit: "cm", because: "twice 12 cm and 2 cm" },
  ],
});
