import { expect, test } from "vitest";
import { FACING } from "../../../functions/curves/FACING.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { edgeLength, flattenPiece, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { isRefused, run } from "../../../functions/run.ts";

const ask = (...args: (string | number | null)[]) => run(FACING, args, { unit: "cm" });
const facing = (...args: (string | number | null)[]) => {
  const answer = ask(...args);
  if (isRefused(answer)) throw new Error(answer.refusal);
  return readPiece(String(answer));
};
const bodice = "M 0 8 C 4 8 8 5 8 0 L 20 4 C 17 12 19 20 26 22 L 24 45 L 0 47 Z";

test.each([
  [1, 1],
  [3, 3],
  [1, 2],
  [4, 6],
])("the inner line keeps its depth from edges %d to %d", (first, last) => {
  const piece = readPiece(bodice);
  const strip = facing(bodice, first, 3, last);
  const outer = piece.edges.slice(first - 1, last).flat();
  const chain = flattenPiece({ edges: [outer] }, 1e-4);
  const points = [outer[0]!.from, ...chain];
  const inner = strip.edges.at(-2)!;
  for (let i = 1; i < 40; i += 1) {
    const { point } = placeAlong(inner, (edgeLength(inner) * i) / 40);
    let least = Number.POSITIVE_INFINITY;
    for (let k = 1; k < points.length; k += 1) {
      const [a, b] = [points[k - 1]!, points[k]!];
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const t = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / (dx * dx + dy * dy);
      const s = Math.min(1, Math.max(0, t));
      least = Math.min(least, Math.hypot(point[0] - a[0] - s * dx, point[1] - a[1] - s * dy));
    }
    // Beyond the ends of the edges, and at the mitre of a corner, it is a little farther.
    expect(least).toBeGreaterThan(3 - 0.0011);
    expect(least).toBeLessThan(3 * 1.5);
  }
  expect(strip.edges.slice(0, last - first + 1).map(edgeLength)).toEqual(
    piece.edges.slice(first - 1, last).map((edge) => expect.closeTo(edgeLength(edge), 8)),
  );
});

test("facings of a hem deeper and deeper fill the piece", () => {
  const gore = "M 0 0 L 20 0 L 27 60 L -7 60 Z";
  expect(pieceArea(facing(gore, 3, 59.999))).toBeCloseTo(pieceArea(readPiece(gore)), 0);
});

test.each([
  [[bodice, 7, 3], "first must be at most 6, because the piece has 6 edges, not 7"],
  [[bodice, 1, 3, 6], "edges must leave at least one edge of the piece without facing"],
  [[bodice, 2, 60], "depth must be less for the edges beside the facing to reach its inner line, not 60 cm"],
  [
    ["M 0 0 A 5 5 0 0 1 10 0 L 10 30 L 0 30 Z", 1, 6],
    "depth must be less than 5 cm, the radius of the tightest bend it follows, not 6 cm",
  ],
] as [(string | number)[], string][])("%j is refused: %s", (args, refusal) => {
  expect(ask(...args)).toMatchObject({ refusal });
});
