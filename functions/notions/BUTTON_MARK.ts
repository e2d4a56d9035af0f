import { define } from "../define.ts";
import { rowStrip } from "../drafting/edge-strips.ts";
import { evenPlaces, ROW_ENDS } from "../drafting/even-row.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import { phrase } from "../phrase.ts";

/**
 * Where the middle of button `number` stands, measured from the upper end of its edge, in the
 * book's unit: `count` buttons spread evenly from `top` below that end to `bottom` above the
 * other. An empty text past the last button; a single button stands at `top`. Source: geometry.
 */
export const BUTTON_MARK = define({
  name: "BUTTON_MARK",
  summary: "Where to mark each button, hook or snap along an edge, evenly spread.",
  source: "geometry",
  words: "buttons hooks eyes snaps press studs position spacing placket evenly bones channels where they go",
  takes: {
    number: { kind: "count", about: "which one, counted from the top", from: 1, to: 500 },
    edge: { kind: "length", about: "length of the edge to be closed", from: 1, to: 1000 },
    count: { kind: "count", about: "how many there are", from: 1, to: 500 },
    ...ROW_ENDS,
  },
  returns: "length",
  alike: { "top, bottom": "either end may be the freer" },
  compute({ number, edge, count, top, bottom }, { step }) {
    const row = step("row", "edge - top - bottom", rowBetween(edge, top, bottom));
    const spacing = step("spacing", "row / MAX(1; count - 1)", row / Math.max(1, count - 1));
    return step(
      "mark",
      'IF(number>count;"";top + (number - 1) * spacing)',
      number > count ? "" : top + (number - 1) * spacing,
    );
  },
  draw({ edge, count, top }, { spacing = 0, mark }) {
    const places = evenPlaces(count, top, spacing);
    return drawRow(edge, places, phrase`buttons`, {
      gapShows: "spacing",
      ...(mark === undefined ? {} : { chosen: mark, chosenShows: "mark" }),
    });
  },
  strip: ({ edge, count, top }, { spacing = 0 }) => rowStrip(edge, evenPlaces(count, top, spacing)),
  examples: [
    {
      given: { number: 3, edge: 20, count: 5, top: 0.5, bottom: 3.5 },
      gives: 8.5,
      because: "16 in in four gaps of 4, the third two gaps below the first",
    },
    { given: { number: 6, edge: 20, count: 5 }, gives: "", because: "there is no button past the last one" },
  ],
});
