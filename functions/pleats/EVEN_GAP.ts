import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawRow } from "../drawing/row-along-edge.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * The gap that makes a row of tucks, pleats, buttons or hooks come out even, in the book's unit:
 * the length between the first and the last, divided by one less than their number. TUCK_COUNT and
 * BUTTON_COUNT say how many there are. Source: division; Dress Making, p. 209.
 */
export const EVEN_GAP = define({
  name: "EVEN_GAP",
  summary: "The corrected gap from one tuck, button or row to the next, so that they come out even.",
  source: "geometry: the length between the first and the last, divided by the number of gaps",
  words: "corrected gap spacing even tucks buttons rows how far apart come out exactly actual",
  takes: {
    edge: { kind: "length", about: "length of the edge or width that they go on", from: 0.5, to: 5000 },
    count: { kind: "count", about: "how many there are", from: 2, to: 4000 },
    start: { kind: "length", about: "from the beginning to the first", from: 0, to: 500, otherwise: 0 },
    end: {
      kind: "length",
      about: "from the last to the end; the same as start when left out",
      from: 0,
      to: 500,
      otherwise: null,
    },
  },
  returns: "length",
  usual: ["start < edge"],
  compute({ edge, count, start, end }, { step, say }) {
    const kept = step("kept", 'start + IF(end = ""; start; end)', start + (end ?? start));
    if (!isBelow(kept, edge)) {
      throw new Refusal(
        phrase`start and end must be less than the edge of ${say(edge)}, not ${say(kept)} together`,
      );
    }
    const row = step("row", "edge - kept", edge - kept);
    return step("gap", "row / (count - 1)", row / (count - 1));
  },
  draw({ edge, count, start }, { gap = 0 }) {
    if (count > 400) return [];
    const places = Array.from({ length: count }, (_, i) => start + i * gap);
    return drawRow(edge, places, phrase`marks`, { gapShows: "gap" });
  },
  examples: [
    {
      given: { edge: 39, count: 31, start: 1.5 },
      gives: 1.2,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 209 ex. 1: 36 cm in 30 gaps",
    },
    {
      given: { edge: 40, count: 6, start: 1.5, end: 8 },
      gives: 6.1,
      unit: "cm",
      because: "30.5 cm in five gaps",
    },
  ],
});
