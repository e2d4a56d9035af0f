import { define } from "../define.ts";
import { openStrip } from "../drafting/edge-strips.ts";
import { drawRow } from "../drawing/row-along-edge.ts";
import { marksText } from "../marks-text.ts";
import { phrase } from "../phrase.ts";

/**
 * Places along an edge as one text, in ascending order, each once: "1; 3 1/2; 6 in". The unit stands behind the
 * last place, so that the text means the same in a book of another unit. The places may stand in several cells,
 * some of which may hold such texts; blank cells are passed over, and without any place the text is empty.
 * Figures have up to ten decimal places. Source: geometry.
 */
export const MARKS = define({
  name: "MARKS",
  summary: "Several places along an edge as one text, which WITH_MARKS, OPEN_PLEATS and PLEATED_PANEL read.",
  source: "geometry",
  words: "list of positions one cell all marks at once join buttons pleats tucks hooks eyelets",
  takes: {
    places: {
      kind: "length",
      about: "the places: cells with lengths, or with texts such as this function gives",
      from: 0,
      to: 10_000,
      many: true,
      blanks: true,
      marks: true,
    },
  },
  returns: "text",
  compute({ places }, { measure, unit }) {
    const sorted = places.filter((place) => place !== null).toSorted((a, b) => a - b);
    const once = sorted.filter((place, i) => i === 0 || place - sorted[i - 1]! > 1e-9 * Math.max(1, place));
    measure("count", "how many different places there are", once.length);
    return marksText(once, unit);
  },
  draw({ places }) {
    const found = places.filter((place) => place !== null);
    return found.length === 0 ? [] : drawRow(Math.max(...found, 1), found, phrase`marks`);
  },
  strip: ({ places }) => openStrip(places.filter((place) => place !== null).toSorted((a, b) => a - b)),
  examples: [
    {
      given: { places: [6, 1, null, 3.5] },
      gives: "1; 3 1/2; 6 in",
      because: "in order, the blank passed over",
    },
    { given: { places: ["1; 3 in", 2] }, gives: "1; 2; 3 in", because: "a list and a length together" },
    {
      given: { places: [2.5, 10] },
      gives: "2.5; 10 cm",
      unit: "cm",
      because: "a metric tape has no fractions",
    },
  ],
});
