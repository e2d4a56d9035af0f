import SvgPath from "svgpath";
import { expect, test } from "vitest";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { scalePath } from "../../../src/engine/rescale.ts";

test("a piece in another unit keeps its letters, flags, turns, roles and names", () => {
  expect(
    scalePath("M0,0h10L10 5 8 9a5 4 30 01-3-4V2z m1 1 l 2 2 |fold| edges waist, side, hem, back", 2.54),
  ).toBe(
    "M 0 0 h 25.4 L 25.4 12.7 20.32 22.86 a 12.7 10.16 30 0 1 -7.62 -10.16 V 5.08 z m 2.54 2.54 l 5.08 5.08 | fold | edges waist, side, hem, back",
  );
});

test("every edge stays one edge, where a general-purpose library would run all straight edges into one", () => {
  const text = "M 0 0 L 4 0 6 2 L 6 9 L 0 9 Z";
  expect(readPiece(text).edges).toHaveLength(4);
  expect(readPiece(scalePath(text, 2.54)!).edges).toHaveLength(4);
  // svgpath reads "L 1 2 3 4" as two commands, and writes lines behind one another with a single letter.
  expect(readPiece(SvgPath(text).scale(2.54).toString()).edges).toHaveLength(2);
});

test("what is no path data is not scaled", () => {
  for (const text of ["", "M", "M 4", "mother", "M 0 0 L 4 0 Z Z", "M 1 1 | 2 2 X 3", "12"]) {
    if (text.includes("|")) expect(scalePath(text, 2)).toBe("M 2 2 | 2 2 X 3");
    else expect(scalePath(text, 2), text).toBeNull();
  }
});
