import { define } from "../define.ts";
import { countInRow, evenPlaces, ROW_ENDS } from "../drafting/even-row.ts";
import { drawRow, rowBetween } from "../drawing/row-along-edge.ts";
import { phrase } from "../phrase.ts";

/**
 * How many buttons an edge takes when no two are farther apart than `spacing`, the first `top`
 * below its upper end and the last `bottom` above its lower one; evenly spread they stand
 * `actual_spacing` apart. 1 where nothing is left between the two. Source: division; rings every 6 in and one more, Stephenson 1905.
 */
export const BUTTON_COUNT = define({
  name: "BUTTON_COUNT",
  summary:
    "How many buttons, snaps or rings to sew along an edge so that they are no farther apart than wanted.",
  source: "geometry; Stephenson, Cutting and Draping, 1905, awnings: length over spacing and one more",
  words: "buttons snaps press studs rings fastenings how many placket front",
  takes: {
    edge: { kind: "length", about: "length of the edge to be closed", from: 1, to: 1000 },
    spacing: { kind: "length", about: "greatest distance from one to the next", from: 0.3, to: 100 },
    ...ROW_ENDS,
  },
  returns: "count",
  usual: ["spacing < edge", "top <= 2 * spacing"],
  alike: { "spacing, bottom": "the last may stand far above the lower end" },
  compute({ edge, spacing, top, bottom }, { step }) {
    const row = step("row", "edge - top - bottom", rowBetween(edge, top, bottom));
    return countInRow(row, spacing, step);
  },
  draw({ edge, top }, { actual_spacing = 0, count = 0 }) {
    const places = evenPlaces(count, top, actual_spacing);
    return drawRow(edge, places, phrase`buttons`, { marksShow: "count", gapShows: "actual_spacing" });
  },
  examples: [
    {
      given: { edge: 48, spacing: 6 },
      gives: 9,
      because: "Stephenson 1905: rings every 6 in and one at each end, 48/6 + 1",
    },
    {
      given: { edge: 40, spacing: 7, top: 1.5, bottom: 8 },
      gives: 6,
      unit: "cm",
      because: "30.5 cm in five gaps of 6.1 cm",
    },
  ],
});
