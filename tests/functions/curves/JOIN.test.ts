import fc from "fast-check";
import { expect, test } from "vitest";
import { JOIN } from "../../../functions/curves/JOIN.ts";
import { MIRROR } from "../../../functions/curves/MIRROR.ts";
import { SPLIT } from "../../../functions/curves/SPLIT.ts";
import { TURN } from "../../../functions/curves/TURN.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { type Argument, run } from "../../../functions/run.ts";

const cm = { unit: "cm" } as const;
const join = (...args: Argument[]) => run(JOIN, args, cm);
const bodice = "M 0 8 C 4 8 8 5 8 0 L 20 4 C 17 12 19 20 26 22 L 24 45 L 0 47 Z";

test("a piece cut in two and joined again, however its part was turned, is whole", () => {
  fc.assert(
    fc.property(fc.integer({ min: -180, max: 180 }), fc.integer({ min: 1, max: 18 }), (degrees, at) => {
      const one = String(run(SPLIT, [bodice, 3, at, 6, 20, 1], cm));
      const other = String(run(TURN, [String(run(SPLIT, [bodice, 3, at, 6, 20, 2], cm)), degrees], cm));
      const seam = readPiece(one).edges.length;
      const whole = readPiece(String(join(one, seam, other, readPiece(other).edges.length)));
      expect(pieceArea(whole)).toBeCloseTo(pieceArea(readPiece(bodice)), 6);
      // Edges 3 and 6 are in two parts each.
      expect(whole.edges).toHaveLength(8);
      expect(edgeLength(whole.marks.at(-1)!.line)).toBeCloseTo(edgeLength(readPiece(one).edges.at(-1)!), 9);
    }),
    { seed: 12, numRuns: 30 },
  );
});

test("a half joined to its mirror image at centre front is twice as large, the way round it was drawn no matter", () => {
  const other = String(run(MIRROR, [bodice], cm));
  const whole = readPiece(String(join(bodice, 6, other, 6)));
  expect(pieceArea(whole)).toBeCloseTo(2 * pieceArea(readPiece(bodice)), 8);
});

test("seams of different length or curve are refused", () => {
  expect(join("M 0 0 L 9 0 L 9 9 L 0 9 Z", 2, "M 0 0 L 9 0 L 9 8 L 0 8 Z", 4)).toMatchObject({
    refusal:
      "second_edge must match first_edge along its whole length, within 0.1 cm: they are 9 cm and 8 cm long",
  });
  expect(join("M 0 0 L 9 0 C 11 3 11 6 9 9 L 0 9 Z", 2, "M 0 0 L 9 0 L 9 9.9 L 0 9.9 Z", 4)).toMatchObject({
    refusal: expect.stringContaining("second_edge must match first_edge along its whole length, within 0.1"),
  });
  expect(join("M 0 0 L 9 0 L 9 9 L 0 9 Z", 5, "M 0 0 L 9 0 L 9 9 L 0 9 Z", 4)).toMatchObject({
    refusal: "first_edge must be at most 4, because the piece has 4 edges, not 5",
  });
});
