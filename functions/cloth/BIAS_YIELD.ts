import { define } from "../define.ts";
import { dimension, outline, type Shape, stroke } from "../drawing/shapes.ts";
import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";
import { roundDownToWhole } from "../whole-number.ts";

/**
 * Length of bias strip, joined end to end, that a rectangle of cloth yields, in the book's unit.
 * The first cut runs at 45° from a corner; whole strips are cut from both sides of it and counted
 * along their middles, each at least `least` long. A join on the straight grain takes 2√2 times its
 * seam allowance. Strips with ends that slant both ways are turned end for end alternately as they are joined, and the
 * one that ends in a corner of the cloth comes first, so nothing is trimmed off. Length times width never exceeds the cloth. Source: geometry.
 */
export const BIAS_YIELD = define({
  name: "BIAS_YIELD",
  summary: "How much bias strip a rectangle of cloth gives when it is cut in single strips and joined.",
  source: "geometry; the cut: Kinne & Cooley, Clothing and Health, 1916",
  words: "bias binding tape yardage how many strips square remnant crossway continuous",
  takes: {
    width: { kind: "length", about: "length of one side of the cloth", from: 2, to: 1000 },
    length: { kind: "length", about: "length of the other side of the cloth", from: 2, to: 10_000 },
    strip: { kind: "length", about: "width of the strips, measured square across them", from: 0.5, to: 200 },
    seam: { kind: "length", about: "seam allowance where strips are joined", from: 0, to: 5, otherwise: 0 },
    least: { kind: "length", about: "the shortest strip worth joining", from: 0, to: 500, otherwise: 0 },
  },
  returns: "length",
  usual: [
    "strip < width",
    "strip < length",
    "seam < strip",
    "least <= 1.5 * MIN(width; length)",
    {
      rule: "OR(least = 0; strip <= least)",
      says: "the least {least} is below the width of the strip {strip}",
    },
  ],
  compute({ width, length, strip, seam, least }, { step }) {
    const whole = (value: number) => Math.max(0, roundDownToWhole(value));
    const short = step("short_side", "MIN(width; length)", Math.min(width, length));
    const long = step("long_side", "MAX(width; length)", Math.max(width, length));
    const diagonal = step("longest", "short_side * SQRT(2)", short * Math.SQRT2);
    const along = step("along_selvedge", "strip * SQRT(2)", strip * Math.SQRT2);
    const join = step("join", "2 * SQRT(2) * seam", 2 * Math.SQRT2 * seam);
    const shortest = step("shortest", "MAX(least; join)", Math.max(least, join));
    // Strips are whole as far as both their edges are in the cloth, and long enough at their middle.
    const beyond = (side: number) =>
      shortest > diagonal
        ? 0
        : Math.min(whole(side / along), whole((side - shortest / Math.SQRT2) / along + 0.5));
    const rule = (side: string) =>
      `IF(shortest>longest;0;MIN(INT(ROUND(${side} / along_selvedge; 8)); INT(ROUND(MAX(0; (${side} - shortest / SQRT(2)) / along_selvedge + 0.5); 8))))`;
    const above = step("strips_above", rule("short_side"), beyond(short));
    const below = step("strips_below", rule("long_side"), beyond(long));
    const full = step(
      "full_strips",
      "MIN(strips_below; INT(ROUND((long_side - short_side) / along_selvedge + 0.5; 8)))",
      Math.min(below, whole((long - short) / along + 0.5)),
    );
    const middles =
      above * short -
      (along * above ** 2) / 2 +
      full * short +
      (below - full) * long -
      (along * (below ** 2 - full ** 2)) / 2;
    const centre = step(
      "middles",
      "SQRT(2) * (strips_above * short_side - along_selvedge * strips_above^2 / 2 + full_strips * short_side + (strips_below - full_strips) * long_side - along_selvedge * (strips_below^2 - full_strips^2) / 2)",
      Math.SQRT2 * middles,
    );
    const joins = step("joins", "MAX(0; strips_above + strips_below - 1)", Math.max(0, above + below - 1));
    return step("yield", "middles - joins * join", centre - joins * join);
  },
  draw(
    _given,
    { short_side: w = 0, long_side: l = 0, along_selvedge: s = 0, strips_above = 0, strips_below = 0 },
  ) {
    const shapes: Shape[] = outline(
      polygon([
        [0, 0],
        [w, 0],
        [w, l],
        [0, l],
      ]),
      { label: phrase`cloth` },
    );
    // Lines y = x − c, cut off by the sides.
    const cut = (c: number): Shape => {
      const from: Point = [Math.max(0, c), Math.max(0, -c)];
      const run = Math.min(w - from[0], l - from[1]);
      return stroke([from, [from[0] + run, from[1] + run]], "cut");
    };
    for (let i = -Math.min(strips_below, 150); i <= Math.min(strips_above, 150); i += 1)
      shapes.push(cut(i * s));
    if (l > 0)
      shapes.push(
        dimension([0, 0], [w, w], { label: phrase`longest`, shows: "longest" }),
        dimension([-w / 20, 0], [-w / 20, s], { shows: "along_selvedge" }),
      );
    return shapes;
  },
  examples: [
    {
      given: { width: 36, length: 36, strip: 1.5 },
      gives: 861.174024,
      within: 1e-5,
      because: "sixteen strips each side of the diagonal, geometry in 50 digits; the area alone would be 864",
    },
    {
      given: { width: 50, length: 100, strip: 4, seam: 0.5, least: 30 },
      gives: 1111.60043072,
      within: 1e-5,
      unit: "cm",
      because: "nineteen strips of 30 cm and more, 1137.06 cm, counted one by one, less eighteen joins",
    },
  ],
});
