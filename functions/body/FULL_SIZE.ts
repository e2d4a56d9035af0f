import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * The true size of something measured on a small drawing, in the book's unit, by one distance
 * known on both: drawn · real / drawing. The scale printed beside a plate may not survive its
 * copying, a known distance does. Source: geometry (similar figures).
 */
export const FULL_SIZE = define({
  name: "FULL_SIZE",
  summary: "The true size of a line on a small printed pattern, from one distance known on both.",
  source: "geometry",
  words: "enlarge scale diagram plate pattern book eighth scale copy photograph",
  takes: {
    drawn: { kind: "length", about: "the line measured on the drawing", from: 0, to: 500 },
    drawing: { kind: "length", about: "the known distance as drawn", from: 0.1, to: 500 },
    real: { kind: "length", about: "the same distance in full size", from: 0.1, to: 5000 },
  },
  returns: "length",
  usual: ["real >= 2.5 * drawing"],
  alike: { "drawn, drawing": "the line may be longer or shorter than the known distance" },
  compute({ drawn, drawing, real }, { step }) {
    const scale = step("times", "real / drawing", real / drawing);
    return step("full_size", "drawn * times", drawn * scale);
  },
  draw({ drawn }, { full_size = 0 }) {
    if (full_size === 0) return [];
    const high = full_size / 15;
    return [
      stroke([[0, 0], [drawn, 0]], "guide", { label: phrase`drawn` }),
      stroke([[0, high], [full_size, high]], "seam"),
      dimension([0, 2 * high], [full_size, 2 * high], { label: phrase`full size`, shows: "full_size" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { drawn: 2.25, drawing: 1, real: 8 },
      gives: 18,
      because: "a plate drawn an eighth of full size",
    },
    {
      given: { drawn: 3.1, drawing: 4.65, real: 42 },
      gives: 28,
      unit: "cm",
      because: "two thirds of a back known to be 42 cm",
    },
  ],
});
