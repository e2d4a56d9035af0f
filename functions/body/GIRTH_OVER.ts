import { define } from "../define.ts";
import { girthRings } from "../drawing/girth-rings.ts";
import { phrase, plural } from "../phrase.ts";

/**
 * The girth outside a number of layers of one thickness, in the book's unit: a layer adds 2π times
 * its thickness round any girth without hollows, whatever its shape. Measure the thickness lightly
 * pressed. For a pad that covers part of the way round use PAD_GIRTH. Source: geometry (Steiner's
 * formula for parallel curves). The answer is an estimate until it is measured, and is marked as one.
 */
export const GIRTH_OVER = define({
  name: "GIRTH_OVER",
  summary: "The girth outside a quilted, padded or layered garment, from the girth inside it.",
  source: "geometry: a parallel curve at distance t round a convex one is longer by 2πt (Steiner)",
  words: "layers quilting padding wadding interlining thickness over clothes coat",
  takes: {
    girth: { kind: "length", about: "the girth inside", from: 1, to: 1000 },
    thickness: { kind: "length", about: "thickness of one layer, lightly pressed", from: 0, to: 60 },
    layers: { kind: "count", about: "how many layers of this thickness", from: 0, to: 40, otherwise: 1 },
  },
  returns: "length",
  usual: ["6 * thickness <= girth"],
  compute({ girth, thickness, layers }, { step, say, estimates }) {
    const build = step("build_up", "thickness * layers", thickness * layers);
    step("added", "2 * PI() * build_up", 2 * Math.PI * build);
    if (build > 0)
      estimates(
        phrase`the girth over ${plural(layers, "a layer", "# layers")}, worked out from the ${say(girth)} beneath; measure over everything worn when you can`,
      );
    return step("girth_over", "girth + 2 * PI() * build_up", girth + 2 * Math.PI * build);
  },
  draw: ({ girth }, { girth_over = girth, build_up = 0 }) =>
    girthRings(
      { girth, label: phrase`inside` },
      { girth: girth_over, label: phrase`outside`, shows: "girth_over" },
      build_up > 0 ? "build_up" : null,
    ),
  examples: [
    {
      given: { girth: 90, thickness: 0.3 },
      gives: 91.8849555921539,
      unit: "cm",
      because: "3 mm all round add 2π times 3 mm, whatever the shape (Steiner)",
    },
    {
      given: { girth: 30, thickness: 0.125, layers: 2 },
      gives: 30 + Math.PI / 2,
      because: "a quarter inch all round adds 1.57 in",
    },
  ],
});
