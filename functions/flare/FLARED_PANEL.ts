import { define } from "../define.ts";
import { drawPanel, flaredPanel, grainPoint, STRAIGHT_GRAIN } from "../drafting/flared-panel.ts";
import { phrase } from "../phrase.ts";
import { between, panelsRound, skirt } from "../worn/skirt.ts";

/**
 * A flared panel laid flat: a ring sector with exact arcs, in the book's unit, without allowances.
 * Edges: 1 top from left to right, 2 right side, 3 hem, 4 left side; (0, 0) where the straight
 * grain meets the top. A hem as long as the top gives a rectangle, a shorter one a panel that
 * narrows. Refuses a panel that needs more than a full circle. Source: geometry.
 */
export const FLARED_PANEL = define({
  name: "FLARED_PANEL",
  summary: "A flared panel as a piece, its top and hem curved exactly so that both have the wanted length.",
  source: "geometry: ring sector",
  words: "flounce flare peplum skirt circular annular sector gore curved yoke collar cuff ruffle",
  takes: {
    top: { kind: "length", about: "the top edge, along its curve", from: 0.5, to: 5000 },
    hem: { kind: "length", about: "the hem, along its curve", from: 0.5, to: 10000 },
    depth: { kind: "length", about: "from top to hem, square to both", from: 0.5, to: 500 },
    straight: STRAIGHT_GRAIN,
  },
  returns: "piece",
  usual: ["top <= hem"],
  alike: { "top, depth": "it may be wider or longer" },
  compute({ top, hem, depth, straight }, { step }) {
    const piece = flaredPanel(top, hem, depth, straight);
    step("angle", "DEGREES((hem - top) / depth)", (((hem - top) / depth) * 180) / Math.PI);
    step("curve", "RADIANS(angle) / top", (hem - top) / depth / top);
    step("area", "(top + hem) / 2 * depth", ((top + hem) / 2) * depth);
    step("top_edge", "top", top);
    step("hem_edge", "top + RADIANS(angle) * depth", hem);
    step("side", "depth", depth);
    return piece;
  },
  draw({ top, straight }, _, piece) {
    if (typeof piece !== "object") return [];
    return drawPanel(piece, grainPoint(top, straight), {
      area: "area",
      top: "top_edge",
      hem: "hem_edge",
      side: "side",
    });
  },
  panel: { top: "top_edge", depth: "depth" },
  worn({ top, hem, depth }, _, lengths) {
    const { count, says } = panelsRound(top, "panel", lengths);
    const round = between(count * top, count * hem);
    return skirt(
      { waist: count * top, depth, round, assumed: [phrase`it is worn at the waist`, says] },
      lengths,
    );
  },
  examples: [
    {
      given: { top: 72, hem: 112, depth: 12 },
      gives: { area: 1104, edges: [72, 12, 112, 12] },
      unit: "cm",
      because: "(72 + 112)/2 × 12; Baldt, Clothing for Women, 1916, prints this flounce",
    },
    {
      given: { top: 16.5, hem: 23.5, depth: 8, straight: "left" },
      gives: { area: 160, edges: [16.5, 8, 23.5, 8] },
      because: "(16.5 + 23.5)/2 × 8, its left edge on the fold",
    },
    {
      given: { top: 20, hem: 20, depth: 9 },
      gives: { area: 180, width: 20, length: 9 },
      because: "a straight strip",
    },
  ],
});
