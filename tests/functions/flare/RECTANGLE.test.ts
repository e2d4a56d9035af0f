import { expect, test } from "vitest";
import { FLARED_PANEL } from "../../../functions/flare/FLARED_PANEL.ts";
import { RECTANGLE } from "../../../functions/flare/RECTANGLE.ts";
import { edgeLength, pieceArea } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(RECTANGLE, "in");

test("its edges run round from the top, and it is a flared panel without flare", () => {
  const { edges } = piece(27, 40);
  expect(edges.map(edgeLength)).toEqual([27, 40, 27, 40]);
  expect(edges[0]![0]).toMatchObject({ from: [0, 0], to: [27, 0] });
  const flared = calls(FLARED_PANEL, "in").piece(27, 27, 40, "left");
  expect(pieceArea(flared)).toBe(pieceArea(piece(27, 40)));
  expect(step("all_round", 27, 40)).toBe(134);
});

test("a band of no width is refused", () => {
  expect(refusal(0, 40)).toBe("width must be at least 1/32 in, not 0");
});
