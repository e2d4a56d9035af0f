import { define } from "../define.ts";
import { bandRound, drawBand } from "../drafting/band.ts";

/**
 * A straight cuff as a piece, folded along its lower edge: as long as the wrist with ease and
 * overlap, twice `depth` high, without seam allowances; (0, 0) at its upper left corner. Marks: the
 * fold, and where the overlap begins. Edge 1 is sewn to the sleeve. Cut one for each arm, the
 * second mirrored. Source: common practice.
 */
export const CUFF = define({
  name: "CUFF",
  summary: "A straight cuff with its fold and overlap, ready for allowances.",
  source: "common practice",
  words: "sleeve wrist band shirt fold overlap button",
  takes: {
    wrist: {
      kind: "length",
      usual: [10, 80],
      about: "girth of the wrist, or of the arm where the cuff sits",
      from: 5,
      to: 100,
    },
    depth: { kind: "length", about: "finished height of the cuff", from: 0.5, to: 40 },
    ease: { kind: "length", about: "room added to the wrist", from: 0, to: 30, otherwise: 0 },
    overlap: { kind: "length", about: "how far the ends lie over each other", from: 0, to: 30, otherwise: 0 },
  },
  returns: "piece",
  usual: ["depth < wrist", "ease <= wrist", "overlap <= wrist"],
  alike: {
    "depth, ease": "a low cuff may have more ease than it is high",
    "depth, overlap": "a low cuff may lap over by more than it is high",
  },
  compute: ({ wrist, ...band }, context) => bandRound("wrist", { girth: wrist, ...band }, context),
  draw: drawBand,
  examples: [
    {
      given: { wrist: 6.5, depth: 2.5, ease: 1, overlap: 1 },
      gives: { width: 8.5, length: 5, area: 42.5, edges: [8.5, 5, 8.5, 5] },
      because: "6 1/2 round the wrist, an inch of ease, an inch to button",
    },
    {
      given: { wrist: 16, depth: 6, ease: 3 },
      gives: { width: 19, length: 12 },
      because: "no overlap",
      unit: "cm",
    },
  ],
});
