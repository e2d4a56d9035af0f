import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Where buttonhole `number` of a row along an edge begins, measured from the edge's upper end, in
 * the book's unit: the first after `first`, each `hole` long with `gap` to the next. An empty text
 * past the last buttonhole. Source: McGlauflin 1910.
 */
export const BUTTONHOLE_MARK = define({
  name: "BUTTONHOLE_MARK",
  summary: "Where each buttonhole in a row begins, from the length of the holes and the spaces between them.",
  source: "McGlauflin, Handicraft for Girls, 1910, exercise 45",
  words: "buttonholes row vertical spacing start position",
  takes: {
    number: { kind: "count", about: "which buttonhole, counted from the top", from: 1, to: 500 },
    count: { kind: "count", about: "how many buttonholes there are", from: 1, to: 500 },
    hole: { kind: "length", about: "length of a buttonhole", from: 0.2, to: 30 },
    gap: {
      kind: "length",
      about: "space from the end of one buttonhole to the beginning of the next",
      from: 0,
      to: 200,
    },
    first: {
      kind: "length",
      about: "distance from the edge's upper end to the first buttonhole",
      from: 0,
      to: 200,
      otherwise: 0,
    },
  },
  returns: "length",
  alike: { "hole, first": "the first may stand anywhere", "gap, first": "the first may stand anywhere" },
  compute({ number, count, hole, gap, first }, { step }) {
    const pitch = step("pitch", "hole + gap", hole + gap);
    step("row_end", "first + count * pitch - gap", first + count * pitch - gap);
    return step(
      "start",
      'IF(number>count;"";first + (number - 1) * pitch)',
      number > count ? "" : first + (number - 1) * pitch,
    );
  },
  draw({ count, hole, first }, { pitch = 0, row_end = 0, start }) {
    const out = hole;
    const shapes: Shape[] = [
      stroke(
        [
          [0, 0],
          [0, row_end + hole],
        ],
        "cut",
        { label: phrase`edge` },
      ),
    ];
    for (let i = 0; i < Math.min(count, 200); i += 1) {
      const y = first + i * pitch;
      shapes.push(
        stroke(
          [
            [out, y],
            [out, y + hole],
          ],
          "stitch",
        ),
      );
    }
    shapes.push(dimension([2 * out, 0], [2 * out, row_end], { shows: "row_end" }));
    if (start !== undefined) shapes.push(dimension([-out, 0], [-out, start], { shows: "start" }));
    return shapes;
  },
  strip: ({ count, hole, first }, { pitch = 0, row_end = 0 }) => ({
    length: row_end,
    marks: Array.from({ length: count }, (_, i) => [
      { at: first + i * pitch, role: "notch" as const, says: phrase`hole ${i + 1} begins` },
      { at: first + i * pitch + hole, role: "notch" as const, says: phrase`hole ${i + 1} ends` },
    ]).flat(),
    goesOn: true,
  }),
  examples: [
    {
      given: { number: 3, count: 3, hole: 0.75, gap: 0.75, first: 0.5 },
      gives: 3.5,
      because: "McGlauflin 1910, exercise 45: 3/4 in long and apart, the first 1/2 in down: 0.5, 2, 3.5",
    },
    {
      given: { number: 4, count: 3, hole: 0.75, gap: 0.75 },
      gives: "",
      because: "there is no buttonhole past the last one",
    },
  ],
});
