import { expect, test } from "vitest";
import { EDGE_LENGTH } from "../../../functions/curves/EDGE_LENGTH.ts";
import { WITH_NOTCH } from "../../../functions/curves/WITH_NOTCH.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

const armhole = "M 0 0 L 12 0 C 9 4 10 10 14 12 L 14 30 L 0 30 Z";
const cm = { unit: "cm" } as const;

test("the notch stands on the edge, square to it, and points into the piece", () => {
  for (const path of [armhole, "M 0 0 L 0 30 L 14 30 L 14 12 C 10 10 9 4 12 0 Z"]) {
    const edge = path === armhole ? 2 : 4;
    const notched = readPiece(String(run(WITH_NOTCH, [path, edge, 5], cm)));
    const { from, to } = notched.marks.at(-1)!.line[0]!;
    expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(0.5, 9);
    expect(to[0]).toBeLessThan(from[0]);
    // Walked by the library's own measure: what lies before the notch is 5 long.
    const before = `M 0 0 L ${from[0]} ${from[1]} L 30 30 Z`;
    expect(run(EDGE_LENGTH, [before, 1], cm)).toBeCloseTo(Math.hypot(...from), 9);
  }
});

test("on an arc of radius 10, 10 along is one radian on", () => {
  const notched = readPiece(String(run(WITH_NOTCH, ["M 0 0 L 20 0 A 10 10 0 0 1 0 0 Z", 2, 10, 1], cm)));
  const { from, to } = notched.marks[0]!.line[0]!;
  expect(from).toEqual([expect.closeTo(10 + 10 * Math.cos(1), 9), expect.closeTo(10 * Math.sin(1), 9)]);
  expect(to).toEqual([expect.closeTo(10 + 9 * Math.cos(1), 9), expect.closeTo(9 * Math.sin(1), 9)]);
});

test("past the end of the edge it is refused", () => {
  expect(run(WITH_NOTCH, [armhole, 1, 13], cm)).toMatchObject({
    refusal: "at must be at most 12 cm, the length of edge 1, not 13 cm",
  });
});
