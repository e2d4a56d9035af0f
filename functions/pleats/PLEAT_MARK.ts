import { define } from "../define.ts";
import {
  BOX_WIDTH,
  boxPleatFace,
  checkBoxWidth,
  creaseStrip,
  drawCreases,
  drawFolded,
  evenCreases,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_LINES,
  PLEAT_STYLE,
  PLEAT_WIDTHS,
} from "../drafting/pleat-creases.ts";
import { dimension } from "../drawing/shapes.ts";

/** Marks of one pleat, by style and by which are asked for. */
const MARKS = {
  knife: { all: 2, fold: 1, placement: 1 },
  box: { all: 4, fold: 2, placement: 2 },
  inverted: { all: 3, fold: 2, placement: 1 },
} as const;

/**
 * Where chalk mark `number` falls on the flat cloth, measured from its beginning, in the book's
 * unit; an empty text past the last mark. Pleats are set evenly over `finished`, half a spacing
 * from each end, without allowances. A fold is brought to the placement line beside it: in a knife
 * pleat the fold before it comes forward to it, two folds of an inverted pleat meet on one line,
 * each fold of a box pleat goes out to its own line. A box is 2 · depth wide, so that its
 * underfolds meet behind it, or `box_width` wide, and never wider than the spacing: then the boxes
 * touch. Source: geometry.
 */
export const PLEAT_MARK = define({
  name: "PLEAT_MARK",
  summary: "Where to chalk each fold and placement line of evenly set pleats on the flat cloth.",
  source: "geometry",
  words: "knife box inverted pleats marking fold line position spacing chalk list",
  takes: {
    number: { kind: "count", about: "which mark, counted from the beginning", from: 1, to: 4000 },
    finished: PLEAT_WIDTHS.finished,
    count: { kind: "count", about: "how many pleats", from: 1, to: 1000 },
    depth: PLEAT_WIDTHS.depth,
    style: PLEAT_STYLE,
    which: PLEAT_LINES,
    box_width: BOX_WIDTH,
  },
  returns: "length",
  usual: ["depth <= finished"],
  alike: { "number, count": "there are more marks than pleats" },
  compute({ number, finished, count, depth, style, which, box_width }, { step }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const flat = step("flat", "finished + layers * depth * count", finished + layers * depth * count);
    const spacing = step("spacing", "finished / count", finished / count);
    checkBoxWidth(style, spacing, box_width);
    const face = step(
      "face",
      'MIN(IF(box_width = ""; 2 * depth; box_width); spacing)',
      boxPleatFace(depth, spacing, box_width),
    );
    const each = step(
      "marks_each",
      'IF(which = "all"; IF(style = "knife"; 2; IF(style = "box"; 4; 3)); IF(which = "fold"; IF(style = "knife"; 1; 2); IF(style = "box"; 2; 1)))',
      MARKS[style][which],
    );
    const pleat = step("pleat", "INT((number - 1) / marks_each) + 1", Math.floor((number - 1) / each) + 1);
    const place = step("place", "number - (pleat - 1) * marks_each", number - (pleat - 1) * each);
    // The place among all marks of the pleat: knife fold, placement; inverted fold, placement, fold;
    // box placement, fold, fold, placement.
    const folds = style === "box" ? place + 1 : 2 * place - 1;
    const slot = step(
      "slot",
      'IF(which = "all"; place; IF(which = "fold"; IF(style = "box"; place + 1; 2 * place - 1); IF(style = "box"; 3 * place - 2; 2)))',
      which === "all" ? place : which === "fold" ? folds : style === "box" ? 3 * place - 2 : 2,
    );
    const middle = (pleat - 0.5) * spacing + (pleat - 1) * layers * depth;
    step("middle", "(pleat - 0.5) * spacing + (pleat - 1) * layers * depth", middle);
    const offset = step(
      "from_middle",
      'IF(style = "box"; IF(slot < 3; -1; 1) * face / 2 + 2 * depth * INT(slot / 2); 2 * depth * (slot - 1))',
      style === "box"
        ? ((slot < 3 ? -1 : 1) * face) / 2 + 2 * depth * Math.floor(slot / 2)
        : 2 * depth * (slot - 1),
    );
    step("past_it", "flat - middle - from_middle", flat - middle - offset);
    return step(
      "mark",
      'IF(number > count * marks_each; ""; middle + from_middle)',
      number > count * each ? "" : middle + offset,
    );
  },
  draw({ finished, count, depth, style, box_width }, { flat = 0, mark }) {
    if (count > 60) return [];
    const up = -flat / 24;
    return [
      ...drawCreases(flat, evenCreases(style, finished, count, depth, box_width), "flat"),
      ...(mark === undefined ? [] : [dimension([0, up], [mark, up], { shows: "mark" })]),
      ...drawFolded(style, finished, count, depth, flat / 4, box_width),
    ];
  },
  strip: ({ finished, count, depth, style, box_width }, { flat = 0 }) =>
    creaseStrip(style, flat, evenCreases(style, finished, count, depth, box_width)),
  examples: [
    {
      given: { number: 1, finished: 24, count: 6, depth: 1 },
      gives: 2,
      because: "half a spacing of 4 in to the first fold",
    },
    {
      given: { number: 2, finished: 24, count: 6, depth: 1 },
      gives: 4,
      because: "its placement line, twice the depth further",
    },
    {
      given: { number: 6, finished: 24, count: 6, depth: 1, which: "fold" },
      gives: 32,
      because: "5 1/2 spacings and five pleats of 2 in",
    },
    {
      given: { number: 3, finished: 20, count: 1, depth: 4, style: "inverted" },
      gives: 26,
      unit: "cm",
      because: "the second fold of an inverted pleat lies its four layers, 16 cm, past the first",
    },
    {
      given: { number: 2, finished: 12, count: 3, depth: 2, style: "box", box_width: 2 },
      gives: 5,
      because: "boxes of 2 in and spaces of 2 in: the first box's fold is brought 4 in back, to 1 in",
    },
    {
      given: { number: 5, finished: 20, count: 1, depth: 4, style: "box" },
      gives: "",
      because: "one box pleat has four marks",
    },
  ],
});
