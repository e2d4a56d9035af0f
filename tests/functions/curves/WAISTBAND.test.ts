import { expect, test } from "vitest";
import { WAISTBAND } from "../../../functions/curves/WAISTBAND.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { pieceBounds, readPiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

test("a 24-inch waist with half-inch turnings and 1 1/2 in overlap is cut 26 1/2 in long", () => {
  // HE-04: Johnson, Oregon/Utah State extension L-86, 1964: waist and 2 1/2 in.
  const band = String(run(WAISTBAND, [24, 2, 0, 1.5], { unit: "in" }));
  const cut = readPiece(String(run(WITH_ALLOWANCE, [band, 0.5], { unit: "in" })));
  const { left, right } = pieceBounds(cut);
  expect(right - left).toBeCloseTo(26.5, 9);
});

test("the fold is marked along its middle, the overlap from its right end", () => {
  const [fold, overlap] = readPiece(String(run(WAISTBAND, [70, 4, 1, 3], { unit: "cm" }))).marks;
  expect(fold!.line[0]).toMatchObject({ from: [0, 4], to: [74, 4] });
  expect(overlap!.line[0]).toMatchObject({ from: [71, 0], to: [71, 8] });
});
