import { expect, test } from "vitest";
import { WITH_MARKS } from "../../../functions/curves/WITH_MARKS.ts";
import { WITH_NOTCH } from "../../../functions/curves/WITH_NOTCH.ts";
import { OPEN_PLEATS } from "../../../functions/pleats/OPEN_PLEATS.ts";
import { calls } from "../calls.ts";

const inches = calls(WITH_MARKS, "in");
const PIECE = "M 0 0 L 10 0 L 10 20 L 0 20 Z | edges neck, centre front, waist, side";
const ends = (piece: ReturnType<typeof inches.piece>) =>
  piece.marks.map(({ line, role }) => [role, line[0]!.from, line.at(-1)!.to]);

// Independent: WITH_NOTCH puts one notch at a time.
test("notches of a list are those that WITH_NOTCH puts one by one", () => {
  const one = calls(WITH_NOTCH, "in");
  const twice = one.answer(one.answer(PIECE, "centre front", 1, 0.375), "centre front", 3.5, 0.375);
  expect(inches.answer(PIECE, "centre front", "1; 3 1/2 in")).toBe(twice);
  expect(inches.answer(PIECE, "centre front", [1, null, 3.5])).toBe(twice);
});

test("buttons are crosses within the edge, buttonholes lines, and both may be measured from the other end", () => {
  expect(ends(inches.piece(PIECE, "centre front", "2 in", "cross", 1, 0.5))).toEqual([
    ["placement", [9.25, 2], [8.75, 2]],
    ["placement", [9, 1.75], [9, 2.25]],
  ]);
  expect(ends(inches.piece(PIECE, "centre front", "2 in", "line", 0.5, 1, "end"))).toEqual([
    ["placement", [9.5, 18], [8.5, 18]],
  ]);
});

test("a place beyond the edge is refused", () => {
  expect(inches.refusal(PIECE, "centre front", "2; 21 in")).toBe(
    "marks must lie on the centre front, from 0 to 20 in, not at 21 in",
  );
});

test("crosses and lines that would lie outside the piece are refused", () => {
  expect(inches.refusal(PIECE, "centre front", "2 in", "cross", 11)).toBe(
    "inset must leave the cross at 2 in within the piece, not 11 in",
  );
  expect(inches.refusal(PIECE, "centre front", "2 in", "line", 4, 7)).toBe(
    "inset and size must leave the line at 2 in within the piece: it ends 11 in from the centre front",
  );
  expect(ends(inches.piece(PIECE, "centre front", "2 in", "line", 4, 6))).toHaveLength(1);
});

test("a piece is pleated at a list of places as at cells", () => {
  const pleats = calls(OPEN_PLEATS, "in");
  const piece = "M 0 0 L 24 0 L 24 10 L 0 10 Z";
  expect(pleats.answer(piece, "6; 12; 18 in", [1])).toBe(pleats.answer(piece, [6, 12, null, 18], [1]));
});
