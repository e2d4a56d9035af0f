import { Bezier } from "bezier-js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { distance, type Point, pointAt, strokeLength } from "../../../functions/geometry/strokes.ts";
import {
  edgeMiddle,
  edgeNumbers,
  edgePart,
  placeAlong,
  reverseEdge,
} from "../../../functions/pieces/edges.ts";
import { edgeLength, readPiece } from "../../../functions/pieces/piece.ts";

const piece = readPiece("M 0 0 L 9 0 A 5 5 0 0 1 9 8 C 7 12 3 9 0 8 L -2 3 0 0 Z");

test("edges are named by number, by list and by run; what is no number or no edge is refused", () => {
  const told = (text: string) => [...edgeNumbers(text, piece, "hem_edges")];
  expect(told("3")).toEqual([3]);
  expect(told(" 4, 1;2 ")).toEqual([4, 1, 2]);
  expect(told("2-4")).toEqual([2, 3, 4]);
  expect(told("")).toEqual([]);
  expect(() => told("hem")).toThrow(
    'hem_edges must be the number of an edge, from 1 to 4, not "hem", because the edges of this piece have no names',
  );
  expect(() => told("5")).toThrow(
    "hem_edges must name edges from 1 to 4, because the piece has 4 edges, not 5",
  );
  expect(() => told("0-2")).toThrow("not 0");
});

test("parts of an edge add up to it, whatever strokes it has, and begin and end where they should", () => {
  fc.assert(
    fc.property(fc.nat(3), fc.double({ min: 0, max: 1, noNaN: true }), (i, share) => {
      const edge = piece.edges[i]!;
      const whole = edgeLength(edge);
      const [a, b] = [edgePart(edge, 0, share * whole), edgePart(edge, share * whole, whole)];
      expect(edgeLength(a)).toBeCloseTo(share * whole, 8);
      expect(edgeLength(a) + edgeLength(b)).toBeCloseTo(whole, 8);
      expect(distance(a.at(-1)!.to, b[0]!.from)).toBeLessThan(1e-8);
      const back = placeAlong(reverseEdge(edge), whole - share * whole).point;
      expect(distance(back, placeAlong(edge, share * whole).point)).toBeLessThan(1e-8);
    }),
    { seed: 1729 },
  );
});

test("the middle of a curve by length is where the library's curve is half as long", () => {
  const curve = piece.edges[2]![0]!;
  if (curve.kind !== "curve") throw new Error("edge 3 is a curve");
  const middle = edgeMiddle(piece.edges[2]!);
  const { from, c1, c2, to } = curve;
  const bezier = new Bezier(...from, ...c1, ...c2, ...to);
  let [low, high] = [0, 1];
  for (let i = 0; i < 50; i += 1) {
    const t = (low + high) / 2;
    if (bezier.split(0, t).length() < bezier.length() / 2) low = t;
    else high = t;
  }
  const { x, y } = bezier.get(low);
  expect(distance(middle, [x, y])).toBeLessThan(1e-6);
});

test("an edge drawn from its other end has the same points", () => {
  for (const edge of piece.edges) {
    const back = reverseEdge(edge);
    expect(edgeLength(back)).toBeCloseTo(edgeLength(edge), 12);
    const ends = (one: typeof edge): Point[] => [one[0]!.from, one.at(-1)!.to];
    expect(ends(back)).toEqual(ends(edge).reverse());
    for (const [i, stroke] of edge.entries()) {
      const other = back[edge.length - 1 - i]!;
      expect(distance(pointAt(stroke, 0.3), pointAt(other, 0.7))).toBeLessThan(1e-9);
      expect(strokeLength(other)).toBeCloseTo(strokeLength(stroke), 12);
    }
  }
});
