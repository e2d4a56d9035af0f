import { define } from "../define.ts";
import { drawArc } from "../drawing/arc-over-chord.ts";

/**
 * Radius of the circle whose arc stands `rise` above a straight line `chord` long, in the book's
 * unit: what to set the compass or the string to. Source: geometry, Euclid III.35.
 */
export const ARC_RADIUS = define({
  name: "ARC_RADIUS",
  summary:
    "The radius to set the compass to for a round edge, from the straight line across it and its rise.",
  source:
    "geometry: half the chord squared is the rise times the rest of the diameter (Euclid, Elements, III.35)",
  words: "arc radius chord rise sagitta curve compass string hem yoke scallop crescent",
  takes: {
    chord: { kind: "length", about: "the straight line from end to end", from: 0.1, to: 5000 },
    rise: { kind: "length", about: "distance from the middle of the arc to that line", from: 0.01, to: 5000 },
  },
  returns: "length",
  usual: ["rise <= chord"],
  compute({ chord, rise }, { step }) {
    const half = step("half", "chord / 2", chord / 2);
    const rest = step("rest", "half ^ 2 / rise", half ** 2 / rise);
    return step("radius", "(rest + rise) / 2", (rest + rise) / 2);
  },
  draw: ({ chord, rise }) => drawArc(chord, rise, { radius: "radius" }),
  examples: [
    {
      given: { chord: 8, rise: 2 },
      gives: 5,
      because: "the right triangle has the legs 4 and 3 and the hypotenuse 5",
    },
    { given: { chord: 60, rise: 30 }, gives: 30, unit: "cm", because: "half a circle" },
  ],
});
