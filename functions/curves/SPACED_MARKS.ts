import { define } from "../define.ts";
import { openStrip } from "../drafting/edge-strips.ts";
import { evenPlaces } from "../drafting/even-row.ts";
import { drawRow } from "../drawing/row-along-edge.ts";
import { marksText } from "../marks-text.ts";
import { phrase } from "../phrase.ts";

/**
 * A list of `count` places along an edge as one text: the first at `first`, each further one `spacing` on. An empty
 * text for no place at all. Source: geometry.
 */
export const SPACED_MARKS = define({
  name: "SPACED_MARKS",
  summary:
    "A list of places along an edge, the first one given and the others a fixed distance on, as one text.",
  source: "geometry",
  words: "all marks at once evenly spaced pleats places row first then every one cell list",
  takes: {
    count: { kind: "count", about: "how many places", from: 0, to: 500 },
    first: { kind: "length", about: "from the beginning of the edge to the first place", from: 0, to: 5000 },
    spacing: { kind: "length", about: "from each place to the next", from: 0.05, to: 1000 },
  },
  returns: "text",
  alike: { "first, spacing": "the first place may be nearer to the end or farther than to its neighbour" },
  compute({ count, first, spacing }, { step, unit }) {
    step("last", "first + MAX(0; count - 1) * spacing", first + Math.max(0, count - 1) * spacing);
    return marksText(evenPlaces(count, first, spacing), unit);
  },
  draw({ count, first, spacing }, { last = 0 }) {
    return count === 0 ? [] : drawRow(Math.max(last, 1), evenPlaces(count, first, spacing), phrase`marks`);
  },
  strip: ({ count, first, spacing }) => openStrip(evenPlaces(count, first, spacing)),
  examples: [
    {
      given: { count: 3, first: 1.5, spacing: 2 },
      gives: "1 1/2; 3 1/2; 5 1/2 in",
      because: "three pleats, the first 1 1/2 in from centre back and 2 in from each to the next",
    },
    { given: { count: 0, first: 1, spacing: 2 }, gives: "", because: "no pleat, no place" },
  ],
});
