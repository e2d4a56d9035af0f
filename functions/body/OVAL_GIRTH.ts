import { define } from "../define.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import type { Point, Stroke } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Girth of an oval from its breadth and depth, in the book's unit: the perimeter of an ellipse
 * with these axes, to full precision. For a body measured with callipers, a stand, a hoop or the
 * inside of an old garment. A body with flat sides or a hollow back differs. Source: DLMF 19.30
 * with 19.8 (the perimeter by the arithmetic-geometric mean).
 */
export const OVAL_GIRTH = define({
  name: "OVAL_GIRTH",
  summary: "The girth of an oval, such as a waist, a neck or a hoop, from its breadth and its depth.",
  source: "NIST Digital Library of Mathematical Functions, 19.30 and 19.8",
  words: "ellipse perimeter hoop farthingale breadth depth caliper stand round",
  takes: {
    width: { kind: "length", about: "from side to side", from: 1, to: 500 },
    depth: { kind: "length", about: "from front to back", from: 1, to: 500 },
  },
  returns: "length",
  compute({ width, depth }, { step, measure }) {
    step("circle", "PI() * (width + depth) / 2", (Math.PI * (width + depth)) / 2);
    return measure(
      "girth",
      "the perimeter of the ellipse, a little more than the circle of the mean breadth",
      ellipse(width / 2, depth / 2),
    );
  },
  draw({ width, depth }) {
    const gap = Math.max(width, depth) / 10;
    const [a, b] = [width / 2, depth / 2];
    return [
      { kind: "edge", edge: around(a, b), role: "seam", shows: "girth" },
      dimension([-a, b + gap], [a, b + gap], { label: phrase`breadth` }),
      dimension([a + gap, -b], [a + gap, b], { label: phrase`depth` }),
    ] satisfies Shape[];
  },
  examples: [
    {
      given: { width: 30, depth: 20 },
      gives: 79.327197946453,
      unit: "cm",
      because: "semi-axes 15 and 10 (DLMF 19.30)",
    },
    { given: { width: 10, depth: 10 }, gives: 10 * Math.PI, because: "a circle" },
  ],
});

/**
 * Perimeter of an ellipse with semi-axes a and b. The arithmetic-geometric mean M of a and b
 * converges in a handful of rounds; with c the halved differences, c₀² = a² − b² before them,
 * the perimeter is (2π/M)(a² − Σ 2^(n−1) cₙ²).
 */
function ellipse(a: number, b: number): number {
  let [x, y] = [Math.max(a, b), Math.min(a, b)];
  const most = x;
  let sum = (x * x - y * y) / 2;
  for (let power = 1; x - y > 1e-15 * most; power *= 2) {
    const c = (x - y) / 2;
    sum += power * c * c;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
  }
  return (2 * Math.PI * (most * most - sum)) / x;
}

/** The ellipse as short curves that touch it at both ends. */
function around(a: number, b: number): Stroke[] {
  const count = 96;
  const turn = (2 * Math.PI) / count;
  const arm = (4 / 3) * Math.tan(turn / 4);
  const at = (angle: number): Point => [a * Math.cos(angle), b * Math.sin(angle)];
  const arms = (angle: number): Point => [-a * arm * Math.sin(angle), b * arm * Math.cos(angle)];
  return Array.from({ length: count }, (_, i): Stroke => {
    const [from, to] = [at(i * turn), at((i + 1) * turn)];
    const [u, v] = [arms(i * turn), arms((i + 1) * turn)];
    return {
      kind: "curve",
      from,
      c1: [from[0] + u[0], from[1] + u[1]],
      c2: [to[0] - v[0], to[1] - v[1]],
      to,
    };
  });
}
