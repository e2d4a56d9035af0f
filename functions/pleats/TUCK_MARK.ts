import { define } from "../define.ts";
import { TUCK_SPACING, TUCKS_ALIKE, tuckStrip } from "../drafting/tucks.ts";
import { dimension, stroke } from "../drawing/shapes.ts";

const PARTS = { first: 0, crease: 1, second: 2 } as const;

/**
 * Where a tuck's crease or stitching lines fall on the flat cloth, measured from its beginning, in
 * the book's unit. `space` is what shows between a tuck's fold and the next one's stitching once
 * sewn, so that from tuck to tuck the flat cloth takes three widths and the space; 0 for blind
 * tucks. Source: McGlauflin, Handicraft for Girls, 1910, tucking; geometry.
 */
export const TUCK_MARK = define({
  name: "TUCK_MARK",
  summary: "Where to mark the crease and stitching lines of each tuck on the flat cloth.",
  source: "McGlauflin, Handicraft for Girls, 1910, tucking; Fryer, Mary Frances Sewing Book, 1913; geometry",
  words: "pin tucks blind tucks nun tucks crease fold line stitching position flat spacing",
  takes: {
    number: { kind: "count", about: "which tuck, counted from the beginning", from: 1, to: 1000 },
    ...TUCK_SPACING,
    which: {
      kind: "text",
      about: "the crease, or the first or second of the two lines that are stitched together",
      choices: ["crease", "first", "second"],
      otherwise: "crease",
    },
  },
  returns: "length",
  alike: TUCKS_ALIKE,
  compute({ number, width, space, start, which }, { step }) {
    const each = step("flat_repeat", "3 * width + space", 3 * width + space);
    step("sewn_repeat", "width + space", width + space);
    const first = step("first_line", "start + (number - 1) * flat_repeat", start + (number - 1) * each);
    return step(
      "mark",
      'first_line + IF(which = "first"; 0; IF(which = "crease"; 1; 2)) * width',
      first + PARTS[which] * width,
    );
  },
  draw({ number, width, start }, { flat_repeat = 0, mark = 0 }) {
    const shown = Math.min(number + 1, 40);
    const long = start + shown * flat_repeat;
    const deep = long / 6;
    const lines = Array.from({ length: shown }, (_, i) => {
      const x = start + i * flat_repeat;
      const down = (at: number, role: "stitch" | "fold") => stroke([[at, 0], [at, deep]], role); // biome-ignore format: points in pairs
      return [down(x, "stitch"), down(x + width, "fold"), down(x + 2 * width, "stitch")];
    }).flat();
    const shapes = [
      ...lines,
      stroke([[0, 0], [long, 0]], "cut"),
      dimension([start, deep * 1.2], [start + flat_repeat, deep * 1.2], { shows: "flat_repeat" }),
    ]; // biome-ignore format: points in pairs
    if (mark > 0) shapes.push(dimension([0, -deep / 5], [mark, -deep / 5], { shows: "mark" }));
    return shapes;
  },
  strip: ({ number, width, start }, { flat_repeat = 0 }) => tuckStrip(number, start, flat_repeat, width),
  examples: [
    {
      given: { number: 2, width: 0.375, space: 0.375 },
      gives: 1.875,
      because: "from crease to crease 1 1/2 in: Fryer 1913, To Tuck Dress",
    },
    {
      given: { number: 1, width: 0.5, space: 1, start: 3, which: "second" },
      gives: 4,
      unit: "cm",
      because: "the second line, two widths past the first",
    },
    {
      given: { number: 3, width: 1, space: 0, start: 2 },
      gives: 9,
      because: "blind tucks: 2 + two repeats of 3 + 1",
    },
  ],
});
