import { expect, test } from "vitest";
import { GODET } from "../../../functions/flare/GODET.ts";
import { distance } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal } = calls(GODET, "in");

test("sides are as long as the slit and the hem adds what it should, curved or straight", () => {
  for (const shape of ["curved", "straight"]) {
    const lengths = piece(9, 14, shape).edges.map(edgeLength);
    for (const [i, wanted] of [14, 9, 14].entries()) expect(lengths[i]).toBeCloseTo(wanted, 9);
  }
});

test("a curved hem is everywhere as far from the point as the slit is long", () => {
  const hem = piece(20, 12).edges[1]!;
  for (const stroke of hem) {
    expect(stroke.kind).toBe("arc");
    if (stroke.kind === "arc") expect(stroke.radius).toBeCloseTo(12, 9);
    expect(distance([0, 0], stroke.to)).toBeCloseTo(12, 9);
  }
});

test("cut from a circle: half a circle let in is a half disc, a whole one a disc", () => {
  expect(pieceArea(piece(10 * Math.PI, 10))).toBeCloseTo(50 * Math.PI, 8);
  expect(pieceBounds(piece(10 * Math.PI, 10)).right).toBeCloseTo(10, 9);
  expect(pieceArea(piece(20 * Math.PI, 10))).toBeCloseTo(100 * Math.PI, 8);
});

test("more than the slit can take is refused", () => {
  expect(refusal(40, 6)).toBe(
    "width must be at most 37 3/4 in for a curved godet 6 in long, not 40 in: use two godets",
  );
  expect(refusal(12, 6, "straight")).toBe(
    "width must be less than 12 in for a straight godet 6 in long, not 12 in: use two godets",
  );
});
