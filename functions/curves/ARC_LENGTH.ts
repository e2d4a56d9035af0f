import { define } from "../define.ts";
import { drawArc } from "../drawing/arc-over-chord.ts";

/**
 * Length of a circular arc from its chord and its rise over the chord's middle, in the book's
 * unit. Half the angle at the centre is 2·atan(2·rise/chord); a rise of half the chord is a half
 * circle, a greater one more. Source: geometry.
 */
export const ARC_LENGTH = define({
  name: "ARC_LENGTH",
  summary: "Length of a round edge from the straight line across it and how far it rises over that line.",
  source: "geometry",
  words: "curve chord rise sagitta scoop neckline scallop crescent radius",
  takes: {
    chord: { kind: "length", about: "the straight line from end to end", from: 0.1, to: 5000 },
    rise: { kind: "length", about: "distance from the middle of the arc to that line", from: 0, to: 5000 },
  },
  returns: "length",
  usual: ["rise <= chord"],
  compute({ chord, rise }, { step }) {
    const quarter = step("quarter_angle", "ATAN(2 * rise / chord)", Math.atan((2 * rise) / chord));
    // Radius chord / (2·sin 2a) times angle 4a; a straight line has neither.
    return step(
      "length",
      "IF(quarter_angle < 0.000000001; chord; 2 * chord * quarter_angle / SIN(2 * quarter_angle))",
      quarter < 1e-9 ? chord : (2 * chord * quarter) / Math.sin(2 * quarter),
    );
  },
  draw: ({ chord, rise }) => drawArc(chord, rise, { length: "length" }),
  examples: [
    { given: { chord: 10, rise: 5 }, gives: 5 * Math.PI, because: "half a circle of radius 5" },
    { given: { chord: 12, rise: 0 }, gives: 12, because: "without a rise the edge is straight" },
    {
      given: { chord: 30, rise: 15 * (Math.SQRT2 - 1) },
      gives: (15 * Math.SQRT2 * Math.PI) / 2,
      because: "a quarter of a circle over a chord of 30 cm",
      unit: "cm",
    },
  ],
});
