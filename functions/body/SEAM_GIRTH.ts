import { define } from "../define.ts";
import {
  BODY_AND_DIP,
  developedLevel,
  developedPoint,
  developSeam,
  LEVEL_BACK,
  seamSteps,
} from "../drafting/body-cone.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { line } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Length all round the body of a waist seam that dips to a point in front, in the book's unit,
 * seam allowances not in it. It runs level, `back_drop` below the waist, from centre back for the
 * share `start` of half the girth, then straight to a point `front_drop` below the waist at
 * centre front. The body between waist and hip is rolled out flat as a cone (functions/drafting/body-cone.ts),
 * drops measured along it. Where the dip is so shallow that the straight line would rise above the
 * level part, the level part goes on until the line leaves it as a tangent. Equal drops give the
 * girth at that level. Refuses a hip too close below the waist for its girth. Source: geometry.
 */
export const SEAM_GIRTH = define({
  name: "SEAM_GIRTH",
  summary:
    "How long a waist seam is all round when it dips to a point in front: longer than the waist, so a skirt sewn to it must be cut to this.",
  source: "geometry: the cone through waist and hip, rolled out flat",
  words: "pointed bodice dropped waist basque peplum V front dip seam length longer than waist",
  takes: {
    ...BODY_AND_DIP,
    ...LEVEL_BACK,
  },
  returns: "length",
  usual: ["waist <= 1.1 * hip", "hip_drop <= 0.6 * waist", "front_drop <= hip_drop", "back_drop <= hip_drop"],
  compute({ waist, hip, hip_drop, front_drop, back_drop, start }, { step }) {
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    seamSteps(step, seam, "half");
    step("turn", "DEGREES(angle)", (seam.angle * 180) / Math.PI);
    step("longer_than_waist", "2 * half - waist", seam.length - waist);
    return step("seam", "2 * half", seam.length);
  },
  draw({ waist, hip, hip_drop, front_drop, back_drop, start }) {
    // Half the body rolled out: centre back at the left, centre front at the right.
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    const at = (level: number, share: number) => developedPoint(waist, seam.angle, level, share);
    const ring = (level: number, from: number, to: number) =>
      developedLevel(waist, seam.angle, level, from, to);
    const low = Math.max(hip_drop, front_drop, back_drop);
    const high = Math.min(0, back_drop);
    const [bend, end] = [at(back_drop, seam.slope_from), at(front_drop, seam.slope_to)];
    const point = at(front_drop, 0.5);
    const shapes: Shape[] = [
      { kind: "edge", edge: [ring(0, 0, 0.5)], role: "guide", label: phrase`waist` },
      { kind: "edge", edge: [ring(hip_drop, 0, 0.5)], role: "guide", label: phrase`hip` },
      { kind: "edge", edge: [line(at(high, 0), at(low, 0))], role: "fold", label: phrase`centre back` },
      { kind: "edge", edge: [line(at(high, 0.5), at(low, 0.5))], role: "fold", label: phrase`centre front` },
      {
        kind: "edge",
        edge: [
          ...(seam.level > 0 ? [ring(back_drop, 0, seam.slope_from)] : []),
          ...(seam.sloped > 0 ? [line(bend, end)] : []),
          ...(seam.front_level > 0 ? [ring(front_drop, seam.slope_to, 0.5)] : []),
        ],
        role: "seam",
        label: phrase`half the seam`,
        shows: "half",
      },
    ];
    if (seam.sloped > 0) shapes.push(dimension(bend, end, { shows: "sloped" }));
    if (front_drop > 0) shapes.push(dimension(at(0, 0.5), point, { label: phrase`front drop` }));
    if (back_drop !== 0) shapes.push(dimension(at(0, 0), at(back_drop, 0), { label: phrase`back drop` }));
    return shapes;
  },
  examples: [
    {
      given: { waist: 76, hip: 108, hip_drop: 20, front_drop: 7 },
      gives: 80.788162,
      within: 5e-7,
      unit: "cm",
      because: "worked by hand on the cone: angle 1.6, radii 47.5 and 54.5 cm",
    },
    {
      given: { waist: 30, hip: 42, hip_drop: 8, front_drop: 3 },
      gives: 32.080163,
      within: 5e-7,
      because: "worked by hand on the cone: angle 1.5, radii 20 and 23 in",
    },
    {
      given: { waist: 70, hip: 70, hip_drop: 20, front_drop: 6 },
      gives: 72,
      unit: "cm",
      because: "a straight body: 17.5 level, then √(17.5² + 6²) = 18.5, twice",
    },
    {
      given: { waist: 76, hip: 108, hip_drop: 20, front_drop: 3 },
      gives: 77.382899,
      within: 5e-7,
      unit: "cm",
      because:
        "a shallow dip: radii 47.5 and 50.5 cm, the line leaves the level part as a tangent of √(50.5² − 47.5²)",
    },
    {
      given: { waist: 76, hip: 108, hip_drop: 20, front_drop: 0 },
      gives: 76,
      unit: "cm",
      because: "without a dip it is the waist itself",
    },
  ],
});
