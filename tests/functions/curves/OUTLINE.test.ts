import { expect, test } from "vitest";
import { OUTLINE } from "../../../functions/curves/OUTLINE.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { isRefused, run } from "../../../functions/run.ts";

const ask = (xs: number[], ys: number[], smooth?: string) =>
  run(OUTLINE, smooth === undefined ? [xs, ys] : [xs, ys, smooth], { unit: "cm" });
const outline = (xs: number[], ys: number[], smooth?: string) => {
  const answer = ask(xs, ys, smooth);
  if (isRefused(answer)) throw new Error(answer.refusal);
  return readPiece(String(answer));
};
const ring = Array.from({ length: 24 }, (_, i) => (2 * Math.PI * i) / 24);

test("points of a circle joined smoothly all round are a circle within a ten-thousandth", () => {
  const piece = outline(
    ring.map((t) => 10 * Math.cos(t)),
    ring.map((t) => 10 * Math.sin(t)),
    "all",
  );
  expect(piece.edges).toHaveLength(1);
  expect(Math.abs(pieceArea(piece) / (100 * Math.PI) - 1)).toBeLessThan(1e-4);
});

test("straight edges alone are the polygon of the shoelace formula", () => {
  const [xs, ys] = [[0, 9, 14, 11, 3], [0, -2, 6, 13, 10]]; // biome-ignore format: two columns
  const twice = xs!.reduce((sum, x, i) => sum + x * ys![(i + 1) % 5]! - xs![(i + 1) % 5]! * ys![i]!, 0);
  expect(pieceArea(outline(xs!, ys!))).toBeCloseTo(twice / 2, 9);
});

test("a smooth run is one edge, the corners at its ends stay corners", () => {
  const [xs, ys] = [[0, 10, 12, 13, 13, 0], [0, 0, 5, 10, 30, 30]]; // biome-ignore format: two columns
  const piece = outline(xs!, ys!, "2-4");
  expect(piece.edges.map((edge) => edge.length)).toEqual([1, 2, 1, 1, 1]);
  expect(edgeLength(piece.edges[1]!)).toBeGreaterThan(Math.hypot(3, 10));
  expect(edgeLength(piece.edges[1]!)).toBeLessThan(Math.hypot(2, 5) + Math.hypot(1, 5) + 0.1);
});

test("a run may go round through the first point, and the last point may repeat the first", () => {
  const [xs, ys] = [[5, 9, 9, 1, 1], [0, 2, 12, 12, 2]]; // biome-ignore format: two columns
  const piece = outline(xs!, ys!, "5-2");
  expect(piece.edges.map((edge) => edge.length)).toEqual([1, 1, 1, 2]);
  expect(outline([...xs!, 5], [...ys!, 0]).edges).toHaveLength(5);
});

test.each([
  [[0, 9], [0, 9], "", "xs must have at least 3 values, not 2"],
  [[0, 9, 9], [0, 9], "", "xs and ys must have the same number of values, not 3 and 2"],
  [
    [0, 9, 9, 9],
    [0, 0, 0, 9],
    "",
    "xs and ys put point 2 and point 3 at the same place: leave one of them out",
  ],
  [
    [0, 10, 10, 0],
    [0, 10, 0, 10.5],
    "",
    "xs and ys do not make a valid piece: the outline crosses itself near",
  ],
  [[0, 5, 9], [0, 0, 0], "", "xs and ys do not make a valid piece: the outline has no area"],
  [[0, 9, 9, 0], [0, 0, 9, 9], "waist", 'smooth must be runs such as "2-5" or "all", not "waist"'],
  [[0, 9, 9, 0], [0, 0, 9, 9], "2-9", 'smooth must run between two different points from 1 to 4, not "2-9"'],
  [[0, 9, 9, 0], [0, 0, 9, 9], "1-3, 2-4", 'smooth must name runs that do not overlap, not "1-3, 2-4"'],
  [[0, 9, 9, 0], [0, 0, 9, 9], "4-2 1-3", 'smooth must name runs that do not overlap, not "4-2 1-3"'],
  [[0, 9, 0], [0, 0, 0], "", "xs and ys must have at least 3 different points, not 2"],
] as [number[], number[], string, string][])("%j %j %s is refused: %s", (xs, ys, smooth, sentence) => {
  expect(ask(xs, ys, smooth)).toMatchObject({ refusal: expect.stringContaining(sentence) });
});
