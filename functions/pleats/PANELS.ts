import { define } from "../define.ts";
import { BREADTHS, joinedBreadth } from "../drafting/breadths.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { DRESS_MAKING } from "../sources.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * How many breadths of cloth make a flat width, whole breadths only. `seam` is what a breadth
 * loses to its joins, both sides together. Source: Dress Making, Trade Practical, p. 203.
 */
export const PANELS = define({
  name: "PANELS",
  summary: "How many widths of cloth to join for a gathered or pleated skirt, a frill or a curtain.",
  source: `${DRESS_MAKING}, p. 203; Ingalls, Text-Book on Domestic Art, 1911`,
  words:
    "breadths widths drops strips join skirt ruffle how many panels cloth width gathered pleated selvedge strip count strips",
  takes: {
    flat: { kind: "length", about: "flat width wanted, all round", from: 1, to: 100_000 },
    ...BREADTHS,
  },
  returns: "count",
  usual: ["seam < 0.5 * cloth_width"],
  alike: { "flat, cloth_width": "one width of cloth may be more than enough" },
  compute({ flat, cloth_width, seam }, { step }) {
    const breadth = step("breadth", "cloth_width - seam", joinedBreadth(cloth_width, seam));
    const panels = roundUpToWhole(flat / breadth);
    step("left_over", "ROUNDUP(ROUND(flat / breadth; 8); 0) * breadth - flat", panels * breadth - flat);
    return step("panels", "ROUNDUP(ROUND(flat / breadth; 8); 0)", panels);
  },
  draw({ flat }, { breadth = 0, panels = 0 }) {
    const deep = breadth * 0.8;
    const whole = panels * breadth;
    return [
      ...Array.from({ length: Math.min(panels, 200) + 1 }, (_, i) =>
        stroke([[i * breadth, 0], [i * breadth, deep]], i === 0 || i === panels ? "cut" : "seam"),
      ),
      stroke([[0, 0], [whole, 0]], "cut"),
      stroke([[0, deep], [whole, deep]], "cut"),
      dimension([0, -deep / 8], [breadth, -deep / 8], { shows: "breadth" }),
      dimension([0, deep * 1.15], [flat, deep * 1.15], { label: phrase`flat` }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { flat: 236, cloth_width: 90, seam: 2 },
      gives: 3,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203 ex. 1c",
    },
    {
      given: { flat: 144, cloth_width: 36 },
      gives: 4,
      because: "4 yd round the hem in 36 in cloth: Ingalls 1911",
    },
  ],
});
