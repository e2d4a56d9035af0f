import { expect, test } from "vitest";
import { SEAM_LENGTH } from "../../../functions/fitting/SEAM_LENGTH.ts";
import { SEAM_VERDICT } from "../../../functions/fitting/SEAM_VERDICT.ts";
import { besideAnswer, explain, run } from "../../../functions/run.ts";
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

test("a waist of two fronts and two backs to two skirts is half a waist, which stands beside the answer and in the Working", () => {
  const strip = (width: number) => `M 0 0 L ${width} 0 L ${width} 9 L 0 9 Z | edges top, side, waist, end`;
  const waist = (skirts: number) =>
    [
      seamsOf(["front + back", "waist", "skirt", "waist"]),
      piecesOf(["front", strip(8), 2], ["back", strip(6), 2], ["skirt", strip(28 / skirts), skirts]),
      ...["front + back", "waist"],
    ] as never;
  for (const asked of [SEAM_LENGTH, SEAM_VERDICT]) {
    const seams = explain(asked, waist(2), setting("in")).steps.find(({ name }) => name === "such_seams");
    expect(seams).toMatchObject({
      value: 2,
      rule: expect.stringMatching(/those of one of them, not of all/),
    });
  }
  const beside = (declaration: typeof SEAM_LENGTH, skirts: number) =>
    besideAnswer(declaration, waist(skirts), setting("in"));
  expect(beside(SEAM_LENGTH, 2)).toBe(
    "one of 2 such seams of the garment, not all round: both together 28 in",
  );
  expect(beside(SEAM_LENGTH, 1)).toBe("the whole seam: the garment has one such seam");
  expect(beside(SEAM_VERDICT, 2)).toBe(`compared: ${beside(SEAM_LENGTH, 2)}`);
  const [seams, pieces, ...asked] = waist(2) as unknown as [never, never, string, string];
  const tight = piecesOf(["front", strip(8), 2], ["back", strip(6), 2], ["skirt", strip(13), 2]);
  expect(run(SEAM_VERDICT, [seams, tight, ...asked], setting("in"))).toMatch(
    /^check: at each of 2 such seams the front's waist and the back's waist are together 14 in and the skirt's waist 13 in/,
  );
  expect(run(SEAM_VERDICT, [seams, pieces, ...asked], setting("in"))).toBe("ok");
  expect([1, 2].map((skirts) => run(SEAM_LENGTH, waist(skirts), setting("in")))).toEqual([28, 14]);
});
