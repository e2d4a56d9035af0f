import { define } from "../define.ts";
import { dimension, outline, type Shape } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { polygon } from "../pieces/piece.ts";

/**
 * Flat width of one tier of a tiered skirt, in the book's unit: each tier is `ratio` times the one
 * above, the first `ratio` times the edge it is gathered to. Joins are not included. Source: common practice.
 */
export const TIER_WIDTH = define({
  name: "TIER_WIDTH",
  summary: "How wide each tier of a tiered or peasant skirt must be, every tier gathered to the one above.",
  source: "common practice",
  words: "tiered skirt peasant ruffle layers prairie gathered fullness each tier",
  takes: {
    edge: { kind: "length", about: "the edge the first tier is gathered to", from: 1, to: 2000 },
    ratio: {
      kind: "share",
      about: "each tier's width over that of the tier above: 1.5 is half as wide again",
      from: 1,
      to: 5,
    },
    tier: { kind: "count", about: "which tier, counted from the top", from: 1, to: 12 },
  },
  returns: "length",
  compute({ edge, ratio, tier }, { step }) {
    step("above", "edge * ratio ^ (tier - 1)", edge * ratio ** (tier - 1));
    return step("flat", "edge * ratio ^ tier", edge * ratio ** tier);
  },
  draw({ edge, ratio, tier }, { flat = 0 }) {
    const deep = flat / (2 * tier);
    const shapes: Shape[] = Array.from({ length: tier }, (_, i) => {
      const half = (edge * ratio ** (i + 1)) / 2;
      const [high, low] = [i * deep, (i + 0.9) * deep];
      return outline(polygon([[-half, high], [half, high], [half, low], [-half, low]]), { label: phrase`tier ${i + 1}` }); // biome-ignore format: points in a row
    }).flat();
    const y = tier * deep;
    return [...shapes, dimension([-flat / 2, y], [flat / 2, y], { shows: "flat" })];
  },
  examples: [
    { given: { edge: 40, ratio: 1.5, tier: 3 }, gives: 135, because: "60, 90, 135" },
    {
      given: { edge: 100, ratio: 2, tier: 2 },
      gives: 400,
      unit: "cm",
      because: "twice the edge, and twice that again",
    },
  ],
});
