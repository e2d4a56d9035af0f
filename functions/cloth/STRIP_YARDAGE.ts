import { define } from "../define.ts";
import { CLOTH_WIDTH, joinedBreadth } from "../drafting/breadths.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { DRESS_MAKING } from "../sources.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * Length of cloth for a strip `flat` long that is cut across the cloth in breadths and joined, in
 * the book's unit: as many breadths as the strip needs, each `depth` of the cloth's length. `seam`
 * is the width that a breadth loses to its joins. Source: geometry.
 */
export const STRIP_YARDAGE = define({
  name: "STRIP_YARDAGE",
  summary:
    "How much cloth a long strip takes when it is cut across in breadths and joined: a frill, ruffle or skirt.",
  source: `${DRESS_MAKING}, pp. 203 and 212; Baldt, Clothing for Women, 1916`,
  words: "ruffle frill flounce strips breadths how much to cut gathered skirt widths join band sash",
  takes: {
    flat: { kind: "length", about: "length of the strip before gathering or pleating", from: 1, to: 100_000 },
    depth: { kind: "length", about: "depth of the strip as cut, hem and seam included", from: 0.5, to: 1000 },
    cloth_width: CLOTH_WIDTH,
    seam: {
      kind: "length",
      about: "width that each breadth loses to its joins, in all",
      from: 0,
      to: 20,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["depth <= flat", "depth <= 2 * cloth_width", "seam < depth"],
  alike: {
    "flat, cloth_width": "a strip may be shorter than the cloth is wide",
    "depth, cloth_width": "a skirt's length may be more or less than the cloth's width",
  },
  compute({ flat, depth, cloth_width, seam }, { step }) {
    const breadth = step("breadth", "cloth_width - seam", joinedBreadth(cloth_width, seam));
    const breadths = step("breadths", "ROUNDUP(ROUND(flat / breadth; 8); 0)", roundUpToWhole(flat / breadth));
    step("left_over", "breadths * breadth - flat", breadths * breadth - flat);
    return step("length", "breadths * depth", breadths * depth);
  },
  draw({ depth, cloth_width, flat }, { length = 0, breadths = 0, breadth = 0 }) {
    const shapes: Shape[] = drawStrip({
      length,
      width: cloth_width,
      label: phrase`cloth`,
      lengthShows: "length",
    });
    for (let i = 1; i < Math.min(breadths, 200); i += 1)
      shapes.push(
        stroke(
          [
            [i * depth, 0],
            [i * depth, cloth_width],
          ],
          "cut",
        ),
      );
    // The last breadth is used in part.
    const last = flat - (breadths - 1) * breadth;
    shapes.push(
      stroke(
        [
          [length - depth, last],
          [length, last],
        ],
        "cut",
      ),
      dimension([0, -cloth_width / 10], [depth, -cloth_width / 10], { label: phrase`depth` }),
    );
    return shapes;
  },
  examples: [
    {
      given: { flat: 236, depth: 15, cloth_width: 90, seam: 2 },
      gives: 45,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203: three strips of 15 cm",
    },
    {
      given: { flat: 940, depth: 9.5, cloth_width: 119 },
      gives: 76,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 212: eight strips of 9.5 cm",
    },
    {
      given: { flat: 144, depth: 45, cloth_width: 36 },
      gives: 180,
      because: "Ingalls 1911: a hem of 4 yd from 36 in cloth is four breadths, 5 yd",
    },
  ],
});
