import { define } from "../define.ts";
import {
  BOX_WIDTH,
  checkBoxWidth,
  creaseStrip,
  drawCreases,
  evenCreases,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_LINES,
  PLEAT_STYLE,
  PLEAT_WIDTHS,
  type PleatStyle,
} from "../drafting/pleat-creases.ts";
import { marksText } from "../marks-text.ts";

/**
 * The folds, placement lines or both of all evenly set pleats on the flat cloth as one text, measured from its
 * beginning, in order: pleats half a spacing from each end of `finished`, without allowances, as with PLEAT_MARK.
 * Source: geometry.
 */
export const PLEAT_MARKS = define({
  name: "PLEAT_MARKS",
  summary: "Where all folds and placement lines of evenly set pleats fall on the flat cloth, as one text.",
  source: "geometry",
  words: "all at once list one cell knife box inverted chalk",
  takes: {
    finished: PLEAT_WIDTHS.finished,
    count: { kind: "count", about: "how many pleats", from: 1, to: 300 },
    depth: PLEAT_WIDTHS.depth,
    style: PLEAT_STYLE,
    which: PLEAT_LINES,
    box_width: BOX_WIDTH,
  },
  returns: "text",
  usual: ["depth <= finished"],
  compute({ finished, count, depth, style, which, box_width }, { step, unit }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    step("flat", "finished + layers * depth * count", finished + layers * depth * count);
    checkBoxWidth(style, step("spacing", "finished / count", finished / count), box_width);
    return marksText(places(finished, count, depth, style, which, box_width), unit);
  },
  draw: ({ finished, count, depth, style, box_width }, { flat = 0 }) =>
    count > 60 ? [] : drawCreases(flat, evenCreases(style, finished, count, depth, box_width), "flat"),
  strip: ({ finished, count, depth, style, box_width }, { flat = 0 }) =>
    creaseStrip(style, flat, evenCreases(style, finished, count, depth, box_width)),
  examples: [
    {
      given: { finished: 12, count: 3, depth: 1, which: "fold" },
      gives: "2; 8; 14 in",
      because: "half a spacing of 4 in, then a spacing and the 2 in that each pleat hides",
    },
    {
      given: { finished: 20, count: 1, depth: 4, style: "inverted" },
      gives: "10; 18; 26 cm",
      unit: "cm",
      because: "two folds, 16 cm apart, meet on the line between them",
    },
  ],
});

const places = (
  finished: number,
  count: number,
  depth: number,
  style: PleatStyle,
  which: "all" | "fold" | "placement",
  box: number | null,
): number[] =>
  evenCreases(style, finished, count, depth, box)
    .filter(({ kind }) => kind !== "inner" && (which === "all" || kind === which))
    .map(({ at }) => at)
    .toSorted((a, b) => a - b);
