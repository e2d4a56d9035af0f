import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Cloth that tucks take up, in the book's unit: twice the width of each tuck, whatever the space between
 * them. A tuck's width is from its fold to its stitching. Source: Kinne & Cooley, Clothing and
 * Health, 1916, lesson 11.
 */
export const TUCK_ALLOWANCE = define({
  name: "TUCK_ALLOWANCE",
  summary: "How much length or width to add for tucks: twice the width of each.",
  source: "Kinne & Cooley, Clothing and Health, 1916, lesson 11: a tuck takes up twice its width",
  words: "tucks pin tucks growth tuck extra length add petticoat how much",
  takes: {
    count: { kind: "count", about: "how many tucks", from: 0, to: 1000 },
    width: { kind: "length", usual: [0, 20], about: "from a tuck's fold to its stitching", from: 0, to: 50 },
  },
  returns: "length",
  compute({ count, width }, { step }) {
    const each = step("each", "2 * width", 2 * width);
    return step("allowance", "count * each", count * each);
  },
  draw({ count, width }, { allowance = 0, each = 0 }) {
    if (allowance <= 0) return [];
    const deep = allowance / 6;
    const lines = Array.from({ length: Math.min(count, 200) }, (_, i) => [
      stroke([[i * each, 0], [i * each, deep]], "stitch"),
      stroke([[i * each + width, 0], [i * each + width, deep]], "fold"),
    ]).flat(); // biome-ignore format: points in pairs
    return [
      ...lines,
      stroke([[0, 0], [allowance, 0], [allowance, deep], [0, deep], [0, 0]], "cut"),
      dimension([0, -deep / 4], [each, -deep / 4], { label: phrase`one tuck`, shows: "each" }),
      dimension([0, deep * 1.4], [allowance, deep * 1.4], { shows: "allowance" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { count: 3, width: 0.5 },
      gives: 3,
      because: "three half-inch tucks: Kinne & Cooley 1916, lesson 11",
    },
    { given: { count: 10, width: 0.3 }, gives: 6, unit: "cm", because: "ten pin tucks of 3 mm" },
  ],
});
