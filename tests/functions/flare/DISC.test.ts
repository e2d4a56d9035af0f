import { expect, test } from "vitest";
import { DISC } from "../../../functions/flare/DISC.ts";
import { edgeLength, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(DISC, "in");

test("a holder a quarter inch smaller than its case of 3 5/8 is cut at 3 3/8", () => {
  // CI-13, printed: McGlauflin, Handicraft for Girls, 1910, A round holder and case.
  expect(step("cut_radius", 3.625, 0.25)).toBe(3.375);
  expect(pieceBounds(piece(3.625, 0.25)).right).toBeCloseTo(3.375, 12);
});

test("all round is the rate at which the area grows with the radius", () => {
  const d = 1e-4;
  const growth = (pieceArea(piece(5 + d)) - pieceArea(piece(5 - d))) / (2 * d);
  expect(edgeLength(piece(5).edges[0]!)).toBeCloseTo(growth, 6);
});

test("less than nothing can not be cut", () => {
  expect(refusal(3, 3)).toBe("less must be below the radius of 3 in, not 3 in");
});
