import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { roundDownToWhole } from "../whole-number.ts";

/**
 * Length of bias strip that one square of cloth gives when it is cut along its diagonal, joined to
 * a slanting tube shifted by one strip, and cut round and round; in the book's unit. Whole rounds
 * only. Both joins take their allowance, twice `seam`, off the side. Source: geometry.
 */
export const BIAS_TUBE = define({
  name: "BIAS_TUBE",
  summary: "How much continuous bias strip a square gives when it is sewn to a tube and cut in a spiral.",
  source: "geometry",
  words: "continuous bias binding square tube spiral no joins yield",
  takes: {
    side: { kind: "length", about: "side of the square", from: 2, to: 1000 },
    strip: { kind: "length", about: "width of the strip, measured square across it", from: 0.5, to: 200 },
    seam: { kind: "length", about: "seam allowance of the two joins", from: 0, to: 5, otherwise: 0 },
  },
  returns: "length",
  usual: ["strip < side", "seam < strip"],
  compute({ side, strip, seam }, { step }) {
    const clear = step("clear_side", "side - 2 * seam", side - 2 * seam);
    if (!isAbove(clear, 0, side))
      throw new Refusal(
        (say) =>
          phrase`seam must leave part of the square: the joins take ${say(2 * seam, side)} of a side of ${say(side, 2 * seam)}`,
      );
    const around = step("round", "clear_side * SQRT(2)", clear * Math.SQRT2);
    const rounds = step(
      "rounds",
      "INT(ROUND(clear_side / SQRT(2) / strip; 8))",
      roundDownToWhole(clear / Math.SQRT2 / strip),
    );
    return step("yield", "rounds * round", rounds * around);
  },
  draw({ strip }, { clear_side: s = 0, rounds = 0 }) {
    // The two triangles joined to a slanting piece, its cutting lines along the bias edges.
    const shapes: Shape[] = [
      {
        kind: "outline",
        piece: polygon([
          [0, 0],
          [s, s],
          [s, 2 * s],
          [0, s],
        ]),
        label: phrase`joined`,
      },
      dimension([0, 0], [s, s], { shows: "round" }),
    ];
    for (let i = 1; i <= Math.min(rounds, 150); i += 1) {
      const y = i * strip * Math.SQRT2;
      shapes.push(
        stroke(
          [
            [0, y],
            [s, s + y],
          ],
          "cut",
        ),
      );
    }
    return shapes;
  },
  examples: [
    {
      given: { side: 24, strip: 2 },
      gives: 8 * 24 * Math.SQRT2,
      because: "24 / √2 = 16.97 in of height hold eight rounds of 24 √2 in",
    },
    {
      given: { side: 41, strip: 4, seam: 0.5 },
      gives: 7 * 40 * Math.SQRT2,
      unit: "cm",
      because: "40 cm are left of the side: seven rounds of 56.57 cm",
    },
  ],
});
