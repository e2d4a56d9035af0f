import { define } from "../define.ts";
import { girthAt } from "../drafting/body-cone.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * The girth at a level between waist and hip, in the book's unit, `level` measured down the body
 * from the waist (negative above it): on the straight line through the two girths, and beyond the
 * hip on the same line. A first guess where no tape was laid; a belly or a high hip is fuller.
 * Refuses a level at which the line reaches 0. Source: geometry.
 */
export const GIRTH_AT = define({
  name: "GIRTH_AT",
  summary: "The girth some way below the waist, on a straight line from waist to hip and beyond.",
  source: "geometry",
  words: "high hip yoke between level interpolate taper below waist",
  takes: {
    waist: { kind: "length", usual: [40, 200], about: "waist girth", from: 10, to: 500 },
    hip: { kind: "length", usual: [45, 300], about: "hip girth", from: 10, to: 1000 },
    hip_drop: { kind: "length", about: "from waist down to hip, along the body", from: 1, to: 100 },
    level: { kind: "length", about: "how far below the waist", from: -100, to: 200 },
  },
  returns: "length",
  usual: ["waist <= 1.1 * hip", "hip_drop <= 0.6 * waist"],
  alike: { "hip_drop, level": "the level may lie above or below the hip" },
  compute({ waist, hip, hip_drop, level }, { step }) {
    const girth = girthAt(waist, hip, hip_drop, level, "level");
    const gain = step("gain_per_length", "(hip - waist) / hip_drop", (hip - waist) / hip_drop);
    step("gained", "gain_per_length * level", gain * level);
    step("half_girth", "(waist + gained) / 2", girth / 2);
    return step("girth", "waist + gain_per_length * level", girth);
  },
  draw({ waist, hip, hip_drop, level }, { half_girth = 0 }) {
    // A front view laid flat: half of each girth across, the levels down.
    const low = Math.max(hip_drop, level);
    const high = Math.min(0, level);
    const half = (y: number) => (waist + ((hip - waist) / hip_drop) * y) / 4;
    const across = (y: number, label: string) => stroke([[-half(y), y], [half(y), y]], "guide", { label }); // biome-ignore format: points in pairs
    return [
      stroke([[half(high), high], [half(low), low]], "seam"),
      stroke([[-half(high), high], [-half(low), low]], "seam"),
      across(0, phrase`half waist`),
      across(hip_drop, phrase`half hip`),
      dimension([-half_girth / 2, low + hip_drop / 4], [half_girth / 2, low + hip_drop / 4], { shows: "half_girth" }),
      stroke([[-half(level), level], [half(level), level]], "placement", { label: phrase`half the girth here` }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { waist: 30, hip: 42, hip_drop: 8, level: 3 },
      gives: 34.5,
      because: "12 in gained in 8, so 4 1/2 in 3",
    },
    {
      given: { waist: 76, hip: 108, hip_drop: 20, level: 25 },
      gives: 116,
      unit: "cm",
      because: "1.6 cm gained in each, 25 cm down",
    },
  ],
});
