import { define } from "../define.ts";
import { TUCK_SPACING, TUCKS_ALIKE, tuckStrip } from "../drafting/tucks.ts";
import { drawRow } from "../drawing/row-along-edge.ts";
import { marksText } from "../marks-text.ts";
import { phrase } from "../phrase.ts";

const PARTS = { crease: [1], first: [0], second: [2], all: [0, 1, 2] } as const;

/**
 * The creases or stitching lines of all tucks of a row on the flat cloth as one text, measured from its beginning:
 * from tuck to tuck the flat cloth takes three widths and the space that shows, as with TUCK_MARK.
 * Source: McGlauflin, Handicraft for Girls, 1910, tucking; geometry.
 */
export const TUCK_MARKS = define({
  name: "TUCK_MARKS",
  summary: "Where the creases or stitching lines of all tucks fall on the flat cloth, as one text.",
  source: "McGlauflin, Handicraft for Girls, 1910, tucking; geometry",
  words: "all at once list one cell pin tucks crease",
  takes: {
    count: { kind: "count", about: "how many tucks", from: 1, to: 300 },
    ...TUCK_SPACING,
    which: {
      kind: "text",
      about: "the creases, the first or second of the two stitching lines, or all in order",
      choices: ["crease", "first", "second", "all"],
      otherwise: "crease",
    },
  },
  returns: "text",
  alike: TUCKS_ALIKE,
  compute({ count, width, space, start, which }, { step, unit }) {
    const each = step("flat_repeat", "3 * width + space", 3 * width + space);
    return marksText(places(count, start, each, width, which), unit);
  },
  draw({ count, width, start, which }, { flat_repeat = 0 }) {
    const found = places(count, start, flat_repeat, width, which);
    return drawRow(Math.max(start + count * flat_repeat, 1), found, phrase`tucks`);
  },
  strip: ({ count, width, start }, { flat_repeat = 0 }) => tuckStrip(count, start, flat_repeat, width),
  examples: [
    {
      given: { count: 3, width: 0.375, space: 0.375 },
      gives: "3/8; 1 7/8; 3 3/8 in",
      because: "from crease to crease 1 1/2 in: Fryer 1913, To Tuck Dress",
    },
    {
      given: { count: 2, width: 0.5, space: 1, start: 3, which: "all" },
      gives: "3; 3.5; 4; 5.5; 6; 6.5 cm",
      unit: "cm",
      because: "each tuck has three lines half a centimetre apart",
    },
  ],
});

const places = (
  count: number,
  start: number,
  each: number,
  width: number,
  which: keyof typeof PARTS,
): number[] =>
  Array.from({ length: count }, (_, i) => PARTS[which].map((part) => start + i * each + part * width)).flat();
