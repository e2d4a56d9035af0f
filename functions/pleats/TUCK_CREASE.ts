import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How far past the last stitching to crease the next tuck, in the book's unit: its own two widths
 * and the space that is to show. With a seam for the space it is the height of a crease that
 * hides a seam, as where a ruffle is set into a tuck above a hem. Source: McGlauflin, Handicraft
 * for Girls, 1910.
 */
export const TUCK_CREASE = define({
  name: "TUCK_CREASE",
  summary: "How far from the last stitching to crease the next tuck, or the tuck that covers a seam.",
  source: "McGlauflin, Handicraft for Girls, 1910, tucking and exercise 41",
  words: "next tuck fold gauge measure ruffle set in tuck hem cover seam",
  takes: {
    width: {
      kind: "length",
      usual: [0.05, 20],
      about: "from a tuck's fold to its stitching",
      from: 0.05,
      to: 50,
    },
    space: {
      kind: "length",
      about: "the space that should show between tucks, or the seam to cover",
      from: 0,
      to: 200,
    },
  },
  returns: "length",
  alike: { "width, space": "tucks may be wider or narrower than what shows between them" },
  compute({ width, space }, { step }) {
    const cloth = step("tuck", "2 * width", 2 * width);
    return step("crease", "tuck + space", cloth + space);
  },
  draw({ width, space }, { crease = 0 }) {
    const deep = crease / 2;
    const down = (x: number, role: "stitch" | "fold") => stroke([[x, 0], [x, deep]], role); // biome-ignore format: points in pairs
    return [
      down(0, "stitch"),
      down(space + width, "stitch"),
      down(crease, "fold"),
      down(crease + width, "stitch"),
      dimension([0, -deep / 8], [crease, -deep / 8], { shows: "crease" }),
      dimension([space + width, deep * 1.15], [crease, deep * 1.15], { label: phrase`width` }),
    ];
  },
  examples: [
    {
      given: { width: 0.125, space: 0.125 },
      gives: 0.375,
      because: "McGlauflin 1910, exercise 41: eighth-inch tucks, 3/8 in on",
    },
    {
      given: { width: 1, space: 0.25 },
      gives: 2.25,
      because: "McGlauflin 1910, exercise 41: a ruffle set in an inch tuck with a 1/4 in seam",
    },
    { given: { width: 1, space: 2 }, gives: 4, unit: "cm", because: "2 × 1 + 2" },
  ],
});
