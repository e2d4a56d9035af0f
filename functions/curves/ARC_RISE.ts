import { define } from "../define.ts";
import { drawArc } from "../drawing/arc-over-chord.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How far the arc of a circle stands above the straight line between its ends (the sagitta), in the
 * book's unit: for the shorter arc, of at most half a circle. How much a curved hem falls below a
 * straight one. Source: geometry, Pythagoras.
 */
export const ARC_RISE = define({
  name: "ARC_RISE",
  summary:
    "How far a round edge stands off the straight line between its ends, from its radius and that line.",
  source: "geometry: Pythagoras",
  words: "arc rise sagitta chord radius curve hem dip straight line fall scallop",
  takes: {
    radius: { kind: "length", about: "radius of the circle", from: 0.1, to: 5000 },
    chord: { kind: "length", about: "the straight line from end to end", from: 0, to: 10_000 },
  },
  returns: "length",
  alike: { "radius, chord": "the straight line may be shorter or longer than the radius" },
  compute({ radius, chord }, { step, say }) {
    if (chord > 2 * radius * (1 + 1e-12)) {
      throw new Refusal(
        phrase`chord must be at most ${say(2 * radius)}, the diameter of a circle of radius ${say(radius)}, not ${say(chord)}`,
      );
    }
    const half = step("half", "chord / 2", chord / 2);
    // Radius less √(radius² − half²), written so that a small rise keeps its digits.
    const off = Math.sqrt(Math.max(0, (radius - half) * (radius + half)));
    step("centre_off", "SQRT(MAX(0; (radius - half) * (radius + half)))", off);
    return step("rise", "half ^ 2 / (radius + centre_off)", half ** 2 / (radius + off));
  },
  draw: ({ chord }, { rise = 0 }) =>
    chord > 0 && rise > chord / 1e6 ? drawArc(chord, rise, { rise: "rise" }) : [],
  examples: [
    {
      given: { radius: 5, chord: 8 },
      gives: 2,
      because: "5 minus 3, the other leg of the right triangle with 4 and 5",
    },
    {
      given: { radius: 30, chord: 60 },
      gives: 30,
      unit: "cm",
      because: "the chord is the diameter: half a circle",
    },
  ],
});
