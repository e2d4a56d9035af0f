import { CORDS, FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of lace, braid, fringe or other trimming for an edge, in the book's unit: the edge times
 * the fullness, plus at each square outer corner the trimming's width there and back with the way back
 * gathered, plus the length turned in at the ends, plus a share to spare. Sources: lace round a
 * corner, McGlauflin 1910; a tenth more fringe, Stephenson 1905.
 */
export const TRIM_LENGTH = define({
  name: "TRIM_LENGTH",
  summary: "How much lace, braid or fringe to buy for an edge, gathered or plain, with its corners.",
  source:
    "McGlauflin, Handicraft for Girls, 1910, sewing on lace; Stephenson, Cutting and Draping, 1905, fringe",
  words: "lace braid fringe ribbon ruffle gathered trimming corner how much, braid round the hem",
  takes: {
    edge: { kind: "length", about: "length of the edge to trim", from: 0, to: 100_000 },
    ratio: {
      kind: "share",
      about: "fullness: 1 is plain, 1.5 is half as much again",
      from: 1,
      to: 10,
      otherwise: 1,
    },
    corners: {
      kind: "count",
      about: "how many square outer corners the trimming goes round",
      from: 0,
      to: 500,
      otherwise: 0,
    },
    width: {
      kind: "length",
      usual: [0, 60],
      about: "width of the trimming, for the corners",
      from: 0,
      to: 100,
      otherwise: 0,
    },
    ends: {
      kind: "length",
      about: "length for joining or turning in, in all",
      from: 0,
      to: 100,
      otherwise: 0,
    },
    spare: { kind: "share", about: "extra share to buy: 0.1 is 10 %", from: 0, to: 5, otherwise: 0 },
  },
  returns: "length",
  alike: { "edge, width": "a corner alone may be asked for, its edge 0" },
  compute({ edge, ratio, corners, width, ends, spare }, { step, doubt }) {
    if (corners > 0 && width === 0)
      doubt(phrase`the width of the trimming is not given, so its corners take no length`);
    const along = step("along", "edge * ratio", edge * ratio);
    const turns = step("round_corners", "corners * width * (1 + ratio)", corners * width * (1 + ratio));
    const needed = step("needed", "along + round_corners + ends", along + turns + ends);
    return step("length", "needed * (1 + spare)", needed * (1 + spare));
  },
  draw({ edge, width }, { length = 0 }) {
    const deep = width > 0 ? width : length / 30;
    return drawStrips(
      { length: edge, width: deep, label: phrase`edge` },
      { length, width: deep, label: phrase`trimming`, lengthShows: "length" },
    );
  },
  examples: [
    {
      given: { edge: 24, ratio: 1.5 },
      gives: 36,
      because: "Fryer 1913: lace put on full takes one and a half times the distance",
    },
    {
      given: { edge: 0, ratio: 1.5, corners: 1, width: 1 },
      gives: 2.5,
      because: "McGlauflin 1910: round a corner two and a half widths when gathered by half",
    },
    {
      given: { edge: 100, spare: 0.1 },
      gives: 110,
      unit: "cm",
      because: "Stephenson 1905: a tenth more fringe",
    },
  ],
  cautions: `${FLAME} ${CORDS}`,
});
