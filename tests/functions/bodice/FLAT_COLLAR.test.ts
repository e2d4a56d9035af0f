import { Bezier } from "bezier-js";
import { expect, test } from "vitest";
import { FLAT_COLLAR } from "../../../functions/bodice/FLAT_COLLAR.ts";
import { MIRROR } from "../../../functions/curves/MIRROR.ts";
import { TURN } from "../../../functions/curves/TURN.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { direction, distance, type Point } from "../../../functions/geometry/strokes.ts";
import { placeAlong } from "../../../functions/pieces/edges.ts";
import { edgeLength, type Piece, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";
import { lengthOf } from "../edges-measured.ts";

const { piece, refusal, answer, step } = calls(FLAT_COLLAR, "cm");

const FRONT =
  "M 0 20 C 4.5 20 7.5 16 7.5 11 L 19.5 15 L 22 40 L 0 40 Z | edges neckline, shoulder, side, waist, centre front";
const BACK =
  "M 0 13 C 3.5 13 6 12.5 7.5 11 L 19.5 15 L 22 40 L 0 40 Z | edges neckline, shoulder, side, waist, centre back";
const BODICE = [FRONT, "neckline", "shoulder", BACK, "neckline", "shoulder"] as const;
const NECKLINE =
  new Bezier(0, 20, 4.5, 20, 7.5, 16, 7.5, 11).length() +
  new Bezier(0, 13, 3.5, 13, 6, 12.5, 7.5, 11).length();

const points = (one: Piece, edge: number, count = 60): Point[] => {
  const run = one.edges[edge]!;
  const long = edgeLength(run);
  return Array.from({ length: count + 1 }, (_, i) => placeAlong(run, (long * i) / count).point);
};

test("the neck edge is as long as the neckline with its ease, whatever the overlap, by a general-purpose curve library", () => {
  for (const overlap of [0, 1, 2.5, 5])
    for (const ease of [0, -0.6, 0.4]) {
      const [neck] = piece(...BODICE, 6, overlap, ease).edges;
      expect(Math.abs(lengthOf(neck!) - NECKLINE - ease / 2)).toBeLessThan(1e-6);
    }
});

test("the outer edge keeps one distance from the neck edge", () => {
  for (const overlap of [0, 3]) {
    const one = piece(...BODICE, 6, overlap, 0, "square");
    const neck = points(one, 0, 800);
    for (const place of points(one, 2)) {
      const nearest = Math.min(...neck.map((other) => distance(place, other)));
      expect(Math.abs(nearest - 6)).toBeLessThan(0.01);
    }
  }
});

test("the more the shoulders overlap, the shorter is the outer edge beside the neck edge", () => {
  let before = Number.POSITIVE_INFINITY;
  for (const overlap of [0, 1, 2, 3, 4, 6]) {
    const longer = step("outer_longer", ...BODICE, 6, overlap, 0, "square");
    expect(longer).toBeLessThan(before);
    // Between edges that keep one distance, the outer is longer by the angle they turn through.
    if (before < Number.POSITIVE_INFINITY) expect(longer).toBeGreaterThan(0);
    before = longer;
  }
  const turned = (overlap: number) => step("outer_longer", ...BODICE, 6, overlap, 0, "square") / 6;
  const angle = 2 * Math.asin(3 / (2 * Math.hypot(12, 4)));
  expect(turned(0) - turned(3)).toBeCloseTo(angle, 3);
});

test("without overlap, and where the necklines run into each other, the collar is the strip of the bodice itself", () => {
  const ring = piece(
    "M 0 20 A 8 8 0 0 0 8 12 L 20 12 L 20 40 L 0 40 Z", 1, 2,
    "M 0 4 A 8 8 0 0 1 8 12 L 20 12 L 20 40 L 0 40 Z", 1, 2, 6, 0, 0, "square",
  ); // biome-ignore format: front, back, the rest
  expect(pieceArea(ring)).toBeCloseTo((Math.PI / 2) * (14 ** 2 - 8 ** 2), 6);
});

test("the neck edge is smooth at the shoulder, centre back stands upright, and a round front is square to the neck", () => {
  const one = piece(...BODICE, 6, 2.5);
  const [neck, front, outer, back] = one.edges;
  for (let i = 1; i < neck!.length; i += 1) {
    const [[a, b], [c, d]] = [direction(neck![i - 1]!, 1), direction(neck![i]!, 0)] as [Point, Point];
    expect(Math.abs(Math.atan2(a * d - b * c, a * c + b * d))).toBeLessThan(1e-6);
  }
  expect(back![0]!.from[0]).toBeCloseTo(0, 9);
  expect(back![0]!.to).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
  const square = ([a, b]: Point, [c, d]: Point) => (a * c + b * d) / Math.hypot(a, b) / Math.hypot(c, d);
  expect(square(direction(neck!.at(-1)!, 1), direction(front![0]!, 0))).toBeCloseTo(0, 6);
  const [[a, b], [c, d]] = [direction(front![0]!, 1), direction(outer![0]!, 0)] as [Point, Point];
  expect(Math.abs(Math.atan2(a * d - b * c, a * c + b * d))).toBeLessThan(1e-6);
});

test("the notch at the shoulder seam lies as far from centre back as on the bodice", () => {
  const one = piece(...BODICE, 6, 2.5);
  const behind = new Bezier(0, 13, 3.5, 13, 6, 12.5, 7.5, 11).length();
  expect(distance(one.marks[0]!.line[0]!.from, placeAlong(one.edges[0]!, behind).point)).toBeLessThan(1e-6);
});

test("bodice pieces turned or mirrored give the same collar", () => {
  const wanted = piece(...BODICE, 6, 2.5);
  const turned = calls(TURN, "cm").answer(FRONT, 37);
  const mirrored = calls(MIRROR, "cm").answer(BACK);
  for (const [front, back] of [[turned, BACK], [FRONT, mirrored], [turned, mirrored]] as const) {
    const one = piece(front, "neckline", "shoulder", back, "neckline", "shoulder", 6, 2.5);
    one.edges.forEach((edge, i) => {
      expect(edgeLength(edge)).toBeCloseTo(edgeLength(wanted.edges[i]!), 6);
    });
    expect(pieceArea(one)).toBeCloseTo(pieceArea(wanted), 6);
  } // biome-ignore format: pairs
});

test("a collar takes allowances", () => {
  const one = answer(...BODICE, 6, 2.5);
  expect(pieceArea(readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(one, 1))))).toBeGreaterThan(
    pieceArea(readPiece(String(one))) + 40,
  );
});

test("edges that do not meet, and an overlap as long as the shoulder, are refused", () => {
  expect(refusal(FRONT, "neckline", "side", BACK, "neckline", "shoulder", 6)).toBe(
    "front_shoulder must be the edge that meets the neckline at the neck, not one apart from it",
  );
  expect(refusal(...BODICE, 6, 13)).toMatch(
    /^overlap must be less than the shoulder, which is 12.6 cm long, not 13 cm$/,
  );
});
