import { define } from "../define.ts";
import {
  creaseStrip,
  creasesAt,
  drawCreases,
  drawFoldedAt,
  HIDDEN_LAYERS_RULE,
  hiddenLayers,
  PLEAT_LINES,
  PLEAT_STYLE,
} from "../drafting/pleat-creases.ts";
import { depthsOf, PLEAT_DEPTHS, PLEAT_PLACES, pleatsAt } from "../drafting/uneven-pleats.ts";
import { dimension } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Where chalk mark `number` of a row of pleats of different depths falls on the flat cloth,
 * measured from its beginning, in the book's unit; an empty text past the last mark. Marks come in
 * the order of PLEAT_MARK: fold lines and the placement lines they are brought to, without
 * allowances. Each pleat is at its place in `places` along the finished width, or all are spaced
 * evenly. PLEATED_PANEL draws a panel with such pleats. Source: geometry.
 */
export const UNEVEN_MARK = define({
  name: "UNEVEN_MARK",
  summary: "Where to chalk each fold and placement line of pleats of different depths on the flat cloth.",
  source: "geometry",
  words: "unequal uneven graduated pleats different depths list marking fold placement line chalk",
  takes: {
    number: { kind: "count", about: "which mark, counted from the beginning", from: 1, to: 4000 },
    finished: { kind: "length", about: "width once pleated", from: 1, to: 5000 },
    depths: PLEAT_DEPTHS,
    places: PLEAT_PLACES,
    style: PLEAT_STYLE,
    which: PLEAT_LINES,
  },
  returns: "length",
  usual: ["MAX(depths) <= finished / 2"],
  compute({ number, finished, depths, places, style, which }, { step, measure }) {
    const pleats = pleatsAt(style, finished, depths, places);
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const sum = depthsOf(depths).reduce((a, b) => a + b, 0);
    const flat = step("flat", "finished + layers * SUM(depths)", finished + layers * sum);
    const marks = creasesAt(style, pleats).filter(({ kind }) => kind !== "inner");
    const asked = marks.filter(({ kind }) => which === "all" || kind === which);
    measure("marks", "marks of this kind along the strip", asked.length);
    const mark = asked[number - 1];
    if (!mark) return measure("mark", () => phrase`there are only ${asked.length} marks of this kind`, "");
    const how = {
      fold: () => phrase`a fold, with everything hidden before it laid out flat`,
      placement: () => phrase`a placement line, with everything hidden before it laid out flat`,
      inner: () => phrase`an inner fold, with everything hidden before it laid out flat`,
    };
    const found = measure("mark", how[mark.kind], mark.at);
    step("past_it", "flat - mark", flat - found);
    return found;
  },
  draw({ finished, depths, places, style }, { flat = 0, mark }) {
    const pleats = pleatsAt(style, finished, depths, places);
    if (pleats.length > 60) return [];
    const up = -flat / 24;
    return [
      ...drawCreases(flat, creasesAt(style, pleats), "flat"),
      ...(mark === undefined ? [] : [dimension([0, up], [mark, up], { shows: "mark" })]),
      ...drawFoldedAt(style, finished, pleats, flat / 4),
    ];
  },
  strip: ({ finished, depths, places, style }, { flat = 0 }) =>
    creaseStrip(style, flat, creasesAt(style, pleatsAt(style, finished, depths, places))),
  examples: [
    {
      given: { number: 3, finished: 24, depths: [1, 1.5, 2] },
      gives: 14,
      because: "half of 8 in and 8 more to the second fold, and the 2 in hidden by the first",
    },
    {
      given: { number: 4, finished: 24, depths: [1, 1.5, 2] },
      gives: 17,
      because: "its placement line, twice 1 1/2 in further",
    },
    {
      given: { number: 2, finished: 60, depths: [3, 4], places: [10, 40], which: "fold" },
      gives: 46,
      unit: "cm",
      because: "at 40 cm of the finished width, and 6 cm hidden before it",
    },
    {
      given: { number: 3, finished: 24, depths: [1, 2], which: "fold" },
      gives: "",
      because: "two knife pleats have two folds",
    },
  ],
});
