import { expect, test } from "vitest";
import { MATCH_MARK } from "../../../functions/curves/MATCH_MARK.ts";
import { SEAM_NOTCHES } from "../../../functions/fitting/SEAM_NOTCHES.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { isRefused, run } from "../../../functions/run.ts";
import { setting } from "../laws.ts";
import { blockOf, piecesOf } from "./seam-lists.ts";

const HEADS = [
  "Piece",
  "Edge",
  "Sewn to",
  "Its edge",
  "How",
  "Eased from",
  "Eased to",
  "Notches at",
  "Ends",
  "Notch",
];
const strip = (length: number) => `M 0 0 L ${length} 0 L ${length} 6 L 0 6 Z | edges top, end, foot, start`;

/** Where the notches of a piece begin. */
function notches(seams: ReturnType<typeof blockOf>, pieces: ReturnType<typeof blockOf>, piece: string) {
  const answer = run(SEAM_NOTCHES, [seams, pieces, piece, 0.5], setting("in"));
  if (isRefused(answer)) return answer.refusal;
  const marks = readPiece(String(answer)).marks.filter(({ role }) => role === "notch");
  return marks.map(({ line }) => line[0]!.from.map((figure) => Number(figure.toFixed(6))));
}

// Derivation: of 1 in of ease between 4 and 12 in, nothing lies before 3 in, 5/8 before 9 in, all before 14 in. MATCH_MARK says the same.
test("notches of an eased seam stand where MATCH_MARK puts them, from the end at which both edges begin", () => {
  const pieces = piecesOf(["sleeve", strip(18)], ["bodice", strip(17)]);
  const row = ["sleeve", "top", "bodice", "top", "eased", 4, 12, "3; 9; 14 in", "same"];
  const meet = [3, 9, 14].map((at) => run(MATCH_MARK, [at, 18, 17, 4, 12], setting("in")) as number);
  expect(meet).toEqual([3, 8.375, 13]);
  expect(notches(blockOf(HEADS, [row]), pieces, "sleeve")).toEqual([[3, 0], [9, 0], [14, 0]]); // biome-ignore format: points
  const there = notches(blockOf(HEADS, [row]), pieces, "bodice");
  expect(there).toEqual(meet.map((at) => [Number(at.toFixed(6)), 0]));
  const turned = notches(blockOf(HEADS, [row.with(8, "opposite")]), pieces, "bodice");
  expect(turned).toEqual(meet.map((at) => [Number((17 - at).toFixed(6)), 0]));
  const unlike = piecesOf(
    ["sleeve", strip(18)],
    ["bodice", strip(17).replace("end", "left").replace("start", "right")],
  );
  expect(notches(blockOf(HEADS, [row.with(8, "")]), unlike, "sleeve")).toMatch(
    /write same in its column "ends" where both begin at the same end/,
  );
});

test("without an order, edges that run down the body meet at their upper ends, and neighbours of one name decide before that", () => {
  const down = "M 0 0 L 6 0 L 6 10 L 0 10 Z | edges top, side, hem, centre";
  const pieces = piecesOf(
    ["front", down, 2],
    ["back", down.replace("side", "x").replace("centre", "side"), 2],
  );
  const row = ["front", "side", "back", "side", null, null, null, "3 in"];
  // The back's side is its fourth edge, drawn upwards from the hem.
  expect(notches(blockOf(HEADS, [row]), pieces, "front")).toEqual([[6, 3]]);
  expect(notches(blockOf(HEADS, [row]), pieces, "back")).toEqual([[0, 3]]);
});

test("a band is notched at the joins and the middles of what it is sewn to, the middle of the back double", () => {
  const pieces = piecesOf(["front", strip(8), 2], ["back", strip(14)], ["band", strip(30)]);
  const seams = blockOf(HEADS, [["front + back + front", "foot", "band", "top", null, null, null, null]]);
  expect(notches(seams, pieces, "band")).toEqual([4, 8, 14.5, 15.5, 22, 26].map((at) => [at, 0]));
  expect(notches(seams, pieces, "back")).toEqual([[7.5, 6], [6.5, 6]]); // biome-ignore format: points
  expect(notches(seams, pieces, "front")).toEqual([[4, 6]]);
  const unsorted = blockOf(HEADS, [["front + back", "foot", "band", "top"]]);
  expect(notches(unsorted, pieces, "band")).toMatch(/in which order its edges follow one another/);
  expect(
    notches(
      blockOf(HEADS, [["front + back", "foot", "band", "top", null, null, null, null, null, "none"]]),
      pieces,
      "band",
    ),
  ).toEqual([]);
});

