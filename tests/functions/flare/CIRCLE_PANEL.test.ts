import { expect, test } from "vitest";
import { CIRCLE_HEM } from "../../../functions/flare/CIRCLE_HEM.ts";
import { CIRCLE_PANEL } from "../../../functions/flare/CIRCLE_PANEL.ts";
import { CIRCLE_RADIUS } from "../../../functions/flare/CIRCLE_RADIUS.ts";
import { edgeLength, pieceArea } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(CIRCLE_PANEL, "cm");

test("a full circle skirt for a waist of 72, 60 long, covers the ring between 11.459 and 71.459", () => {
  // CI-04, computed: radii 11.4591559026 and 71.4591559026.
  const ring = Math.PI * (71.4591559026 ** 2 - 11.4591559026 ** 2);
  const two = pieceArea(piece(72, 60, 1, 2));
  expect(2 * two).toBeCloseTo(ring, 5);
  expect(pieceArea(piece(72, 60))).toBeCloseTo(ring, 5);
});

test("panels joined have the waist with its ease and the hem that CIRCLE_HEM says", () => {
  const [waist, length, circle, panels, ease] = [68, 45, 1.5, 4, 2];
  const [top, , hem] = piece(waist, length, circle, panels, ease).edges.map(edgeLength);
  expect(panels * top!).toBeCloseTo(70, 9);
  const radius = calls(CIRCLE_RADIUS, "cm").figure(waist, circle, ease);
  expect(panels * hem!).toBeCloseTo(calls(CIRCLE_HEM, "cm").figure(radius, length, circle), 8);
  expect(step("radius", waist, length, circle, panels, ease)).toBeCloseTo(radius, 12);
});

test("more circles than panels are refused", () => {
  expect(refusal(70, 50, 1.5)).toBe("panels must be at least 2 for 1.5 circles, not 1");
});
