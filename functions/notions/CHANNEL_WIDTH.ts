import { BONING } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Distance between the two stitching lines of a channel between two layers of cloth, in the book's
 * unit: half the girth of the bone, its width plus its thickness, and `ease` to slide it in. The
 * layers bulge alike on both sides. For round cane, reed and hoops, half the girth is half a
 * circle. Source: geometry.
 */
export const CHANNEL_WIDTH = define({
  name: "CHANNEL_WIDTH",
  summary: "How far apart to stitch the two lines of a channel for a bone, a reed or a hoop.",
  source:
    "geometry: half the girth of the bone or hoop; ease, and 1 7/8 in for a round hoop of 1 in: common practice",
  words: "boning channel casing stitch corset stays steel reed hoop width",
  takes: {
    width: { kind: "length", about: "width of the bone, or the diameter of a round one", from: 0.1, to: 20 },
    thickness: { kind: "length", about: "thickness of the bone", from: 0, to: 5, otherwise: 0 },
    ease: {
      kind: "length",
      about:
        "extra width to slide the bone in: 1/16 to 1/8 in for a flat bone, about a third of the diameter for a round one",
      from: 0,
      to: 5,
      otherwise: 0,
    },
    shape: {
      kind: "text",
      about: "flat, or round, which needs no thickness",
      choices: ["flat", "round"],
      otherwise: "flat",
    },
  },
  returns: "length",
  usual: ["thickness <= width", "ease < width"],
  alike: { "thickness, ease": "a thin bone may have more ease than it is thick" },
  compute({ width, thickness, ease, shape }, { step }) {
    if (shape === "round" && thickness > 0)
      throw new Refusal(phrase`thickness must be left out for a round bone, which needs only its width`);
    const half = step(
      "half_girth",
      'IF(shape = "round"; PI() * width / 2; width + thickness)',
      shape === "round" ? (Math.PI * width) / 2 : width + thickness,
    );
    return step("channel", "half_girth + ease", half + ease);
  },
  draw({ width }, { channel = 0 }) {
    const length = 6 * width;
    const edge = (channel - width) / 2;
    return [
      stroke(
        [
          [0, 0],
          [length, 0],
        ],
        "stitch",
      ),
      stroke(
        [
          [0, channel],
          [length, channel],
        ],
        "stitch",
      ),
      stroke(
        [
          [0, edge],
          [length, edge],
          [length, edge + width],
          [0, edge + width],
          [0, edge],
        ],
        "placement",
        { label: phrase`bone` },
      ),
      dimension([-width, 0], [-width, channel], { shows: "channel" }),
    ];
  },
  examples: [
    {
      given: { width: 0.25, thickness: 0.0625, ease: 0.0625 },
      gives: 0.375,
      because: "a 1/4 in bone 1/16 in thick, 1/16 in to slide",
    },
    {
      given: { width: 1, ease: 0.3125, shape: "round" },
      gives: 1.875,
      within: 0.01,
      because: "common practice: 1 7/8 in for a round hoop of 1 in, half its girth 1 9/16 and 5/16 to slide",
    },
    { given: { width: 0.7, thickness: 0.1, ease: 0.2 }, gives: 1, unit: "cm", because: "7, 1 and 2 mm" },
  ],
  cautions: BONING,
});
