import { CUTTING_RULES, cutRows, PIECES_TO_CUT, unfoldedPiece } from "../cutting/cut-list.ts";
import { define } from "../define.ts";
import { dimension, outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { pieceArea, polygon } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * The share of the cloth, 0 to 1, that the pieces of a cut list cover when they take `length` of
 * cloth `cloth_width` wide: their area over the cloth's. Good lays of clothes cover 80 to 90 %.
 * Mirrored pairs need not be given, for a mirror image has the same area; pieces on the fold must
 * be.
 */
export const LAY_DENSITY = define({
  name: "LAY_DENSITY",
  summary: "How much of the cloth the pieces use; the rest is left between them.",
  source: "geometry",
  words: "waste efficiency use of cloth utilisation percent offcut lay",
  takes: {
    ...PIECES_TO_CUT,
    cloth_width: {
      kind: "length",
      usual: [15, 330],
      about: "usable width of the cloth, between the selvedges",
      from: 5,
      to: 1000,
    },
    length: { kind: "length", about: "length of cloth that the lay takes", from: 0.5, to: 100_000 },
    folds: CUTTING_RULES.folds,
  },
  returns: "share",
  compute({ pieces, quantities, cloth_width, length, folds }, { step, measure }) {
    const rows = cutRows({ pieces, quantities, folds, pairs: null, names: null, grains: null });
    const area = measure(
      "pieces_area",
      "area of all the pieces to cut, allowances on",
      rows.reduce((sum, row) => sum + row.quantity * pieceArea(unfoldedPiece(row)), 0),
    );
    const cloth = step("cloth_area", "cloth_width * length", cloth_width * length);
    if (area > cloth * (1 + 1e-6))
      throw new Refusal(
        (say) =>
          phrase`length must be at least ${say(area / cloth_width, length)}, which the pieces cover without a gap between them, not ${say(length, area / cloth_width)}`,
      );
    step("left_between", "cloth_area - pieces_area", cloth - area);
    return step("density", "pieces_area / cloth_area", area / cloth);
  },
  draw({ cloth_width, length }, { pieces_area = 0 }) {
    // The pieces' area as if it were cut off the cloth in one length.
    const covered = pieces_area / cloth_width;
    const strip = (from: number, to: number) =>
      polygon([
        [from, 0],
        [to, 0],
        [to, cloth_width],
        [from, cloth_width],
      ]);
    return [
      ...outline(strip(0, length), { label: phrase`cloth`, shows: "cloth_area" }),
      ...outline(strip(0, covered), { label: phrase`pieces, run together`, shows: "pieces_area" }),
      dimension([0, cloth_width * 1.1], [length, cloth_width * 1.1], { label: phrase`length` }),
      dimension([-length / 20, 0], [-length / 20, cloth_width], { label: phrase`width` }),
    ];
  },
  examples: [
    {
      given: { pieces: ["M 0 0 L 27 0 L 27 40 L 0 40 Z"], quantities: [2], cloth_width: 54, length: 50 },
      gives: 0.8,
      because: "two panels of 27 by 40 in cover 40 in of a lay of 50 in",
    },
    {
      given: {
        pieces: ["M 0 0 L 20 0 L 20 30 L 0 30 Z", null],
        quantities: [1, null],
        cloth_width: 100,
        length: 24,
        folds: ["yes", null],
      },
      gives: 0.5,
      unit: "cm",
      because: "half a piece of 20 by 30 cm on the fold is 1200 square cm of 2400",
    },
  ],
});
