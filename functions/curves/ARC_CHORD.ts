import { define } from "../define.ts";
import { drawArc } from "../drawing/arc-over-chord.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * The straight line between the ends of a circle's arc that stands `rise` above it, in the book's
 * unit: how wide a curve of a given radius and depth is. Source: geometry, Pythagoras.
 */
export const ARC_CHORD = define({
  name: "ARC_CHORD",
  summary: "The straight line between the ends of a round edge, from its radius and how far it rises.",
  source: "geometry: Pythagoras",
  words: "arc chord rise sagitta radius width across curve scallop neckline",
  takes: {
    radius: { kind: "length", about: "radius of the circle", from: 0.1, to: 5000 },
    rise: {
      kind: "length",
      about: "distance from the middle of the arc to the line between its ends",
      from: 0,
      to: 10_000,
    },
  },
  returns: "length",
  usual: ["rise <= radius"],
  compute({ radius, rise }, { step, say }) {
    if (rise > 2 * radius * (1 + 1e-12)) {
      throw new Refusal(
        phrase`rise must be at most ${say(2 * radius)}, the diameter of a circle of radius ${say(radius)}, not ${say(rise)}`,
      );
    }
    const half = Math.sqrt(Math.max(0, rise * (2 * radius - rise)));
    step("half", "SQRT(MAX(0; rise * (2 * radius - rise)))", half);
    return step("chord", "2 * half", 2 * half);
  },
  draw: ({ rise }, { chord = 0 }) =>
    chord > 0 && rise > chord / 1e6 ? drawArc(chord, rise, { chord: "chord" }) : [],
  examples: [
    {
      given: { radius: 5, rise: 2 },
      gives: 8,
      because: "twice 4: the right triangle has the legs 3 and 4 and the hypotenuse 5",
    },
    {
      given: { radius: 30, rise: 30 },
      gives: 60,
      unit: "cm",
      because: "half a circle: the chord is the diameter",
    },
  ],
});
