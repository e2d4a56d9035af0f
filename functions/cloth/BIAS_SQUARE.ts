import { define } from "../define.ts";
import { dimension, outline, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";
import { roundDownToWhole } from "../whole-number.ts";

/**
 * Side of the smallest square of cloth that gives `length` of continuous bias strip, cut in a
 * spiral as in BIAS_TUBE; in the book's unit. Never less than the square root of length times
 * strip, because strips have area too; usually more, because only whole rounds are cut. Source:
 * geometry.
 */
export const BIAS_SQUARE = define({
  name: "BIAS_SQUARE",
  summary: "How large a square of cloth to take for a wanted length of continuous bias strip.",
  source: "geometry",
  words: "bias binding tape how much fabric square size continuous",
  takes: {
    length: { kind: "length", about: "length of strip wanted", from: 1, to: 100_000 },
    strip: { kind: "length", about: "width of the strip, measured square across it", from: 0.5, to: 200 },
    seam: { kind: "length", about: "seam allowance of the two joins", from: 0, to: 5, otherwise: 0 },
  },
  returns: "length",
  usual: ["strip < length", "seam < strip"],
  compute({ length, strip, seam }, { step }) {
    step("area_rule", "SQRT(length * strip)", Math.sqrt(length * strip));
    const rounds = step("rounds", "SQRT(length / (2 * strip))", Math.sqrt(length / (2 * strip)));
    // With n rounds the side must hold n strips across and a round must be the n-th part of the length.
    const few = Math.max(1, roundDownToWhole(rounds));
    const lower = step("fewer", "MAX(1; INT(ROUND(rounds; 8)))", few);
    const side = (n: number) => Math.max(n * Math.SQRT2 * strip, length / (n * Math.SQRT2));
    const clear = step(
      "clear_side",
      "MIN(MAX(fewer * SQRT(2) * strip; length / (fewer * SQRT(2))); MAX((fewer + 1) * SQRT(2) * strip; length / ((fewer + 1) * SQRT(2))))",
      Math.min(side(lower), side(lower + 1)),
    );
    return step("side", "clear_side + 2 * seam", clear + 2 * seam);
  },
  draw(_given, { side = 0 }) {
    return [
      ...outline(
        polygon([
          [0, 0],
          [side, 0],
          [side, side],
          [0, side],
        ]),
        { label: phrase`cloth` },
      ),
      stroke(
        [
          [0, 0],
          [side, side],
        ],
        "cut",
      ),
      dimension([0, side * 1.08], [side, side * 1.08], { shows: "side" }),
    ];
  },
  examples: [
    {
      given: { length: 200, strip: 1 },
      gives: 10 * Math.SQRT2,
      because: "ten rounds of 20 in; 10 √2 in squared is 200 square in, the area of the strip itself",
    },
    {
      given: { length: 300, strip: 4, seam: 0.6 },
      gives: 25 * Math.SQRT2 + 1.2,
      unit: "cm",
      because: "six rounds of 50 cm",
    },
  ],
});
