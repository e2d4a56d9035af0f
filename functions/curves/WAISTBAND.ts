import { define } from "../define.ts";
import { bandRound, drawBand } from "../drafting/band.ts";

/**
 * A straight waistband as a piece, folded along its upper edge: as long as the waist with ease and
 * overlap, twice `depth` high, without seam allowances; (0, 0) at its upper left corner. Marks: the
 * fold, and where the overlap begins. Edge 1 is sewn to the skirt. It lies with its length across
 * the grain: TURN it by 90 to cut it along the selvedge, where it stretches least. Source: common practice.
 */
export const WAISTBAND = define({
  name: "WAISTBAND",
  summary: "A straight waistband with its fold and overlap, ready for allowances.",
  source: "common practice",
  words: "skirt band petticoat belt trousers fold overlap underlap",
  takes: {
    waist: { kind: "length", usual: [40, 200], about: "girth of the waist it goes round", from: 20, to: 300 },
    depth: { kind: "length", about: "finished height of the waistband", from: 0.5, to: 40 },
    ease: { kind: "length", about: "room added to the waist", from: 0, to: 30, otherwise: 0 },
    overlap: { kind: "length", about: "how far the ends lie over each other", from: 0, to: 60, otherwise: 0 },
  },
  returns: "piece",
  usual: ["depth < waist", "ease <= 0.5 * waist", "overlap <= 0.5 * waist"],
  alike: {
    "depth, ease": "a low band may have more ease than it is high",
    "depth, overlap": "a low band may lap over by more than it is high",
    "ease, overlap": "ease and overlap are free of each other",
  },
  compute: ({ waist, ...band }, context) => bandRound("waist", { girth: waist, ...band }, context),
  draw: drawBand,
  examples: [
    {
      given: { waist: 24, depth: 1.5, ease: 0.5, overlap: 1.5 },
      gives: { width: 26, length: 3, area: 78, edges: [26, 3, 26, 3] },
      because: "24 and half an inch of ease and 1 1/2 in of overlap, folded",
    },
    {
      given: { waist: 70, depth: 4, overlap: 3 },
      gives: { width: 73, length: 8 },
      because: "70 round and 3 over",
      unit: "cm",
    },
  ],
});
