import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { toDigits } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { between, skirt } from "../worn/skirt.ts";

/**
 * Length of the hem of a section that starts at `top` at the waist, exactly goes round `hip` at
 * `hip_drop` and continues along the same line to `depth`, all measured down the body; times
 * `fullness`. Give whole girths for the whole hem, half girths for half of it. In the book's unit;
 * a section no deeper than the hip drop stays above the hip. Turnings and pleats are not included.
 * Source: geometry.
 */
export const HEM_AT = define({
  name: "HEM_AT",
  summary: "How long the hem of a skirt section must be to go round the hip and hang to the wanted depth.",
  source: "geometry: the straight line through waist and hip",
  words: "peplum basque hem length round hip flare sweep depth fullness",
  takes: {
    top: { kind: "length", about: "the waist edge: all round, or half of it", from: 1, to: 1000 },
    hip: {
      kind: "length",
      about: "hip over the pad and with its ease; all round or half, like top",
      from: 1,
      to: 2000,
    },
    hip_drop: {
      kind: "length",
      usual: [5, 45],
      about: "from waist down to hip, along the body",
      from: 1,
      to: 100,
    },
    depth: { kind: "length", about: "from waist down to the hem, along the body", from: 0.5, to: 300 },
    fullness: {
      kind: "share",
      about: "how much fuller than the body: 1 exactly goes round",
      from: 0.5,
      to: 10,
      otherwise: 1,
    },
  },
  returns: "length",
  usual: ["top <= 1.1 * hip", "hip <= 3 * top", "hip_drop <= top"],
  alike: {
    "top, depth": "half a waist may be less than the depth",
    "hip_drop, depth": "the section may end above or below the hip",
  },
  compute({ top, hip, hip_drop, depth, fullness }, { step }) {
    const gain = step("gain_per_length", "(hip - top) / hip_drop", (hip - top) / hip_drop);
    const body = step("body_hem", "top + gain_per_length * depth", top + gain * depth);
    if (body <= 1e-9 * top) {
      const limit = toDigits((top * hip_drop) / (top - hip), 6);
      throw new Refusal(
        (say) =>
          phrase`depth must be less than ${say(limit, top, hip, depth)}, where a line from top ${say(top, limit, hip, depth)} to hip ${say(hip, limit, top, depth)} reaches 0, not ${say(depth, limit, top, hip)}`,
      );
    }
    return step("hem", "body_hem * fullness", body * fullness);
  },
  draw({ top, hip, hip_drop, depth }, { hem = 0, body_hem = 0 }) {
    const low = Math.max(hip_drop, depth);
    const at = (width: number, y: number): [Point, Point] => [[-width / 2, y], [width / 2, y]]; // biome-ignore format: points in pairs
    return [
      stroke(at(top, 0), "seam", { label: phrase`top` }),
      stroke(at(hip, hip_drop), "guide", { label: phrase`hip` }),
      stroke([[-top / 2, 0], [-body_hem / 2, depth]], "guide"),
      stroke([[top / 2, 0], [body_hem / 2, depth]], "guide"),
      stroke([[-top / 2, 0], [-hem / 2, depth], [hem / 2, depth], [top / 2, 0]], "cut"),
      dimension([0, 0], [0, depth], { label: phrase`depth` }),
      dimension(...at(body_hem, low + low / 10), { label: phrase`round the body`, shows: "body_hem" }),
      dimension(...at(hem, low + low / 5), { label: phrase`hem`, shows: "hem" }),
    ]; // biome-ignore format: points in pairs
  },
  worn({ top, hip, hip_drop, depth, fullness }, { hem = 0 }, lengths) {
    // Half girths and whole ones are told apart by their size alone.
    const whole = top > lengths.cm(50) ? 1 : 2;
    const says =
      whole === 1
        ? phrase`the figures are all round, as top is more than ${lengths.say(lengths.cm(50))}`
        : phrase`the figures are of one half, as top is no more than ${lengths.say(lengths.cm(50))}`;
    const round = between(top * whole * fullness, hem * whole);
    const body = { waist: top * whole, hip: hip * whole, hip_drop };
    return skirt({ ...body, depth, round, gathered: fullness > 1, assumed: [says] }, lengths);
  },
  examples: [
    {
      given: { top: 33, hip: 47, hip_drop: 8, depth: 8 },
      gives: 47,
      because: "as deep as the hip drop, the hem is the hip",
    },
    {
      given: { top: 76, hip: 108, hip_drop: 20, depth: 25 },
      gives: 116,
      unit: "cm",
      because: "32 cm gained in 20 are 1.6 in each: 76 + 1.6 × 25",
    },
    {
      given: { top: 15, hip: 21, hip_drop: 8, depth: 12, fullness: 1.5 },
      gives: 36,
      because: "half round: (15 + 6 × 12/8) × 1 1/2",
    },
  ],
});