test("half a piece on the fold is notched once for both halves, a whole edge it is sewn to twice", () => {
  const pieces = piecesOf(
    ["back", "M 0 0 L 7 0 L 7 9 L 0 9 Z | edges neck, side, waist, centre", 1, "yes"],
    ["peplum", strip(14)],
  );
  const seams = blockOf(HEADS, [["back", "waist", "peplum", "top", null, null, null, "2 in"]]);
  // Drawn from the side towards the fold: 2 in from the side.
  expect(notches(seams, pieces, "back")).toEqual([[5, 9]]);
  expect(notches(seams, pieces, "peplum")).toEqual([[2, 0], [12, 0]]); // biome-ignore format: points
});

test("a place without its unit, or beyond the edge, is refused", () => {
  const pieces = piecesOf(["sleeve", strip(18)], ["bodice", strip(17)]);
  const ask = (places: string) =>
    notches(
      blockOf(HEADS, [["sleeve", "top", "bodice", "top", "eased", null, null, places, "same"]]),
      pieces,
      "sleeve",
    );
  expect(ask("3; 9")).toMatch(/places with their unit behind the last, such as "1; 3; 6 in", not "3; 9"/);
  expect(ask("19 in")).toBe(
    "row 1 of the list of seams has a notch at 19 in: it must lie on the sleeve's top, from 0 to 18 in",
  );
  expect(ask("10 cm")).toEqual([[Number((10 / 2.54).toFixed(6)), 0]]);
});

// By hand: 8 in of front and 3 in of side front; the band is drawn to the left, from 11 in to 0.
test("of edges in succession that differ from both ends, the list says at which end of the band the first lies", () => {
  const band = "M 0 0 L 11 0 L 11 2 L 0 2 Z | edges top, end, lower, start";
  const pieces = piecesOf(["front", strip(8)], ["side front", strip(3)], ["band", band]);
  const ask = (ends: string) =>
    notches(
      blockOf(HEADS, [
        ["front + side front", "top", "band", "lower", null, null, null, null, ends, "single"],
      ]),
      pieces,
      "band",
    );
  expect(ask("same")).toEqual([7, 3, 1.5].map((x) => [x, 2]));
  expect(ask("opposite")).toEqual([4, 8, 9.5].map((x) => [x, 2]));
  expect(ask("")).toMatch(
    /does not say from which end of the band's lower .*: write same in its column "ends" where the front's top lies at the beginning/,
  );
});

test("a skirt on the fold is notched only for edges that are the same on both of its halves", () => {
  const half = (width: number) => `M 0 0 L ${width} 0 L ${width} 9 L 0 9 Z | edges neck, side, waist, centre`;
  const pieces = piecesOf(
    ["front", half(7), 1, "yes"],
    ["back", half(6), 1, "yes"],
    ["skirt", half(13), 1, "yes"],
  );
  const row = ["front + back", "waist", "skirt", "waist", null, null, null, null, "same"];
  expect(notches(blockOf(HEADS, [row]), pieces, "skirt")).toMatch(
    /the skirt's waist, which lies on the fold, and they are not the same from both ends/,
  );
});

// By hand: a set-in sleeve's cap runs from the back seam to the front seam, so 9 in of back lie first, then 8 in of front.
test("an armhole of front and back is notched on the cap from the seam that is called so", () => {
  const cap = "M 0 0 L 17 0 L 17 9 L 0 9 Z | edges cap, front seam, wrist, back seam";
  const pieces = piecesOf(["front", strip(8), 2], ["back", strip(9), 2], ["sleeve", cap, 2]);
  const row = ["sleeve", "cap", "front + back", "top", "eased", null, null, null, null, "single"];
  expect(notches(blockOf(HEADS, [row]), pieces, "sleeve")).toEqual([13, 9, 4.5].map((at) => [at, 0]));
});

// By hand: 1 in of ease lies from 0 to 4 in of the cap, at the back seam, so every notch beyond 4 in stands 1 in farther than along the armhole.
test("ease at one end of a cap stays at that end when the armhole is written from the other", () => {
  const cap = "M 0 0 L 18 0 L 18 9 L 0 9 Z | edges cap, front seam, wrist, back seam";
  const pieces = piecesOf(["front", strip(8), 2], ["back", strip(9), 2], ["sleeve", cap, 2]);
  const ask = (...armhole: unknown[]) =>
    notches(
      blockOf(HEADS, [["sleeve", "cap", ...armhole, "eased", 0, 4, null, null, "single"]] as never),
      pieces,
      "sleeve",
    );
  expect(ask("front + back", "top")).toEqual([14, 10, 5.5].map((at) => [at, 0]));
  expect(ask("back + front", "top")).toEqual([5.5, 10, 14].map((at) => [at, 0]));
});
