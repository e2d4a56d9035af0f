import { BONING } from "../cautions.ts";
import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Length to cut a bone for a channel, tips included, in the book's unit: the channel between the
 * stitching lines that close it, minus the space kept clear at both ends so that the tips neither
 * push through nor keep the seam from lying flat. Source: common practice, 1/4 in at each end.
 */
export const BONE_CUT = define({
  name: "BONE_CUT",
  summary: "How long to cut a bone for its channel, so that the tips do not push through.",
  source: "common practice: 6 mm or 1/4 in clear at each end",
  words: "boning steel whalebone reed corset stays busk casing synthetic spiral tips",
  takes: {
    channel: {
      kind: "length",
      about: "length of the channel between the stitching at its two ends",
      from: 2,
      to: 300,
    },
    clear: {
      kind: "length",
      about: "space kept clear at each end",
      from: 0,
      to: 10,
      otherwise: { cm: 0.6, in: 1 / 4 },
    },
  },
  returns: "length",
  usual: ["4 * clear < channel"],
  compute({ channel, clear }, context) {
    const free = context.step("free", "clear", clear);
    const cut = channel - 2 * free;
    if (!isAbove(cut, 0, channel))
      throw new Refusal(
        (say) =>
          phrase`clear must be less than half of the channel of ${say(channel, free)}, not ${say(free, channel)}`,
      );
    return context.step("cut", "channel - 2 * free", cut);
  },
  draw({ channel }, { cut = 0, free = 0 }) {
    const width = channel / 20;
    return [
      ...drawStrip({ length: channel, width, label: phrase`channel` }),
      stroke(
        [
          [free, width / 2],
          [free + cut, width / 2],
        ],
        "placement",
        { label: phrase`bone`, shows: "cut" },
      ),
      dimension([free, -width], [free + cut, -width], { shows: "cut" }),
    ];
  },
  examples: [
    { given: { channel: 11 }, gives: 10.5, because: "common practice: 1/4 in clear at each end" },
    { given: { channel: 30, clear: 1 }, gives: 28, unit: "cm", because: "1 cm clear at each end" },
  ],
  cautions: BONING,
});
