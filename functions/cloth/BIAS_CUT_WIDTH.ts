import { define } from "../define.ts";
import { drawStrip } from "../drawing/flat-strip.ts";
import { stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Width to cut a bias (or straight) strip for a bound edge, square across it, in the book's unit.
 * "single": sewn on, turned over the edge and turned under at the back: twice the finished width
 * plus two turnings. "double": folded lengthwise first, both raw edges in the seam: four times the
 * finished width plus two turnings. When `turning` is left out it is as wide as the binding, which
 * fills the binding. `ease` allows for the thickness of the edge and for the width that bias loses
 * as it is stretched.
 */
export const BIAS_CUT_WIDTH = define({
  name: "BIAS_CUT_WIDTH",
  summary: "How wide to cut a strip for binding an edge.",
  source:
    "Kinne & Cooley, Clothing and Health, 1916: a strip 2 1/2 in wide finishes 1 in; doubled: common practice",
  words: "bias binding tape french double fold single width strip placket facing",
  takes: {
    finished: {
      kind: "length",
      usual: [0.2, 20],
      about: "width of the binding that shows on one side",
      from: 0.1,
      to: 50,
    },
    style: {
      kind: "text",
      about: "a single layer turned under, or doubled cloth",
      choices: ["single", "double"],
      otherwise: "single",
    },
    turning: {
      kind: "length",
      about: "width of each seam or turning; as wide as the binding when left out",
      from: 0,
      to: 50,
      otherwise: null,
    },
    ease: {
      kind: "length",
      about: "extra width for the thickness of the edge",
      from: 0,
      to: 10,
      otherwise: 0,
    },
  },
  returns: "length",
  compute({ finished, style, turning, ease }, { step }) {
    const turn = step("turn", 'IF(turning="";finished;turning)', turning ?? finished);
    const shows = step("shows", 'IF(style="double";4;2) * finished', (style === "double" ? 4 : 2) * finished);
    return step("cut_width", "shows + 2 * turn + ease", shows + 2 * turn + ease);
  },
  draw({ style, finished }, { cut_width = 0, turn = 0 }) {
    const length = 3 * cut_width;
    const folds = [
      turn,
      turn + finished,
      ...(style === "double" ? [cut_width / 2, cut_width - turn - finished] : []),
      cut_width - turn,
    ];
    return [
      ...drawStrip({ length, width: cut_width, label: phrase`strip`, widthShows: "cut_width" }),
      ...folds.map((y) =>
        stroke(
          [
            [0, y],
            [length, y],
          ],
          "fold",
        ),
      ),
    ];
  },
  examples: [
    {
      given: { finished: 1, turning: 0.25 },
      gives: 2.5,
      because: "Kinne & Cooley 1916: 2 1/2 in wide finishes 1 in with turnings of 1/4 in",
    },
    { given: { finished: 0.5 }, gives: 2, because: "common practice: four times the finished width" },
    {
      given: { finished: 1, style: "double" },
      gives: 6,
      unit: "cm",
      because: "common practice: doubled binding is six times the finished width",
    },
  ],
});
