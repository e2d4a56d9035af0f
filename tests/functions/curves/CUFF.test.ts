import { expect, test } from "vitest";
import { CUFF } from "../../../functions/curves/CUFF.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

test("buttoned, a cuff goes round the wrist with its ease and no more", () => {
  const cuff = readPiece(String(run(CUFF, [17, 6, 2.5, 2], { unit: "cm" })));
  const [fold, overlap] = cuff.marks;
  // From the left end to where the overlap begins is what goes round.
  expect(overlap!.line[0]!.from[0]).toBeCloseTo(17 + 2.5, 12);
  expect(fold!.line[0]!.from[1]).toBe(6);
});

test("without an overlap only the fold is marked", () => {
  expect(readPiece(String(run(CUFF, [17, 6], { unit: "cm" }))).marks).toHaveLength(1);
});
