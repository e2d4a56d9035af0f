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

/**
 * Depth of each pleat, from outer to inner fold, in the book's unit, when a given number of even
 * pleats takes a flat width down to a finished one. For pleats that taper, ask for waist, hip and
 * hem separately. Source: common practice; Conover, Complete Course in Dressmaking, vol. 5, 1921,
 * pp. 63-69 shares the difference among the pleats at waist, hip and hem in this way.
 */
export const PLEAT_DEPTH = define({
  name: "PLEAT_DEPTH",
  summary:
    "How deep each pleat must be for a given number of pleats to take a flat width down to a finished one.",
  source: "common practice; Conover, Complete Course in Dressmaking, vol. 5, 1921, pp. 63-69",
  words: "knife box inverted how deep take in waist hip hem share fullness",
  takes: {
    flat: { kind: "length", about: "width before pleating, at one level", from: 1, to: 20_000 },
    finished: { kind: "length", about: "width once pleated, at the same level", from: 0.5, to: 20_000 },
    count: { kind: "count", about: "how many pleats", from: 1, to: 1000 },
    style: PLEAT_STYLE,
  },
  returns: "length",
  compute({ flat, finished, count, style }, { step }) {
    if (isBelow(flat, finished))
      throw new Refusal(
        (say) =>
          phrase`flat must be at least as wide as finished, not ${say(flat, finished)} against ${say(finished, flat)}`,
      );
    const taken = step("taken", "flat - finished", flat - finished);
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    step("each", "taken / count", taken / count);
    return step("depth", "taken / (layers * count)", taken / (layers * count));
  },
  draw({ flat, finished, count, style }, { depth = 0 }) {
    if (depth <= 0 || count > 60) return [];
    return [
      ...drawCreases(flat, evenCreases(style, finished, count, depth)),
      ...drawFolded(style, finished, count, depth, flat / 4),
    ];
  },
  examples: [
    {
      given: { flat: 36, finished: 24, count: 6 },
      gives: 1,
      because: "twelve inches among six knife pleats of two layers",
    },
    {
      given: { flat: 44, finished: 27.5, count: 8 },
      gives: 1.03125,
      because: "Conover 1921: 16 1/2 in at the hem among 8 pleats, 2 1/16 each, two layers",
    },
    {
      given: { flat: 100, finished: 60, count: 2, style: "box" },
      gives: 5,
      unit: "cm",
      because: "40 cm among two pleats of four layers",
    },
  ],
});
