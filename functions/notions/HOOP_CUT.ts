import { HOOPS } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/** Length to cut of steel, reed or cane for a hoop `girth` round with overlapping ends; in the book's unit. */
export const HOOP_CUT = define({
  name: "HOOP_CUT",
  summary: "How long to cut steel or cane for a hoop, with its overlap.",
  source: "common practice: ends overlap 5 cm or 2 in and are bound or joined with a tube",
  words: "hoop steel crinoline farthingale pannier petticoat cane reed bustle",
  takes: {
    girth: { kind: "length", about: "girth of the hoop when closed", from: 10, to: 2000 },
    overlap: {
      kind: "length",
      about: "how far the ends overlap",
      from: 0,
      to: 100,
      otherwise: { cm: 5, in: 2 },
    },
  },
  returns: "length",
  usual: ["overlap <= 0.5 * girth"],
  compute({ girth, overlap }, context) {
    const lap = context.step("lap", "overlap", overlap);
    context.step("across", "girth / PI()", girth / Math.PI);
    return context.step("cut", "girth + lap", girth + lap);
  },
  draw({ girth }, { across = 0, lap = 0 }) {
    const r = across / 2;
    return [
      {
        kind: "edge",
        edge: [arc([0, 0], r, 0, 2 * Math.PI), arc([0, 0], r, 0, lap / r)],
        role: "stitch",
        label: phrase`hoop`,
        shows: "cut",
      },
      dimension([-r, 0], [r, 0], { label: phrase`across`, shows: "across" }),
      stroke(
        [
          [-girth / 2, 1.4 * r],
          [girth / 2, 1.4 * r],
        ],
        "guide",
        { label: phrase`girth` },
      ),
    ];
  },
  examples: [
    { given: { girth: 110 }, gives: 112, because: "common practice: 2 in to overlap" },
    { given: { girth: 300, overlap: 6 }, gives: 306, unit: "cm", because: "3 m and 6 cm" },
  ],
  cautions: HOOPS,
});
