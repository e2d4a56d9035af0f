import { define } from "../define.ts";
import {
  type Crease,
  creasesOfPleat,
  drawCreases,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_STYLE,
} from "../drafting/pleat-creases.ts";
import { dimension } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { DRESS_MAKING } from "../sources.ts";

/**
 * Cloth that pleats take up, in the book's unit, to be added to the finished width: a knife pleat
 * takes twice its depth, a box or inverted pleat four times. The depth is from the outer fold to
 * the inner fold. Pleats that taper take this at the level where the depth is measured. Source:
 * common practice.
 */
export const PLEAT_ALLOWANCE = define({
  name: "PLEAT_ALLOWANCE",
  summary:
    "How much cloth to add for pleats: twice the depth of each knife pleat, four times that of a box pleat.",
  source: `common practice; rule 2 × depth × number printed in ${DRESS_MAKING}, p. 203`,
  words: "knife box inverted kick pleats extra width add underlay kilt",
  takes: {
    count: { kind: "count", about: "how many pleats", from: 0, to: 1000 },
    depth: {
      kind: "length",
      usual: [0, 40],
      about: "from a pleat's outer fold to its inner one",
      from: 0,
      to: 200,
    },
    style: PLEAT_STYLE,
  },
  returns: "length",
  compute({ count, depth, style }, { step }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const each = step("each", "layers * depth", layers * depth);
    return step("allowance", "count * each", count * each);
  },
  draw({ count, depth, style }, { allowance = 0, each = 0 }) {
    // Only what is hidden, pleat after pleat: the visible parts between them are left out.
    if (allowance <= 0) return [];
    const one = creasesOfPleat(style, depth, 0);
    const lines = Array.from({ length: count }, (_, i) =>
      one.map(({ at, kind }): Crease => ({ at: at + i * each, kind })),
    ).flat();
    const up = -allowance / 20;
    return [
      ...drawCreases(allowance, lines, "allowance"),
      dimension([0, up], [each, up], { label: phrase`one pleat`, shows: "each" }),
    ];
  },
  examples: [
    { given: { count: 6, depth: 1 }, gives: 12, because: "six knife pleats an inch deep take twelve inches" },
    {
      given: { count: 2, depth: 1.5, style: "box" },
      gives: 12,
      because: "two box pleats of four layers of 1 1/2 in",
    },
    {
      given: { count: 18, depth: 4 },
      gives: 144,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203 ex. 1b: 236 cm for a section of 92",
    },
  ],
});
