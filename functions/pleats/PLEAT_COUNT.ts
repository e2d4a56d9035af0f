import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import {
  drawCreases,
  drawFolded,
  evenCreases,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_STYLE,
} from "../drafting/pleat-creases.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { ROUNDING, roundCount, roundCountRule } from "../rounding.ts";

/**
 * How many pleats of about a given depth take a flat width down to a finished one. The number is
 * whole: the Working gives the depth that makes it come out exactly. Source: common practice.
 */
export const PLEAT_COUNT = define({
  name: "PLEAT_COUNT",
  summary: "How many pleats of a given depth take a flat width down to a finished one.",
  source: "common practice",
  words: "knife box inverted number of pleats fit width rounding corrected depth",
  takes: {
    flat: { kind: "length", about: "width before pleating", from: 1, to: 20_000 },
    finished: { kind: "length", about: "width once pleated", from: 0.5, to: 20_000 },
    depth: {
      kind: "length",
      about: "from a pleat's outer fold to its inner one, approximately",
      from: 0.1,
      to: 200,
    },
    style: PLEAT_STYLE,
    rounding: ROUNDING,
  },
  returns: "count",
  usual: ["depth <= finished"],
  compute({ flat, finished, depth, style, rounding }, { step }) {
    if (isBelow(flat, finished))
      throw new Refusal(
        (say) =>
          phrase`flat must be at least as wide as finished, not ${say(flat, finished)} against ${say(finished, flat)}`,
      );
    const taken = step("taken", "flat - finished", flat - finished);
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const exact = step("exact", "taken / (layers * depth)", taken / (layers * depth));
    const count = roundCount(exact, rounding);
    step(
      "corrected_depth",
      `taken / (layers * MAX(1; ${roundCountRule("exact")}))`,
      taken / (layers * Math.max(1, count)),
    );
    return step("count", roundCountRule("exact"), count);
  },
  draw({ flat, finished, style }, { count = 0, corrected_depth = 0 }) {
    if (count < 1 || count > 60 || corrected_depth <= 0) return [];
    return [
      ...drawCreases(flat, evenCreases(style, finished, count, corrected_depth)),
      ...drawFolded(style, finished, count, corrected_depth, flat / 4),
    ];
  },
  examples: [
    { given: { flat: 36, finished: 24, depth: 1 }, gives: 6, because: "twelve inches in pleats of two" },
    {
      given: { flat: 150, finished: 70, depth: 4, rounding: "down" },
      gives: 10,
      unit: "cm",
      because: "80 cm in pleats of 8",
    },
    {
      given: { flat: 54, finished: 30, depth: 2.5, style: "inverted", rounding: "up" },
      gives: 3,
      because: "24 in make 2.4 pleats of 10 in, so three that are a little shallower",
    },
  ],
});
