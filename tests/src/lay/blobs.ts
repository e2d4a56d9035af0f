/** Made-up curved pieces for tests, from a seed: no two alike, some hollow. */

import type { Point } from "../../../functions/geometry/strokes.ts";
import type { LayQuestion } from "../../../functions/lay.ts";
import { seeded } from "../../../src/lay/random.ts";

/** A closed curve of `points` points about (0, 0), some `wide` and `tall` to each side. */
export function blob(random: () => number, points: number, wide: number, tall: number): Point[] {
  const waves = [2, 3, 4].map((n) => ({ n, size: 0.25 * random(), from: 2 * Math.PI * random() }));
  return Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    const out = waves.reduce((sum, { n, size, from }) => sum + size * Math.sin(n * angle + from), 1);
    return [wide * out * Math.cos(angle), tall * out * Math.sin(angle)];
  });
}

/** `kinds` such pieces, `quantity` of each, two ways, on a cloth 54 wide. */
export function blobs(kinds: number, quantity: number, points: number, seed: number): LayQuestion {
  const random = seeded(seed);
  return {
    pieces: Array.from({ length: kinds }, (_, i) => ({
      name: `piece ${i}`,
      outline: blob(random, points, 4 + 10 * random(), 3 + 7 * random()),
      quantity,
      turns: [0, 180],
    })),
    cloths: [{ name: "the cloth", width: 54, length: null }],
    gap: 0,
    repeat: 0,
  };
}
