import { CORDS, LACING } from "../cautions.ts";
import { define } from "../define.ts";
import { rowStrip } from "../drafting/edge-strips.ts";
import { evenPlaces } from "../drafting/even-row.ts";
import { EYELET_ROW } from "../drafting/lacing.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import { marksText } from "../marks-text.ts";
import { phrase } from "../phrase.ts";

/**
 * The middles of all eyelets of an edge as one text, measured from its top end, `inset` from either end; staggered
 * by half a spacing for spiral lacing, one edge "upper" and the other "lower", as with EYELET_MARK. Source: geometry.
 */
export const EYELET_MARKS = define({
  name: "EYELET_MARKS",
  summary: "Where all eyelets of an edge go, measured from its top, as one text.",
  source: "geometry; inset of 1/2 in: McGlauflin, Handicraft for Girls, 1910",
  words: "all at once list one cell grommets lacing holes staggered",
  takes: {
    ...EYELET_ROW,
  },
  returns: "text",
  usual: ["inset < edge"],
  compute({ edge, count, inset, stagger }, context) {
    const { step, unit } = context;
    const clear = context.step("end", "inset", inset);
    const row = step("row", "edge - 2 * end", rowBetween(edge, clear, clear));
    const gaps = step(
      "gaps",
      'count - 1 + IF(stagger="level";0;0.5)',
      count - 1 + (stagger === "level" ? 0 : 0.5),
    );
    const spacing = step("spacing", "row / gaps", row / gaps);
    return marksText(places(count, clear, spacing, stagger), unit);
  },
  draw: ({ edge, count, stagger }, { end = 0, spacing = 0 }) =>
    drawRow(edge, places(count, end, spacing, stagger), phrase`eyelets`, { gapShows: "spacing" }),
  strip: ({ edge, count, stagger }, { end = 0, spacing = 0 }) =>
    rowStrip(edge, places(count, end, spacing, stagger), (number) => phrase`eyelet ${number}`),
  examples: [
    {
      given: { edge: 4, count: 4 },
      gives: "1/2; 1 1/2; 2 1/2; 3 1/2 in",
      because: "half an inch in, then an inch each",
    },
    {
      given: { edge: 20, count: 4, inset: 3, stagger: "lower" },
      gives: "5; 9; 13; 17 cm",
      unit: "cm",
      because: "14 cm make 3 1/2 spacings of 4; the lower edge begins half of one down",
    },
  ],
  cautions: `${LACING} ${CORDS}`,
});

const places = (count: number, end: number, spacing: number, stagger: string): number[] =>
  evenPlaces(count, end + (stagger === "lower" ? spacing / 2 : 0), spacing);
