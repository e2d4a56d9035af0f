import { define } from "../define.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * The length that has the same area on cloth `to` wide as `length` has on cloth `from` wide, plus
 * `extra`. An estimate: how well the pieces happen to fit either width is not considered; YARDAGE
 * lays them. The extension services' width chart agrees with it within 14 %, and adds a quarter of
 * a yard for a large difference in width, one-way cloth, or sleeves cut in one.
 */
export const WIDTH_CHANGE = define({
  name: "WIDTH_CHANGE",
  summary: "About how much wider or narrower cloth replaces a length of cloth of a known width.",
  source: "geometry: equal areas; the quarter yard extra: cooperative-extension fabric width chart (Rutgers)",
  words: "convert fabric width yardage conversion 45 60 inch narrow wide estimate substitute",
  takes: {
    length: { kind: "length", about: "length needed on the first cloth", from: 0, to: 100_000 },
    from: { kind: "length", usual: [15, 330], about: "width of the first cloth", from: 5, to: 1000 },
    to: { kind: "length", usual: [15, 330], about: "width of the other cloth", from: 5, to: 1000 },
    extra: {
      kind: "length",
      about: "extra length for one-way cloth or a large difference in width, usually a quarter of a yard",
      from: 0,
      to: 1000,
      otherwise: 0,
    },
  },
  returns: "length",
  usual: ["extra <= length", "2 * extra <= from"],
  alike: {
    "length, to": "a short length may be less than the cloth is wide",
    "from, to": "the other cloth may be wider or narrower",
  },
  compute({ length, from, to, extra }, { step }) {
    const same = step("same_area", "length * from / to", (length * from) / to);
    return step("changed", "same_area + extra", same + extra);
  },
  draw({ length, from, to }, { changed = 0 }) {
    return drawStrips(
      { length, width: from, label: phrase`first cloth` },
      { length: changed, width: to, label: phrase`other cloth`, lengthShows: "changed" },
    );
  },
  examples: [
    { given: { length: 90, from: 45, to: 54 }, gives: 75, because: "90 × 45 = 75 × 54" },
    {
      given: { length: 300, from: 90, to: 150, extra: 20 },
      gives: 200,
      unit: "cm",
      because: "180 cm have the same area, plus 20 cm extra",
    },
  ],
});
