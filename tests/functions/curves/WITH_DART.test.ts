import { expect, test } from "vitest";
import { WITH_DART } from "../../../functions/curves/WITH_DART.ts";
import { edgeLength, readPiece } from "../../../functions/pieces/piece.ts";
import { explain, run } from "../../../functions/run.ts";

const cm = { unit: "cm" } as const;

test("on a hollow edge both legs still meet at the point, the fold square to the edge", () => {
  const path = "M 0 0 C 6 3 14 3 20 0 L 20 40 L 0 40 Z";
  const marked = readPiece(
    String(run(WITH_DART, [path, 1, edgeLength(readPiece(path).edges[0]!) / 2, 4, 12], cm)),
  );
  const [left, right, fold] = marked.marks.map((mark) => mark.line[0]!);
  expect(left!.to).toEqual(right!.from);
  expect(fold!.to).toEqual(left!.to);
  // The edge's middle is at x = 10 by symmetry, 2.25 down; its tangent is level there.
  expect(fold!.from).toEqual([expect.closeTo(10, 6), expect.closeTo(2.25, 6)]);
  expect(fold!.to).toEqual([expect.closeTo(10, 6), expect.closeTo(14.25, 6)]);
  expect(left!.from[0]).toBeCloseTo(20 - right!.to[0], 6);
});

test("the sewn edge is shorter by the intake", () => {
  const { steps } = explain(WITH_DART, ["M 0 0 L 20 0 L 20 40 L 0 40 Z", 1, 8, 3, 6], cm);
  expect(steps.find(({ name }) => name === "sewn_edge")?.value).toBe(17);
});

test("a dart that hangs over the end of its edge is refused", () => {
  expect(run(WITH_DART, ["M 0 0 L 20 0 L 20 40 L 0 40 Z", 1, 19, 3, 6], cm)).toMatchObject({
    refusal: "at must be from 1.5 cm to 18.5 cm for the dart to lie on edge 1, not 19 cm",
  });
});

test("a dart longer than the piece is refused", () => {
  const piece = "M 0 0 L 20 0 L 20 40 L 0 40 Z";
  expect(run(WITH_DART, [piece, 1, 8, 3, 41], cm)).toMatchObject({
    refusal: "length must leave the point of the dart within the piece, not 41 cm",
  });
  expect(run(WITH_DART, [piece, 1, 8, 3, 40], cm)).toEqual(expect.any(String));
});
