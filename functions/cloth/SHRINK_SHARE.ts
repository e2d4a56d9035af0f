import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The share by which a sample has shrunk: the length lost over the length before. 0.05 is 5 %;
 * it is negative when the sample has grown. Measure along and across the cloth apart, on a sample of
 * 20 in (50 cm) or more, dried and pressed as the garment will be.
 */
export const SHRINK_SHARE = define({
  name: "SHRINK_SHARE",
  summary: "By how much cloth shrinks, from a sample measured before and after washing.",
  source: "Dooley, Textiles, 1910-14, experiment 36: loss over original",
  words: "shrinkage percent wash test swatch sample",
  takes: {
    before: { kind: "length", about: "length of the sample as cut", from: 1, to: 10_000 },
    after: {
      kind: "length",
      about: "length of the same sample after washing and pressing",
      from: 0.1,
      to: 10_000,
    },
  },
  returns: "share",
  usual: ["after >= 0.6 * before"],
  alike: { "before, after": "cloth may shrink or grow" },
  compute({ before, after }, { step }) {
    const lost = step("lost", "before - after", before - after);
    return step("share", "lost / before", lost / before);
  },
  draw({ before, after }) {
    const width = before / 4;
    return drawStrips(
      { length: before, width, label: phrase`before` },
      { length: after, width, label: phrase`after` },
    );
  },
  examples: [
    {
      given: { before: 20, after: 19 },
      gives: 0.05,
      because: "Dooley, Textiles, experiment 36: an inch of 20 in lost is 5 per cent (numbers ours)",
    },
    { given: { before: 50, after: 51 }, gives: -0.02, unit: "cm", because: "a sample that grew by 1 cm" },
  ],
});
