import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * A measurement of the pattern after the fitting, in the book's unit: flat + change, the change as
 * SEAM_CHANGE gives it, let out positive and taken in negative. Refuses a result of 0 or less.
 * Source: common practice.
 */
export const FITTED = define({
  name: "FITTED",
  summary: "A measurement of the pattern plus the change from the fitting.",
  source: "common practice",
  words: "after fitting adjusted corrected taken in let out new measurement",
  takes: {
    flat: { kind: "length", about: "the measurement on the pattern before the fitting", from: 0.1, to: 5000 },
    change: {
      kind: "length",
      about: "the change: let out positive, taken in negative",
      from: -1000,
      to: 1000,
    },
  },
  returns: "length",
  usual: ["change <= flat"],
  compute({ flat, change }, { step }) {
    if (!isAbove(flat + change, 0, flat)) {
      throw new Refusal(
        (say) => phrase`change must take in less than ${say(flat, -change)}, not ${say(-change, flat)}`,
      );
    }
    return step("fitted", "flat + change", flat + change);
  },
  draw({ flat }, { fitted = flat }) {
    const high = Math.max(flat, fitted) / 20;
    return [
      stroke([[0, 0], [flat, 0]], "guide", { label: phrase`before` }),
      stroke([[0, high], [fitted, high]], "seam", { label: phrase`after` }),
      dimension([0, 2 * high], [fitted, 2 * high], { shows: "fitted" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { flat: 32, change: -0.75 }, gives: 31.25, because: "three quarters taken in" },
    { given: { flat: 96, change: 1.5 }, gives: 97.5, unit: "cm", because: "let out by 1.5 cm" },
  ],
});
