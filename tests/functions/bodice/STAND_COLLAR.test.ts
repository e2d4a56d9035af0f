import { expect, test } from "vitest";
import { STAND_COLLAR } from "../../../functions/bodice/STAND_COLLAR.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { direction, distance, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, answer } = calls(STAND_COLLAR, "cm");

/** An edge measured as a tape would, by many short chords. */
function tape(edge: Edge): number {
  const long = edgeLength(edge);
  const points = Array.from({ length: 2001 }, (_, i) => placeAlong(edge, (long * i) / 2000).point);
  return points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0);
}

test("neck edge and upper edge are as long as wanted, the fronts as high as centre back", () => {
  const { edges } = piece(40, 5, 3, 0.5);
  expect(tape(edges[2]!)).toBeCloseTo(40.5, 5);
  expect(tape(edges[0]!)).toBeCloseTo(37.5, 5);
  expect(edges.map(edgeLength)[1]).toBeCloseTo(5, 12);
});

test("Ingalls, 1911: a collar of 13 in at the base and 12 in at the top, 2 1/2 in high, rises to the front", () => {
  const collar = calls(STAND_COLLAR, "in").piece(13, 2.5, 1);
  expect(collar.edges.map(edgeLength)).toEqual([12, 2.5, 13, 2.5].map((one) => expect.closeTo(one, 9)));
  // Worked by hand: a turn of 1/2.5 radians, a radius of 13 · 2.5; each front rises by radius · (1 − cos 0.2).
  const rise = collar.edges[2]![0]!.from;
  expect(2.5 - rise[1]).toBeCloseTo(32.5 * (1 - Math.cos(0.2)), 9);
});

test("a collar keeps one height all round, and its fronts stand square to both edges", () => {
  const { edges } = piece(40, 5, 3);
  for (const share of [0.1, 0.4, 0.7]) {
    const above = placeAlong(edges[0]!, 37 * share).point;
    const below = placeAlong(edges[2]!, 40 * (1 - share)).point;
    expect(distance(above, below)).toBeCloseTo(5, 9);
  }
  const [[a, b], [c, d]] = [direction(edges[0]![0]!, 1), direction(edges[1]![0]!, 0)] as [Point, Point];
  expect(a * c + b * d).toBeCloseTo(0, 9);
});

test("centre back stands upright, an overlap goes on beyond it, and the notches divide the neck edge", () => {
  const collar = piece(40, 4, 2.5, 0.8, 2, 8);
  expect(edgeLength(collar.edges[2]!)).toBeCloseTo(42.8, 9);
  const at = collar.marks.map(({ line }) => line[0]!.from);
  const wanted = [2, 2 + 20.4 - 8.16, 2 + 20.4, 2 + 20.4 + 8.16].map(
    (long) => placeAlong(collar.edges[2]!, long).point,
  );
  wanted.forEach((place, i) => {
    expect(distance(place, at[i]!)).toBeLessThan(1e-9);
  });
  expect(at[2]).toEqual([expect.closeTo(0, 9), expect.closeTo(4, 9)]);
});

test("rounded corners keep the neck edge and run into upper edge and fronts without a corner", () => {
  const { edges, names } = piece(40, 4, 2.5, 0, 0, null, 2);
  expect(names).toEqual(["upper edge", "right front", "neck edge", "left front"]);
  expect(edgeLength(edges[2]!)).toBeCloseTo(40, 9);
  const [[a, b], [c, d]] = [direction(edges[0]!.at(-1)!, 1), direction(edges[1]![0]!, 0)] as [Point, Point];
  expect(Math.abs(Math.atan2(a * d - b * c, a * c + b * d))).toBeLessThan(0.06);
  expect(pieceArea(piece(40, 4, 2.5, 0, 0, null, 2))).toBeLessThan(pieceArea(piece(40, 4, 2.5)));
});

test("a negative figure makes the collar stand away from the neck", () => {
  expect(piece(40, 5, -4).edges.map(edgeLength)[0]).toBeCloseTo(44, 9);
});

test("a collar takes allowances", () => {
  expect(
    pieceArea(readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(answer(40, 4, 2.5), 1)))),
  ).toBeGreaterThan(156 + 80);
});

test("an upper edge of nothing, a full circle, and a corner or a back neck too large are refused", () => {
  expect(refusal(40, 4, 40)).toMatch(/^shorter must leave an upper edge: less than the neck edge of 40 cm/);
  expect(refusal(40, 4, 30)).toMatch(/^shorter must be less for a collar 4 cm high, not 30 cm/);
  expect(refusal(40, 4, 2, 0, 0, null, 5)).toMatch(/^corner must be at most 4 cm/);
  expect(refusal(40, 4, 2, 0, 0, 20)).toBe("back_neck must be less than half the neckline, 20 cm, not 20 cm");
});
