import { define } from "../define.ts";
import { flaredPanel } from "../drafting/flared-panel.ts";
import { outline, type Shape } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { movePiece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { roundUpToWhole } from "../whole-number.ts";

/**
 * How many rings, or parts of rings, cut at an inner radius, go along an edge as a circular
 * flounce; each loses a seam allowance to the joins at both ends. The smaller the radius, the
 * fuller the flounce and the more rings. The step `fitted_radius` is the radius at which that
 * number of rings exactly fits. Source: geometry.
 */
export const FLOUNCE_COUNT = define({
  name: "FLOUNCE_COUNT",
  summary: "How many circles to cut for a circular flounce or annular ruffle along an edge.",
  source: "geometry",
  words: "annular ruffle circular frill flounce rings cascade jabot how many circles inner radius",
  takes: {
    edge: { kind: "length", about: "the edge the flounce goes along", from: 1, to: 100_000 },
    radius: { kind: "length", usual: [1, 60], about: "radius of each ring's inner edge", from: 0.5, to: 500 },
    circle: {
      kind: "share",
      about: "how much of a ring each part is: 1 a whole ring, 0.5 half",
      from: 0.05,
      to: 1,
      otherwise: 1,
    },
    seam: { kind: "length", about: "seam allowance at each end of a ring", from: 0, to: 10, otherwise: 0 },
  },
  returns: "count",
  usual: ["radius <= edge"],
  compute({ edge, radius, circle, seam }, { step }) {
    const inner = step("inner_edge", "2 * PI() * circle * radius", 2 * Math.PI * circle * radius);
    const each = step("each", "inner_edge - 2 * seam", inner - 2 * seam);
    if (each <= 1e-9 * inner) {
      throw new Refusal(
        (say) =>
          phrase`seam must be less than half of a ring's inner edge of ${say(inner, seam)}, not ${say(seam, inner)} at each end`,
      );
    }
    const count = roundUpToWhole(edge / each);
    step("left_over", "ROUNDUP(ROUND(edge / each; 8); 0) * each - edge", count * each - edge);
    step(
      "fitted_radius",
      "(edge / ROUNDUP(ROUND(edge / each; 8); 0) + 2 * seam) / (2 * PI() * circle)",
      (edge / count + 2 * seam) / (2 * Math.PI * circle),
    );
    return step("count", "ROUNDUP(ROUND(edge / each; 8); 0)", count);
  },
  draw({ radius, circle }, { count = 0, inner_edge = 0 }) {
    // The rings as they are cut, drawn as deep as their radius.
    const turn = 2 * Math.PI * circle;
    const ring = flaredPanel(inner_edge, inner_edge + turn * radius, radius, "middle");
    const shown = Math.min(count, 24);
    const shapes: Shape[] = Array.from({ length: shown }, (_, i) =>
      outline(
        movePiece(ring, (i % 6) * radius * 4.2, Math.floor(i / 6) * radius * 4.2),
        i === 0 ? { label: phrase`cut ${count}` } : {},
      ),
    ).flat();
    return [
      ...shapes,
      { kind: "edge", edge: ring.edges[0]!, role: "seam", label: phrase`inner edge`, shows: "inner_edge" },
    ];
  },
  examples: [
    { given: { edge: 100, radius: 4 }, gives: 4, because: "each ring gives 8π = 25.13 in" },
    {
      given: { edge: 150, radius: 8, seam: 1 },
      gives: 4,
      unit: "cm",
      because: "each gives 16π minus two seams, 48.27 cm; three would be just too short",
    },
  ],
});
