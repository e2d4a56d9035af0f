import { expect, test } from "vitest";
import { SEAM_LENGTH } from "../../../functions/fitting/SEAM_LENGTH.ts";
import { run } from "../../../functions/run.ts";
import { setting } from "../laws.ts";
import { piecesOf, seamsOf } from "./seam-lists.ts";

// Derivation: half a circle of radius r is an arc of πr; half of it drawn on the fold is πr/2.
test("half a circular skirt on the fold is as long at the waist as half a circle, and its seam to a band of two halves is that", () => {
  const r = 9;
  const skirt = `M 0 0 A ${r} ${r} 0 0 0 ${r} ${r} L ${r} 30 L 0 30 Z | edges waist, side, hem, centre`;
  const pieces = piecesOf(
    ["skirt", skirt, 1, "yes"],
    ["band", "M 0 0 L 14 0 L 14 2 L 0 2 Z | edges upper, end, lower, start", 2],
  );
  const seams = seamsOf(["skirt", "waist", "band", "lower"]);
  const ask = (which: string, piece: string, edge: string) =>
    run(SEAM_LENGTH, [seams, pieces, piece, edge, null, null, which], setting("in"));
  expect(ask("first", "skirt", "waist")).toBeCloseTo(Math.PI * r, 9);
  expect(ask("second", "skirt", "waist")).toBeCloseTo(28, 9);
  expect(ask("first", "band", "lower")).toBeCloseTo(28, 9);
  expect(ask("difference", "band", "lower")).toBeCloseTo(28 - Math.PI * r, 9);
});
