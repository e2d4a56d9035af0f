import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * How far apart, measured along the selvedge, the cutting lines of bias strips start, in the book's
 * unit: the strip's width times the square root of two, for lines at 45° to the grain.
 */
export const BIAS_SPACING = define({
  name: "BIAS_SPACING",
  summary: "How far apart to mark bias strips along the selvedge.",
  source: "geometry: the diagonal of a square",
  words: "bias strip marking cut width selvage crossway 45 degrees",
  takes: {
    strip: {
      kind: "length",
      usual: [1, 60],
      about: "width of a strip, measured square across it",
      from: 0.2,
      to: 200,
    },
  },
  returns: "length",
  compute({ strip }, { step }) {
    return step("along_selvedge", "strip * SQRT(2)", strip * Math.SQRT2);
  },
  draw({ strip }, { along_selvedge = 0 }) {
    const side = 4 * along_selvedge;
    const at = (i: number): Point => [i * along_selvedge, 0];
    const shapes: Shape[] = [
      stroke(
        [
          [0, 0],
          [side, 0],
        ],
        "guide",
        { label: phrase`selvedge` },
      ),
    ];
    for (let i = 0; i < 4; i += 1) shapes.push(stroke([at(i), [at(i)[0] + side / 2, side / 2]], "cut"));
    const half = strip / Math.SQRT2;
    shapes.push(
      dimension([0, -side / 12], [along_selvedge, -side / 12], { shows: "along_selvedge" }),
      dimension([2 * half, 2 * half], [3 * half, half], { label: phrase`strip` }),
    );
    return shapes;
  },
  examples: [
    { given: { strip: 1.5 }, gives: 2.1213203436, within: 1e-9, because: "1.5 × √2, geometry in 50 digits" },
  ],
});
