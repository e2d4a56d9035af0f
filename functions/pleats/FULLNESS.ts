import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The flat width of a strip over its finished width once gathered or pleated: 1 is flat, 1.5 half
 * as full again, 3 pleats that lie edge to edge. Source: geometry.
 */
export const FULLNESS = define({
  name: "FULLNESS",
  summary: "How full a gathered or pleated strip is: its flat width over its finished width.",
  source: "geometry",
  words: "ratio times gather ruffle frill pleat how full density",
  takes: {
    flat: { kind: "length", about: "width before gathering or pleating", from: 0, to: 100_000 },
    finished: { kind: "length", about: "width afterwards", from: 0.1, to: 100_000 },
  },
  returns: "share",
  usual: ["finished <= flat"],
  compute({ flat, finished }, { step }) {
    step("taken", "flat - finished", flat - finished);
    return step("fullness", "flat / finished", flat / finished);
  },
  draw: ({ flat, finished }) =>
    drawStrips(
      { length: flat, width: Math.max(flat, finished) / 10, label: phrase`flat` },
      { length: finished, width: Math.max(flat, finished) / 10, label: phrase`finished` },
    ),
  examples: [
    { given: { flat: 135, finished: 90 }, gives: 1.5, because: "3 3/4 yd on 2 1/2 yd: half as full again" },
    {
      given: { flat: 540, finished: 180 },
      gives: 3,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 212: a frill of 1.80 m takes 5.4 m at a density of 1/3",
    },
  ],
});
