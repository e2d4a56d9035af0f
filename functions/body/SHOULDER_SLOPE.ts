import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How steeply a shoulder slopes, in degrees below the level: arcsin(drop / shoulder). `drop` is
 * how much lower the shoulder point lies than the neck point, plumb. Square shoulders slope
 * little, sloping ones much; the shoulder line of the draft takes the same angle. Source: geometry.
 */
export const SHOULDER_SLOPE = define({
  name: "SHOULDER_SLOPE",
  summary:
    "The angle at which a shoulder slopes, from its length and how much lower the shoulder point lies.",
  source: "geometry",
  words: "shoulder angle square sloping draft degrees",
  takes: {
    shoulder: { kind: "length", usual: [5, 25], about: "from neck point to shoulder point", from: 3, to: 40 },
    drop: {
      kind: "length",
      about: "how much lower the shoulder point lies than the neck point",
      from: 0,
      to: 40,
    },
  },
  returns: "angle",
  usual: ["drop <= 0.6 * shoulder"],
  compute({ shoulder, drop }, { step }) {
    if (!isBelow(drop, shoulder)) {
      throw new Refusal(
        (say) =>
          phrase`drop must be less than shoulder, not ${say(drop, shoulder)} against ${say(shoulder, drop)}`,
      );
    }
    step("across", "SQRT(shoulder ^ 2 - drop ^ 2)", Math.sqrt(shoulder ** 2 - drop ** 2));
    return step("slope", "DEGREES(ASIN(drop / shoulder))", (Math.asin(drop / shoulder) * 180) / Math.PI);
  },
  draw({ shoulder, drop }, { across = shoulder }): Shape[] {
    return [
      stroke([[0, 0], [across, drop]], "seam", { label: phrase`shoulder` }),
      stroke([[0, 0], [across, 0]], "guide"),
      dimension([0, -drop / 2], [across, -drop / 2], { shows: "across" }),
      dimension([across, 0], [across, drop], { label: phrase`drop` }),
      { kind: "angle", at: [0, 0], from: [across, 0], to: [across, drop], shows: "slope" },
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { shoulder: 5, drop: 2.5 }, gives: 30, because: "the sine of 30° is a half" },
    {
      given: { shoulder: 13, drop: 5 },
      gives: 22.619864948,
      within: 1e-8,
      unit: "cm",
      because: "the triangle 5, 12, 13",
    },
  ],
});
