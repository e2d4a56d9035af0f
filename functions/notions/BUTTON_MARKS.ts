import { define } from "../define.ts";
import { rowStrip } from "../drafting/edge-strips.ts";
import { evenPlaces, ROW_ENDS } from "../drafting/even-row.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import { marksText } from "../marks-text.ts";
import { phrase } from "../phrase.ts";

/**
 * The middles of all buttons of a row as one text, measured from the upper end of their edge: `count` buttons
 * spread evenly from `top` below that end to `bottom` above the other; a single button stands at `top`, as with
 * BUTTON_MARK. Source: geometry.
 */
export const BUTTON_MARKS = define({
  name: "BUTTON_MARKS",
  summary: "Where all buttons, hooks or snaps of a row go along an edge, evenly spread, as one text.",
  source: "geometry",
  words: "all at once list one cell hooks eyes snaps",
  takes: {
    edge: { kind: "length", about: "length of the edge to be closed", from: 1, to: 1000 },
    count: { kind: "count", about: "how many there are", from: 1, to: 500 },
    ...ROW_ENDS,
  },
  returns: "text",
  alike: { "top, bottom": "either end may be the freer" },
  compute({ edge, count, top, bottom }, { step, unit }) {
    const row = step("row", "edge - top - bottom", rowBetween(edge, top, bottom));
    const spacing = step("spacing", "row / MAX(1; count - 1)", row / Math.max(1, count - 1));
    return marksText(evenPlaces(count, top, spacing), unit);
  },
  draw: ({ edge, count, top }, { spacing = 0 }) =>
    drawRow(edge, evenPlaces(count, top, spacing), phrase`buttons`, { gapShows: "spacing" }),
  strip: ({ edge, count, top }, { spacing = 0 }) => rowStrip(edge, evenPlaces(count, top, spacing)),
  examples: [
    {
      given: { edge: 20, count: 5, top: 0.5, bottom: 3.5 },
      gives: "1/2; 4 1/2; 8 1/2; 12 1/2; 16 1/2 in",
      because: "16 in in four gaps of 4",
    },
    { given: { edge: 30, count: 3 }, gives: "0; 15; 30 cm", unit: "cm", because: "from end to end" },
  ],
});
