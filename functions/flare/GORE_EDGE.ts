import { define } from "../define.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/**
 * Length of the slanted side of a straight-sided gore, in the book's unit, from its top, its
 * straight hem and its length down the middle. The side is longer than the middle: the hem must be curved by
 * the difference to hang level. Source: Pythagoras.
 */
export const GORE_EDGE = define({
  name: "GORE_EDGE",
  summary: "How long the slanted side of a gore is, and how much longer than its middle.",
  source: "geometry: Pythagoras",
  words: "gore side seam slant length gored skirt umbrella panel hem curve",
  takes: {
    top: { kind: "length", about: "width of the gore at the top", from: 0, to: 1000 },
    hem: { kind: "length", about: "width at the hem, straight across", from: 0, to: 2000 },
    length: { kind: "length", about: "down the middle", from: 0.5, to: 500 },
  },
  returns: "length",
  usual: ["top <= hem", "hem <= 1.5 * length"],
  compute({ top, hem, length }, { step }) {
    const flare = step("flare", "(hem - top) / 2", (hem - top) / 2);
    const edge = Math.sqrt(length ** 2 + flare ** 2);
    step("longer", "SQRT(length ^ 2 + flare ^ 2) - length", edge - length);
    return step("edge", "SQRT(length ^ 2 + flare ^ 2)", edge);
  },
  draw({ top, hem, length }) {
    if (top + hem < length * 1e-6) return [];
    const piece = polygon([[-top / 2, 0], [top / 2, 0], [hem / 2, length], [-hem / 2, length]]); // biome-ignore format: points in a row
    return [
      ...outline(piece),
      dimension([top / 2, 0], [hem / 2, length], { label: phrase`side`, shows: "edge" }),
      dimension([0, 0], [0, length], { label: phrase`middle` }),
      dimension([-hem / 2, length * 1.06], [hem / 2, length * 1.06], { label: phrase`hem` }),
    ];
  },
  examples: [
    { given: { top: 4, hem: 22, length: 40 }, gives: 41, because: "9 in out in 40: a 9-40-41 triangle" },
    { given: { top: 10, hem: 10, length: 70 }, gives: 70, unit: "cm", because: "a straight breadth" },
  ],
});
