import { define } from "../define.ts";
import { drawDart } from "../drawing/dart.ts";

/**
 * Angle at a dart's point in degrees, between its legs; it stays the same wherever round the point
 * the dart is moved, and two darts into one point add by it. `length` is along the dart's middle,
 * from the straight line between its leg ends to the point. Source: geometry.
 */
export const DART_ANGLE = define({
  name: "DART_ANGLE",
  summary: "The angle of a dart at its point, which stays the same when the dart is moved elsewhere.",
  source: "geometry",
  words: "pivot rotate manipulate dart bust point move",
  takes: {
    intake: { kind: "length", about: "width of the dart on the edge, from leg to leg", from: 0, to: 200 },
    length: {
      kind: "length",
      about: "length of the dart along its middle, from edge to point",
      from: 0.5,
      to: 300,
    },
  },
  returns: "angle",
  usual: ["intake <= 2 * length"],
  alike: { "intake, length": "a dart may be wider than it is long" },
  compute: ({ intake, length }, { step }) =>
    step(
      "angle",
      "2 * DEGREES(ATAN(intake / 2 / length))",
      (2 * Math.atan(intake / 2 / length) * 180) / Math.PI,
    ),
  draw: ({ intake, length }) => (intake > 0 ? drawDart(intake, length, { angle: "angle" }) : []),
  examples: [
    {
      given: { intake: 2, length: 1 },
      gives: 90,
      because: "twice as wide as it is long: a right angle",
    },
    {
      given: { intake: 10, length: 5 * Math.sqrt(3) },
      gives: 60,
      because: "an equilateral dart has 60 degrees",
      unit: "cm",
    },
  ],
});
