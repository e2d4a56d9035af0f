import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Where matching mark `number` falls on one of two edges that are gathered together, measured from
 * the beginning of the edge, in the book's unit; an empty text past the last mark. Divide both
 * edges, flat and finished, into the same number of equal parts and match the marks. `skip` is
 * left out of the division at the end: the overlap of a band. The first mark is the end of part 1,
 * the last is the end of the last part. Source: Johnson, It's Fun to Sew Aprons and Skirts, 1964.
 */
export const GATHER_MARK = define({
  name: "GATHER_MARK",
  summary: "Where to mark a skirt and its band in equal parts, so that gathers are shared out evenly.",
  source:
    "Johnson, It's Fun to Sew Aprons and Skirts, Oregon and Utah State ext. L-86, 1964: eight equal parts",
  words: "quarter marks divide eighths match gathers band skirt ruffle even notch",
  takes: {
    number: { kind: "count", about: "which mark, counted from the beginning", from: 1, to: 1000 },
    edge: { kind: "length", about: "the whole edge to be divided", from: 1, to: 100_000 },
    parts: { kind: "count", about: "into how many equal parts", from: 1, to: 1000, otherwise: 8 },
    skip: {
      kind: "length",
      about: "length left out at the end, such as an overlap",
      from: 0,
      to: 1000,
      otherwise: 0,
    },
  },
  returns: "length",
  compute({ number, edge, parts, skip }, { step }) {
    if (!isBelow(skip, edge))
      throw new Refusal(
        (say) => phrase`skip must be less than the edge of ${say(edge, skip)}, not ${say(skip, edge)}`,
      );
    const part = step("part", "(edge - skip) / parts", (edge - skip) / parts);
    return step("mark", 'IF(number > parts; ""; number * part)', number > parts ? "" : number * part);
  },
  draw({ edge, parts }, { part = 0, mark }) {
    const high = edge / 20;
    const at = Array.from({ length: Math.min(parts, 200) + 1 }, (_, i): Point => [i * part, 0]);
    return [
      stroke([[0, 0], [edge, 0]], "seam"),
      { kind: "marks", at, mark: "notch" },
      dimension([0, high], [part, high], { shows: "part" }),
      dimension([0, 3 * high], [edge, 3 * high], { label: phrase`edge` }),
      ...(mark === undefined ? [] : [dimension([0, -high], [mark, -high], { shows: "mark" })]),
    ]; // biome-ignore format: points in pairs
  },
  strip: ({ edge, parts }, { part = 0 }) => ({
    length: edge,
    marks: Array.from({ length: parts }, (_, i) => ({
      at: (i + 1) * part,
      role: "notch",
      says: phrase`${i + 1} of ${parts}`,
    })),
  }),
  examples: [
    {
      given: { number: 8, edge: 27, skip: 1 },
      gives: 26,
      because: "Johnson 1964: a band in eight parts, an inch of overlap left out",
    },
    { given: { number: 1, edge: 72, parts: 8 }, gives: 9, because: "the skirt in the same eight parts" },
    { given: { number: 9, edge: 72, parts: 8 }, gives: "", because: "there is no mark past the last one" },
    { given: { number: 3, edge: 120, parts: 4 }, gives: 90, unit: "cm", because: "the third quarter" },
  ],
});
