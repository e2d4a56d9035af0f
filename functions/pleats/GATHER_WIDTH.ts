import { FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * Flat length of a strip to be gathered, shirred, smocked or frilled to a finished length, in the
 * book's unit. Usual ratios: lace and light ruffles 1 1/2 (Kinne & Cooley 1916, Fryer 1913), a
 * crimped frill 2 (Ladies' Work-Table Book 1844), a French ruffle 2 1/3 (Stephenson 1905), a
 * shirred facing 3 (Archer 1911), smocking about 4. Joins and ends are not included.
 */
export const GATHER_WIDTH = define({
  name: "GATHER_WIDTH",
  summary:
    "How much to cut for a ruffle, frill, gathered skirt or smocking: the finished length times the fullness.",
  source:
    "Kinne & Cooley, Clothing and Health, 1916: ruffles 1 1/2 times; Stephenson, Cutting and Draping, 1905; Fryer, Mary Frances Sewing Book, 1913",
  words:
    "gather ruffle frill shirr smock ruche fullness how much to cut curtain lace strip length puff sleeve head ruff",
  takes: {
    finished: { kind: "length", about: "length of the edge it is put on", from: 0.1, to: 100_000 },
    ratio: { kind: "share", usual: [1, 8], about: "how many times as long: 1.5, 2, 3", from: 1, to: 20 },
  },
  returns: "length",
  compute({ finished, ratio }, { step }) {
    step("gathered_away", "finished * (ratio - 1)", finished * (ratio - 1));
    return step("flat", "finished * ratio", finished * ratio);
  },
  draw: ({ finished, ratio }) =>
    drawStrips(
      { length: finished * ratio, width: finished / 8, label: phrase`flat`, lengthShows: "flat" },
      { length: finished, width: finished / 8, label: phrase`finished` },
    ),
  examples: [
    {
      given: { finished: 90, ratio: 1.5 },
      gives: 135,
      because: "a ruffle for a skirt 2 1/2 yd round: 3 3/4 yd, Kinne & Cooley 1916",
    },
    {
      given: { finished: 36, ratio: 7 / 3 },
      gives: 84,
      because: "a French ruffle, 2 1/3 times: Stephenson 1905",
    },
    {
      given: { finished: 180, ratio: 3 },
      gives: 540,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 212 a: a frill of 1.80 m at a density of 1/3",
    },
  ],
  cautions: FLAME,
});
