import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/** Width of the strip that covers a cord for piping, square across: once round the cord and a seam allowance on both sides; in the book's unit. */
export const PIPING_WIDTH = define({
  name: "PIPING_WIDTH",
  summary: "How wide to cut a strip for covering piping cord.",
  source: "geometry: girth of the cord and two seam allowances",
  words: "piping cording covered cord bias welt seam bodice",
  takes: {
    cord: { kind: "length", usual: [0.05, 4], about: "diameter of the cord", from: 0.05, to: 20 },
    seam: { kind: "length", about: "width of the seam allowance", from: 0, to: 20 },
  },
  returns: "length",
  usual: ["cord <= 2 * seam"],
  alike: { "cord, seam": "a thick cord may be wider than its seam" },
  compute({ cord, seam }, { step }) {
    const round = step("round", "PI() * cord", Math.PI * cord);
    return step("width", "round + 2 * seam", round + 2 * seam);
  },
  draw({ seam }, { width = 0 }) {
    const length = 4 * width;
    return [
      ...drawStrip({ length, width, label: phrase`strip`, widthShows: "width" }),
      stroke(
        [
          [0, seam],
          [length, seam],
        ],
        "stitch",
      ),
      stroke(
        [
          [0, width - seam],
          [length, width - seam],
        ],
        "stitch",
      ),
    ];
  },
  examples: [
    {
      given: { cord: 0.25, seam: 0.5 },
      gives: 1 + Math.PI / 4,
      because: "a quarter-inch cord is π/4 in round",
    },
    {
      given: { cord: 0.4, seam: 1.5 },
      gives: 3 + 0.4 * Math.PI,
      unit: "cm",
      because: "4 mm cord and twice 1.5 cm",
    },
  ],
});
