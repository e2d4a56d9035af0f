import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/** The length that remains of `length` when it has shrunk by `share` of itself, in the book's unit. Source: geometry. */
export const SHRUNK = define({
  name: "SHRUNK",
  summary: "How long a length of cloth is once it has shrunk.",
  source: "geometry",
  words: "shrinkage wash after what is left preshrunk",
  takes: {
    length: { kind: "length", about: "the length before washing", from: 0, to: 100_000 },
    share: {
      kind: "share",
      usual: [-0.1, 0.3],
      about: "share of its length that the cloth loses: 0.05 is 5 %",
      from: -0.5,
      to: 0.9,
    },
  },
  returns: "length",
  compute({ length, share }, { step }) {
    const lost = step("lost", "length * share", length * share);
    return step("left", "length - lost", length - lost);
  },
  draw({ length }, { left = 0 }) {
    const width = length / 6;
    return drawStrips(
      { length, width, label: phrase`before washing` },
      { length: left, width, label: phrase`after`, lengthShows: "left" },
    );
  },
  examples: [
    {
      given: { length: 110, share: 0.1 },
      gives: 99,
      unit: "cm",
      because: "a tenth added to 100 cm is not enough for a tenth lost: 110 × 0.9",
    },
  ],
});
