import { FLAME } from "../cautions.ts";
import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * A rough estimate, in the book's unit, of the cloth for a festoon or swag over a span, or of the
 * fringe for it: three times the span (a yard to the foot), and for the fringe 3 yd more. Narrow
 * cloth, 4 ft or so, and a moderate fall are assumed. Source: Stephenson 1905.
 */
export const FESTOON_CLOTH = define({
  name: "FESTOON_CLOTH",
  summary: "About how much cloth or fringe a festoon over an opening takes.",
  source: "Stephenson, Cutting and Draping, 1905, French festoon: a yard to each foot",
  words: "swag drapery swagged overskirt stage valance fringe estimate",
  takes: {
    span: { kind: "length", about: "width that the festoon hangs over", from: 1, to: 5000 },
    goods: {
      kind: "text",
      about: "whether to estimate cloth or fringe",
      choices: ["cloth", "fringe"],
      otherwise: "cloth",
    },
    tails: {
      kind: "length",
      about: "length of fringe for the tails",
      from: 0,
      to: 2000,
      otherwise: { cm: 275, in: 108 },
    },
  },
  returns: "length",
  compute({ span, goods, tails }, { step }) {
    const more = step("for_tails", 'IF(goods = "fringe"; tails; 0)', goods === "fringe" ? tails : 0);
    return step("length", "3 * span + for_tails", 3 * span + more);
  },
  draw({ span }, { length = 0 }) {
    return drawStrip({ length, width: span / 3, label: phrase`cloth`, lengthShows: "length" });
  },
  examples: [
    { given: { span: 60 }, gives: 180, because: "Stephenson 1905: 5 ft take 5 yd" },
    { given: { span: 60, goods: "fringe" }, gives: 288, because: "Stephenson 1905: and 8 yd of fringe" },
  ],
  cautions: FLAME,
});
