import { expect, test } from "vitest";
import { unfold } from "../../../functions/pieces/cut-on-fold.ts";
import {
  edgeLength,
  pieceArea,
  pieceBounds,
  readPiece,
  writePiece,
} from "../../../functions/pieces/piece.ts";

const bodice = "M 0 2 C 3 2 5 0 5 0 L 12 1 C 9 4 10 8 13 9 L 12 20 L 0 22 Z M 6 4 L 6 18 M 0 4 L 0 20";

test("a bodice on the fold comes out twice as large, twice as wide and equally long", () => {
  const half = readPiece(bodice);
  const whole = unfold(half)!;
  expect(pieceArea(whole)).toBeCloseTo(2 * pieceArea(half), 9);
  const [a, b] = [pieceBounds(half), pieceBounds(whole)];
  expect(b.right - b.left).toBeCloseTo(2 * (a.right - a.left), 9);
  expect([b.low, b.high]).toEqual([a.low, a.high]);
  // Every edge but the fold is there twice.
  const sum = (edges: typeof whole.edges) => edges.reduce((all, edge) => all + edgeLength(edge), 0);
  expect(sum(whole.edges)).toBeCloseTo(2 * (sum(half.edges) - 20), 9);
  expect(readPiece(writePiece(whole)).edges).toHaveLength(whole.edges.length);
});

test("marks come twice, those on the fold once", () => {
  expect(unfold(readPiece(bodice))!.marks).toHaveLength(3);
});

test("the fold may be at the right border, in several strokes, and begin anywhere in the outline", () => {
  for (const path of [
    "M 10 8 L 10 3 L 10 0 L 0 0 L 2 8 Z",
    "M 10 3 L 10 0 L 0 0 L 2 8 L 10 8 Z",
    "M 0 0 L 2 8 L 10 8 L 10 5 10 0 Z",
  ]) {
    const whole = unfold(readPiece(path))!;
    expect(pieceArea(whole)).toBeCloseTo(144, 9);
    expect(pieceBounds(whole)).toMatchObject({ left: 0, right: 20 });
  }
});

test("arcs are opened out as arcs: half a circle skirt quarter gives a half circle", () => {
  const whole = unfold(readPiece("M 0 5 A 5 5 0 0 0 5 0 L 20 0 A 20 20 0 0 1 0 20 Z"))!;
  expect(pieceArea(whole)).toBeCloseTo((Math.PI / 2) * (20 ** 2 - 5 ** 2), 9);
});

test("of two straight borders the longer is the fold, and where there is none nothing is opened", () => {
  expect(pieceBounds(unfold(readPiece("M 0 0 L 10 -2 L 10 9 L 0 6 Z"))!)).toMatchObject({
    left: 0,
    right: 20,
  });
  expect(unfold(readPiece("M 5 0 L 10 8 L 0 8 Z"))).toBeNull();
});
