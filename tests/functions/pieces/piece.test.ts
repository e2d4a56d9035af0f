import { areaPathsD, type PathsD } from "clipper2-ts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { distance } from "../../../functions/geometry/strokes.ts";
import {
  edgeLength,
  flattenPiece,
  mirrorPiece,
  movePiece,
  pieceArea,
  pieceBounds,
  polygon,
  readPiece,
  turnPiece,
  writePiece,
} from "../../../functions/pieces/piece.ts";

const SEED = 1932;
const SAMPLES = [
  "M 0 0 L 10 0 L 15 20 L -5 20 Z",
  "M 0 10 A 10 10 0 0 0 10 0 L 30 0 A 30 30 0 0 1 0 30 Z",
  "M 0 2 C 3 2 5 0 5 0 L 12 1 C 9 4 10 8 13 9 L 12 20 L 0 22 Z M 6 4 L 6 18 M 2 5 A 3 3 0 0 1 4 8",
  "M 0 0 C 4 -3 9 -3 12 1 S 20 4 22 0 L 20 15 A 30 30 0 0 1 2 15 Z",
].map(readPiece);
const sample = fc.constantFrom(...SAMPLES);
const far = fc.double({ min: -300, max: 300, noNaN: true });

test("areas are those that an independent library finds for the outline in fine chords", () => {
  for (const piece of SAMPLES) {
    const ring = flattenPiece(piece, 1e-5).map(([x, y]) => ({ x, y }));
    expect(Math.abs(areaPathsD([ring] as PathsD))).toBeCloseTo(pieceArea(piece), 3);
  }
});

test("turning, mirroring and moving keep area and edges; twice mirrored, and turned full round, is where it was", () => {
  fc.assert(
    fc.property(sample, far, far, far, (piece, angle, dx, dy) => {
      for (const changed of [turnPiece(piece, angle), mirrorPiece(piece), movePiece(piece, dx, dy)]) {
        expect(pieceArea(changed)).toBeCloseTo(pieceArea(piece), 6);
        changed.edges.forEach((edge, i) => {
          expect(edgeLength(edge)).toBeCloseTo(edgeLength(piece.edges[i]!), 8);
        });
        expect(changed.marks).toHaveLength(piece.marks.length);
      }
      const back = [turnPiece(turnPiece(piece, angle), -angle), mirrorPiece(mirrorPiece(piece))];
      for (const one of back)
        one.edges.flat().forEach((stroke, i) => {
          expect(distance(stroke.to, piece.edges.flat()[i]!.to)).toBeLessThan(1e-9);
        });
    }),
    { seed: SEED, numRuns: 60 },
  );
});

test("turning goes clockwise on the paper: what lay along the top comes to lie down the right", () => {
  const turned = turnPiece(readPiece("M 0 0 L 8 0 L 8 3 L 0 3 Z"), 90);
  const [x, y] = turned.edges[0]![0]!.to;
  expect([x, y]).toEqual([expect.closeTo(0, 12), expect.closeTo(8, 12)]);
});

test("a piece written and read is the same piece, wherever it lies", () => {
  fc.assert(
    fc.property(sample, far, far, far, (piece, angle, dx, dy) => {
      const moved = movePiece(turnPiece(piece, angle), dx, dy);
      const read = readPiece(writePiece(moved));
      expect(read.edges).toHaveLength(moved.edges.length);
      expect(read.marks).toHaveLength(moved.marks.length);
      expect(pieceArea(read)).toBeCloseTo(pieceArea(moved), 5);
      read.edges.forEach((edge, i) => {
        expect(edgeLength(edge)).toBeCloseTo(edgeLength(moved.edges[i]!), 6);
      });
      expect(writePiece(readPiece(writePiece(read)))).toHaveLength(writePiece(read).length);
      const [a, b] = [pieceBounds(read), pieceBounds(moved)];
      for (const side of ["left", "right", "low", "high"] as const) expect(a[side]).toBeCloseTo(b[side], 6);
    }),
    { seed: SEED, numRuns: 60 },
  );
});

test("an outline closed by hand has no edge more than one closed by Z", () => {
  expect(readPiece("M 0 0 L 4 0 L 4 3 L 0 0").edges).toHaveLength(3);
  expect(readPiece("M 0 0 L 4 0 L 4 3 Z").edges).toHaveLength(3);
  expect(readPiece("M 0 0 L 4 0 L 4 3 L 0 0 Z").edges).toHaveLength(3);
});

test("a polygon has an edge from each corner to the next", () => {
  const square = polygon([
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ]);
  expect(square.edges.map(edgeLength)).toEqual([4, 4, 4, 4]);
  expect(pieceArea(square)).toBe(16);
});
