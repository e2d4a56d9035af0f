import { isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawPanel } from "../drafting/flared-panel.ts";
import { gorePiece } from "../drafting/gore.ts";
import { stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, pieceArea } from "../pieces/piece.ts";
import { refuseUnlessSimple } from "../pieces/require-simple.ts";
import { Refusal } from "../refusal.ts";
import { between, panelsRound, skirt } from "../worn/skirt.ts";

/**
 * A gore of a skirt as a piece, symmetrical about x = 0 with its top at y = 0, in the book's unit,
 * without allowances. Edges: 1 waist, 2 right side, 3 hem, 4 left side. Sides are straight, or
 * shaped over the hip when `hip` and `hip_drop` are given. A curved hem makes the sides as long as
 * the middle, so that it hangs level. `hem` is measured along that curve, as it is sewn and
 * turned up; the straight width from corner to corner is a little less. Source: geometry.
 */
export const GORE = define({
  name: "GORE",
  summary:
    "One gore of a gored skirt as a piece, straight-sided or shaped over the hip, its hem trued (curved) to hang level.",
  source: "geometry",
  words: "gored skirt six eight gore panel trumpet umbrella A-line hip curve godet",
  takes: {
    top: { kind: "length", about: "width at the waist", from: 0.5, to: 500 },
    hem: {
      kind: "length",
      about:
        "the hem of this gore along its edge, as sewn: the hem wanted all round over the number of gores",
      from: 0.5,
      to: 1000,
    },
    length: { kind: "length", about: "from waist to hem down the middle", from: 5, to: 300 },
    hip: {
      kind: "length",
      about: "width at the hip; the sides are straight when it is left out",
      from: 0.5,
      to: 500,
      otherwise: null,
    },
    hip_drop: {
      kind: "length",
      about: "from waist down to hip, needed when hip is given",
      from: 1,
      to: 100,
      otherwise: null,
    },
    truing: {
      kind: "text",
      about: "curved: hem hangs level, sides as long as the middle; straight: hem straight across",
      choices: ["curved", "straight"],
      otherwise: "curved",
    },
  },
  returns: "piece",
  usual: ["top <= hem", "hem <= 1.5 * length", "top <= hip", "hip <= 1.2 * hem"],
  alike: {
    "hem, hip_drop": "the hip may lie farther down than the gore is wide",
    "hip, hip_drop": "the hip may lie farther down than the gore is wide there",
  },
  compute({ top, hem, length, hip, hip_drop, truing }, { step, measure }) {
    if ((hip === null) !== (hip_drop === null)) {
      const [present, missing] = hip === null ? ["hip_drop", "hip"] : ["hip", "hip_drop"];
      throw new Refusal(phrase`${missing} must be given when ${present} is given`);
    }
    if (hip_drop !== null && !isBelow(hip_drop, length * 0.95)) {
      throw new Refusal(
        (say) =>
          phrase`hip_drop must be well above the hem at ${say(length, hip_drop)}, not ${say(hip_drop, length)}`,
      );
    }
    const over = hip === null || hip_drop === null ? null : { width: hip, drop: hip_drop };
    const piece = refuseUnlessSimple(
      "top, hip and hem give sides that cross one another: check these widths and hip_drop",
      gorePiece({ top, hem, length, hip: over, truing }),
    );
    step("flare", "(hem - top) / 2", (hem - top) / 2);
    const side = measure("side", "length of each side", edgeLength(piece.edges[1]!));
    step("side_longer", "side - length", side - length);
    const edge = piece.edges[2]![0]!;
    const corners = measure(
      "hem_corners",
      "straight across the hem, from corner to corner",
      edge.from[0] - edge.to[0],
    );
    step("hem_edge", "hem", hem);
    step("hem_longer", "hem - hem_corners", hem - corners);
    step("top_edge", "top", top);
    measure("area", "area of the gore", pieceArea(piece));
    return piece;
  },
  draw({ hip, hip_drop }, _, piece) {
    if (typeof piece !== "object") return [];
    return [
      ...drawPanel(piece, [0, 0], { area: "area", top: "top_edge", hem: "hem_edge" }),
      { kind: "edge", edge: piece.edges[1]!, role: "seam", label: phrase`side`, shows: "side" },
      ...(hip === null || hip_drop === null
        ? []
        : [stroke([[-hip / 2, hip_drop], [hip / 2, hip_drop]], "guide", { label: phrase`hip` })]),
    ]; // biome-ignore format: points in pairs
  },
  worn({ top, hem, length, hip, hip_drop }, _, lengths) {
    const { count, says } = panelsRound(top, "gore", lengths);
    const waist = count * top;
    const shaped = hip !== null && hip_drop !== null ? { hip: count * hip, hip_drop } : null;
    const below = shaped ? shaped.hip_drop / length : 0;
    const above = between(waist, shaped?.hip ?? waist);
    const rest = between(shaped?.hip ?? waist, count * hem);
    return skirt(
      {
        waist,
        ...shaped,
        depth: length,
        round: (share) => (share < below ? above(share / below) : rest((share - below) / (1 - below))),
        // A gored skirt folds at its seams.
        folds: Math.max(6, Math.min(40, count)),
        assumed: [says],
      },
      lengths,
    );
  },
  examples: [
    {
      given: { top: 4, hem: 22, length: 40, truing: "straight" },
      gives: { area: 520, edges: [4, 41, 22, 41] },
      because: "9 in out on each side in 40: a 9-40-41 triangle",
    },
    {
      given: { top: 4, hem: 244 * Math.atan(1 / 11), length: 41 },
      gives: { length: 41, width: 22, edges: [4, 41, 244 * Math.atan(1 / 11)] },
      because: "the same sides, the hem curved an inch lower in the middle: an arc of radius 61 over 22 in",
    },
    {
      given: { top: 12, hem: 130 / 6, length: 75, hip: 18, hip_drop: 20 },
      gives: { length: 75, edges: [12, 75, 130 / 6] },
      unit: "cm",
      because: "one of six gores for a hem of 130 cm all round, shaped over the hip: 130 cm are sewn",
    },
  ],
});
