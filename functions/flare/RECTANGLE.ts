import { define } from "../define.ts";
import { drawPanel } from "../drafting/flared-panel.ts";
import { polygon } from "../pieces/piece.ts";

/**
 * A rectangle as a piece: `width` across the grain, `length` along it, in the book's unit, its
 * upper left corner at (0, 0). Edges: 1 top, 2 right side, 3 bottom, 4 left side. Source: geometry.
 */
export const RECTANGLE = define({
  name: "RECTANGLE",
  summary: "A straight panel, band or strip as a piece.",
  source: "geometry",
  words: "band waistband strip breadth panel square apron gathered skirt drop flat",
  takes: {
    width: { kind: "length", about: "across the grain", from: 0.1, to: 10000 },
    length: { kind: "length", about: "along the grain", from: 0.1, to: 10000 },
  },
  returns: "piece",
  alike: { "width, length": "it may be wider or longer" },
  compute({ width, length }, { step }) {
    step("area", "width * length", width * length);
    step("all_round", "2 * (width + length)", 2 * (width + length));
    step("across", "width", width);
    step("along", "length", length);
    return polygon([[0, 0], [width, 0], [width, length], [0, length]], ["top", "right side", "bottom", "left side"]); // biome-ignore format: points in a row
  },
  draw: ({ width }, _, piece) =>
    typeof piece === "object"
      ? drawPanel(piece, [width / 2, 0], {
          area: "area",
          top: "across",
          side: "along",
          width: "across",
          length: "along",
        })
      : [],
  examples: [
    {
      given: { width: 27, length: 40 },
      gives: { area: 1080, width: 27, length: 40, edges: [27, 40, 27, 40] },
      because: "half a width of 54 in cloth",
    },
    {
      given: { width: 8, length: 70 },
      gives: { area: 560, width: 8 },
      unit: "cm",
      because: "a waistband cut along the grain",
    },
  ],
});
