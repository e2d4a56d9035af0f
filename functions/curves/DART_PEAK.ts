import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawDart } from "../drawing/dart.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How far the cut edge must rise over the straight edge at a dart's middle, in the book's unit, so
 * that the folded dart reaches just into the seam. With half the dart's angle α the fold is
 * length/cos 2α long where the straight edge gives it only `length`: the dart's cloth beyond a leg
 * is the mirror image about that leg of the edge beside it. For a dart square to a straight edge,
 * pressed to either side, seam allowance not included. Source: geometry.
 */
export const DART_PEAK = define({
  name: "DART_PEAK",
  summary: "How far to raise the cut edge over a dart so that the folded dart is caught in the seam.",
  source: "geometry",
  words: "true the dart truing point cap jog roof fold peak",
  takes: {
    intake: { kind: "length", about: "width of the dart on the edge, from leg to leg", from: 0, to: 200 },
    length: {
      kind: "length",
      about: "length of the dart along its middle, from edge to point",
      from: 0.5,
      to: 300,
    },
  },
  returns: "length",
  usual: ["intake <= 2 * length"],
  compute({ intake, length }, { step }) {
    const half = step("half_angle", "ATAN(intake / 2 / length)", Math.atan(intake / 2 / length));
    // Near a right angle at the point the edge would have to rise without end.
    if (isAbove(half, Math.PI / 5))
      throw new Refusal(
        (say) =>
          phrase`intake must be at most ${say(2 * length * Math.tan(Math.PI / 5), length, intake)} for a dart ${say(length, 2 * length * Math.tan(Math.PI / 5), intake)} long, not ${say(intake, 2 * length * Math.tan(Math.PI / 5), length)}: make two darts instead`,
      );
    const fold = step("fold", "length / COS(2 * half_angle)", length / Math.cos(2 * half));
    return step("peak", "fold - length", fold - length);
  },
  draw: ({ intake, length }, { peak = 0 }) =>
    intake > 0 ? drawDart(intake, length, { peak, peakShows: "peak" }) : [],
  examples: [
    {
      given: { intake: 2, length: 3 },
      gives: 0.75,
      because: "half the angle is atan 1/3, cos of the whole 4/5: the fold is 3/0.8 long",
    },
    {
      given: { intake: 3, length: 12 },
      gives: 12 * (65 / 63) - 12,
      because: "tan of half the angle 1/8: cos of the whole 63/65",
      unit: "cm",
    },
  ],
});
