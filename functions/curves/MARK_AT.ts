import { define } from "../define.ts";
import { openStrip } from "../drafting/edge-strips.ts";
import { drawRow } from "../drawing/row-along-edge.ts";
import { phrase } from "../phrase.ts";

/**
 * Place `number` of a list of places, in the book's unit; an empty text past the last. Source: geometry.
 */
export const MARK_AT = define({
  name: "MARK_AT",
  summary: "One place of a list of places, by its number, as a length to calculate with.",
  source: "geometry",
  words: "nth position of a list of marks read",
  takes: {
    marks: {
      kind: "length",
      about: 'the places as MARKS gives them, "1; 3 1/2; 6 in", or cells with lengths',
      from: 0,
      to: 10_000,
      many: true,
      blanks: true,
      marks: true,
    },
    number: { kind: "count", about: "which place, counted from the first", from: 1, to: 1000 },
  },
  returns: "length",
  compute({ marks, number }, { measure }) {
    const places = marks.filter((place) => place !== null);
    measure("count", "how many places there are", places.length);
    const found = places[number - 1];
    return measure("mark", () => phrase`place ${number} of the list`, found ?? "");
  },
  draw({ marks }, { mark }) {
    const places = marks.filter((place) => place !== null);
    if (places.length === 0) return [];
    return drawRow(Math.max(...places, 1), places, phrase`marks`, {
      ...(typeof mark === "number" && { chosen: mark, chosenShows: "mark" }),
    });
  },
  strip: ({ marks }) => openStrip(marks.filter((place) => place !== null).toSorted((a, b) => a - b)),
  examples: [
    { given: { marks: "1; 3 1/2; 6 in", number: 2 }, gives: 3.5, because: "the second of three" },
    {
      given: { marks: "25 mm; 4; 6 in", number: 1 },
      gives: 2.5,
      unit: "cm",
      because: "a place may name its own unit",
    },
    { given: { marks: [1, 2], number: 3 }, gives: "", because: "there are only two" },
  ],
});
