import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * The gap that stays open between the front edges of a garment put round the body, in the book's
 * unit: girth + overlap − fronts. `fronts` is the sewn garment from front edge to front edge, all
 * the way round; `overlap` is the amount the fronts should lap for buttons or hooks. Positive:
 * that much cloth is missing; 0: the fronts meet as wanted; negative: that much is to spare.
 * Source: geometry.
 */
export const FRONT_GAP = define({
  name: "FRONT_GAP",
  summary:
    "How far the fronts of a garment fail to meet round the body; negative when there is cloth to spare.",
  source: "geometry",
  words: "fronts meet close gap stomacher button stand lap overlap too small waistcoat open robe",
  takes: {
    girth: { kind: "length", about: "the girth to close round, ease included", from: 1, to: 1000 },
    fronts: {
      kind: "length",
      about: "the garment from front edge to front edge, all round",
      from: 1,
      to: 1000,
    },
    overlap: {
      kind: "length",
      about: "how far the fronts should lap over each other",
      from: 0,
      to: 200,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["fronts >= 0.5 * girth", "overlap < fronts"],
  alike: { "girth, fronts": "the sign of the answer says which is the larger" },
  compute({ girth, fronts, overlap }, { step }) {
    const wanted = step("wanted", "girth + overlap", girth + overlap);
    step("each_front", "(wanted - fronts) / 2", (wanted - fronts) / 2);
    return step("gap", "wanted - fronts", wanted - fronts);
  },
  draw({ girth, fronts, overlap }, { gap = 0 }) {
    // The girth cut open at centre back and laid straight, the two fronts coming in from its ends.
    const half = fronts / 2;
    const deep = girth / 8;
    const reach = (girth + overlap) / 2;
    const front = (side: number) =>
      stroke(
        [
          [-side * reach, 0],
          [side * (half - reach), 0],
          [side * (half - reach), deep],
          [-side * reach, deep],
        ],
        "cut",
      );
    return [
      stroke([[-girth / 2, -deep / 4], [girth / 2, -deep / 4]], "guide", { label: phrase`girth` }),
      front(1),
      front(-1),
      stroke([[0, -deep / 2], [0, 1.5 * deep]], "fold", { label: phrase`centre front` }),
      dimension([half - reach, deep / 2], [reach - half, deep / 2], gap > 0 ? { shows: "gap" } : { label: phrase`laps beyond` }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { girth: 38, fronts: 36 },
      gives: 2,
      because: "2 in are missing: the width of stomacher that shows",
    },
    {
      given: { girth: 38, fronts: 36, overlap: 1.5 },
      gives: 3.5,
      because: "the overlap for buttons is missing too",
    },
    { given: { girth: 90, fronts: 95, overlap: 4 }, gives: -1, unit: "cm", because: "1 cm to spare" },
  ],
});
