import { CORDS, LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { rowStrip } from "../drafting/edge-strips.ts";
import { evenPlaces } from "../drafting/even-row.ts";
import { EYELET_ROW } from "../drafting/lacing.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Where the middle of eyelet `number` stands, measured along its edge from the top end, in the
 * book's unit; an empty text past the last eyelet. For spiral lacing the two edges are staggered
 * by half a spacing: mark one edge "upper", the other "lower"; both then keep `inset` at their
 * outer end. Source: geometry.
 */
export const EYELET_MARK = define({
  name: "EYELET_MARK",
  summary: "Where to mark each eyelet along an edge, measured from its top.",
  source: "geometry; inset of 1/2 in: McGlauflin, Handicraft for Girls, 1910",
  words: "grommets lacing holes corset stays position spiral staggered offset place",
  takes: {
    number: { kind: "count", about: "which eyelet, counted from the top", from: 1, to: 200 },
    ...EYELET_ROW,
  },
  returns: "length",
  usual: ["inset < edge"],
  compute({ number, edge, count, inset, stagger }, context) {
    const { step } = context;
    const clear = context.step("end", "inset", inset);
    const row = step("row", "edge - 2 * end", rowBetween(edge, clear, clear));
    if (row === 0)
      throw new Refusal(phrase`inset must be less than half of the edge, to leave room between the eyelets`);
    const gaps = step(
      "gaps",
      'count - 1 + IF(stagger="level";0;0.5)',
      count - 1 + (stagger === "level" ? 0 : 0.5),
    );
    const spacing = step("spacing", "row / gaps", row / gaps);
    const lower = stagger === "lower" ? 0.5 : 0;
    return step(
      "mark",
      'IF(number>count;"";end + (number - 1 + IF(stagger="lower";0.5;0)) * spacing)',
      number > count ? "" : clear + (number - 1 + lower) * spacing,
    );
  },
  draw({ edge, count, stagger }, { end = 0, spacing = 0, mark }) {
    const lower = stagger === "lower" ? 0.5 : 0;
    const places = evenPlaces(count, end + lower * spacing, spacing);
    return drawRow(edge, places, phrase`eyelets`, {
      gapShows: "spacing",
      ...(mark === undefined ? {} : { chosen: mark, chosenShows: "mark" }),
    });
  },
  strip({ edge, count, stagger }, { end = 0, spacing = 0 }) {
    const lower = stagger === "lower" ? 0.5 : 0;
    return rowStrip(
      edge,
      evenPlaces(count, end + lower * spacing, spacing),
      (number) => phrase`eyelet ${number}`,
    );
  },
  examples: [
    { given: { number: 3, edge: 13, count: 13 }, gives: 2.5, because: "half an inch in, then an inch each" },
    {
      given: { number: 2, edge: 4, count: 2, inset: 0.5 },
      gives: 3.5,
      because: "a pair 3 in apart, 1/2 in from the edge: McGlauflin, Handicraft for Girls, 1910, book cover",
    },
    {
      given: { number: 1, edge: 20, count: 4, inset: 3, stagger: "lower" },
      gives: 5,
      unit: "cm",
      because: "14 cm between the ends make 3 1/2 spacings of 4; the lower edge begins half of one down",
    },
    { given: { number: 8, edge: 13, count: 7 }, gives: "", because: "there is no eyelet past the last one" },
  ],
  cautions: `${LACING} ${CORDS}`,
});
