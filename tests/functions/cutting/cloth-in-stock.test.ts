import { expect, test } from "vitest";
import { clothsInStock } from "../../../functions/cutting/cloth-in-stock.ts";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";

const cm = (figure: number) => figure / 2.54;
const hand = (
  widths: (number | null)[],
  lengths: (number | null)[],
  shapes: (string | null)[] | null = null,
) =>
  clothsInStock(
    { widths, lengths, shapes: shapes?.map((path) => (path === null ? null : readPiece(path))) ?? null },
    cm,
  );

test("measured pieces of cloth are rectangles; a row that is blank is no cloth", () => {
  expect(hand([54, null, 30], [45, null, 60])).toEqual([
    { name: "cloth 1", width: 54, length: 45 },
    { name: "cloth 3", width: 30, length: 60 },
  ]);
});

test("a drawn cloth lies with its grain along the selvedge, its holes in it, as large as drawn", () => {
  const [cloth] = hand([null], [null], ["M 0 0 H 40 V 60 H 10 L 0 50 Z M 5 5 H 9 V 12 H 5 V 5"]);
  expect(cloth).toMatchObject({ width: 40, length: 60 });
  expect(Math.abs(signedArea(cloth!.outline!))).toBeCloseTo(40 * 60 - 50, 9);
  expect(cloth!.flaws!.map((flaw) => Math.abs(signedArea(flaw)))).toEqual([expect.closeTo(28, 9)]);
  // Four down the draft and five across it: along the selvedge from 5 to 12, across from 31 to 35.
  const [xs, ys] = [0, 1].map((i) => cloth!.flaws![0]!.map((point) => point[i]!));
  expect([Math.min(...xs!), Math.max(...xs!), Math.min(...ys!), Math.max(...ys!)]).toEqual([5, 12, 31, 35]);
});

test("a hole closed by Z alone keeps its first corner; a chalk line is no hole", () => {
  const [cloth] = hand([null], [null], ["M 0 0 H 46 V 70 H 0 Z M 30 6 L 42 6 L 36 22 Z M 3 3 L 20 40"]);
  // Half of 12 × 16.
  expect(cloth!.flaws!.map((flaw) => Math.abs(signedArea(flaw)))).toEqual([expect.closeTo(96, 9)]);
});

test("a tape that differs from the drawing is told", () => {
  expect(() => hand([45], [null], ["M 0 0 H 40 V 60 H 0 Z"])).toThrow(
    "widths, number 1, is 45, but its shape measures 40: leave it empty, or correct the shape",
  );
  expect(hand([40.1], [60], ["M 0 0 H 40 V 60 H 0 Z"])).toHaveLength(1);
});

test("a cloth of which only one side was measured is asked for, and so is any cloth at all", () => {
  expect(() => hand([54], [null])).toThrow("lengths, number 1, is empty: measure that piece of cloth");
  expect(() => hand([null], [null])).toThrow(
    "widths is empty: give the width and length of at least one cloth",
  );
});
