import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import { expect, test } from "vitest";
import { GIRTH_OVER } from "../../../functions/body/GIRTH_OVER.ts";
import { run } from "../../../functions/run.ts";

const over = (...args: number[]) => run(GIRTH_OVER, args, { unit: "cm" }) as number;

test("a layer of 3 mm round 900 mm makes 918.85 mm", () => {
  // 900 + 6π to 60 decimals: 918.8495559215...
  expect(over(90, 0.3)).toBeCloseTo(91.88495559215, 10);
});

test("whatever the shape, an outline pushed out by the thickness is as long", () => {
  // Against the offset of a polygon by a general-purpose clipping library: a triangle, a box, an oval.
  const oval = Array.from({ length: 200 }, (_, i) => [18 * Math.cos((i * Math.PI) / 100), 11 * Math.sin((i * Math.PI) / 100)]);
  for (const shape of [[[0, 0], [40, 0], [10, 25]], [[0, 0], [30, 0], [30, 20], [0, 20]], oval]) {
    const path = shape.map(([x, y]) => ({ x: x!, y: y! }));
    const pushed = inflatePathsD([path], 2, JoinType.Round, EndType.Polygon, 2, 6, 1e-5)[0]!;
    expect(over(round(path), 1, 2)).toBeCloseTo(round(pushed), 2);
  }
}); // biome-ignore format: points in pairs

const round = (path: readonly { x: number; y: number }[]) =>
  path.reduce((sum, { x, y }, i) => {
    const next = path[(i + 1) % path.length]!;
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
