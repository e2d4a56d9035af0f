import { expect, test } from "vitest";
import { CAPE } from "../../../functions/flare/CAPE.ts";
import { CIRCLE_PANEL } from "../../../functions/flare/CIRCLE_PANEL.ts";
import { edgeLength, pieceArea } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const cape = calls(CAPE, "cm");

test("two halves have the neck all round and are a circle part without the overlap", () => {
  const half = cape.piece(42, 70, 0.8);
  expect(2 * edgeLength(half.edges[0]!)).toBeCloseTo(42, 9);
  const whole = calls(CIRCLE_PANEL, "cm").piece(42, 70, 0.8, 1);
  expect(2 * pieceArea(half)).toBeCloseTo(pieceArea(whole), 7);
});

test("an overlap adds a straight strip at the front: its width to neck and hem, its area to the cape", () => {
  const [plain, wide] = [cape.piece(42, 70, 0.8), cape.piece(42, 70, 0.8, 6)];
  const lengths = (piece: typeof plain) => piece.edges.map(edgeLength);
  const [a, b] = [lengths(plain), lengths(wide)];
  for (const [i, more] of [6, 0, 6, 0].entries()) expect(b[i]! - a[i]!).toBeCloseTo(more, 9);
  expect(pieceArea(wide) - pieceArea(plain)).toBeCloseTo(6 * 70, 7);
});
