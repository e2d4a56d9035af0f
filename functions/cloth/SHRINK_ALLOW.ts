import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The length to cut, in the book's unit, so that `length` remains when it has shrunk by `share`.
 * More than length × (1 + share): cloth shrinks by a share of the length cut, not of the length
 * left. Cloth that grows has a negative share. Source: geometry.
 */
export const SHRINK_ALLOW = define({
  name: "SHRINK_ALLOW",
  summary: "How long to cut cloth that will shrink, so that the wanted length is left.",
  source: "geometry: length / (1 − share)",
  words: "shrinkage wash preshrink linen wool cotton fulling allowance percent",
  takes: {
    length: { kind: "length", about: "the length wanted after washing", from: 0, to: 100_000 },
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
    const cut = length / (1 - share);
    step("lost", "length / (1 - share) - length", cut - length);
    return step("cut", "length / (1 - share)", cut);
  },
  draw({ length }, { cut = 0 }) {
    const width = Math.max(cut, length) / 6;
    return drawStrips(
      { length: cut, width, label: phrase`cut`, lengthShows: "cut" },
      { length, width, label: phrase`after washing` },
    );
  },
  examples: [
    {
      given: { length: 100, share: 0.05 },
      gives: 105.2631578947,
      within: 1e-9,
      unit: "cm",
      because: "100 / 0.95",
    },
    { given: { length: 90, share: 0.1 }, gives: 100, because: "a tenth of 100 in is 10 in" },
  ],
});
