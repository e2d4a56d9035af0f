import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Diameter of the round of cloth that covers a flat mould, in the book's unit: over its face, down
 * its side all round, and `turning` under it. With a turning near half the diameter the gathers
 * meet beneath. Source: geometry.
 */
export const BUTTON_COVER = define({
  name: "BUTTON_COVER",
  summary: "How large a round of cloth to cut for covering a button.",
  source: "geometry",
  words: "covered button mould fabric circle death's head thread wrapped",
  takes: {
    diameter: { kind: "length", about: "diameter of the mould", from: 0.3, to: 20 },
    thickness: { kind: "length", about: "thickness of the mould", from: 0, to: 10, otherwise: 0 },
    turning: {
      kind: "length",
      about: "how far the cloth reaches under the mould all round",
      from: 0,
      to: 10,
    },
  },
  returns: "length",
  usual: ["thickness <= diameter", "2 * turning <= diameter"],
  compute({ diameter, thickness, turning }, { step }) {
    const reach = step("reach", "thickness + turning", thickness + turning);
    return step("round", "diameter + 2 * reach", diameter + 2 * reach);
  },
  draw({ diameter }, { round = 0 }) {
    const ring = (across: number) => [arc([0, 0], across / 2, 0, 2 * Math.PI)];
    return [
      { kind: "edge", edge: ring(round), role: "cut", label: phrase`cloth` },
      { kind: "edge", edge: ring(diameter), role: "fold", label: phrase`mould` },
      stroke(
        [
          [-diameter / 2, 0],
          [diameter / 2, 0],
        ],
        "guide",
      ),
      dimension([-round / 2, round * 0.6], [round / 2, round * 0.6], { shows: "round" }),
    ];
  },
  examples: [
    {
      given: { diameter: 1, thickness: 0.125, turning: 0.375 },
      gives: 2,
      because: "an inch, and half an inch on every side",
    },
    {
      given: { diameter: 2, turning: 0.8 },
      gives: 3.6,
      unit: "cm",
      because: "a thin mould of 2 cm with 8 mm under it",
    },
  ],
});
