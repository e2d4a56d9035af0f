import { expect, test } from "vitest";
import { SEAM_VERDICT } from "../../../functions/fitting/SEAM_VERDICT.ts";
import { isRefused, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { setting } from "../laws.ts";
import { blockOf, piecesOf, seamsOf } from "./seam-lists.ts";

const strip = (length: number) => `M 0 0 L ${length} 0 L ${length} 4 L 0 4 Z | edges top, end, foot, start`;
const ask = (seams: unknown, pieces: unknown, ...more: (string | null)[]) => {
  const answer = run(SEAM_VERDICT, [seams, pieces, ...more] as never, setting("in"));
  return isRefused(answer) ? `refused: ${answer.refusal}` : answer;
};

// Kinne and Cooley, Clothing and Health (1916), part II, lessons 12 and 13: a ruffle is cut half as long again as its edge.
test("a ruffle of 3 3/4 yards, cut in three strips, goes round a hem of 2 1/2 yards with a fullness of 1 1/2", () => {
  const pieces = piecesOf(["ruffle", strip(45), 3], ["skirt", strip(45), 2]);
  const row = ["ruffle", "top", "skirt", "foot", "gathered", null];
  expect(ask(seamsOf([...row, 1.5]), pieces, "ruffle", "top")).toBe("ok");
  expect(ask(seamsOf([...row, 2]), pieces, "ruffle", "top")).toBe(
    "check: the ruffle's top (3 times) is 135 in and the skirt's foot (2 times) 90 in, the first 45 in longer; the first should be 90 in longer",
  );
  expect(ask(seamsOf(row), pieces, "skirt", "foot")).toBe("ok");
});

test("side seams are compared one to one, and a waist of two fronts and a back on the fold with the whole band", () => {
  const half = (waist: number, side: number) =>
    `M 0 0 L 9 0 L ${waist} ${side} L 0 ${side} Z | edges top, side, waist, centre`;
  const pieces = piecesOf(
    ["front", half(9, 15), 2],
    ["back", half(9, 15.5), 1, "yes"],
    ["band", "M 0 0 L 35 0 L 35 2 L 0 2 Z | edges upper, end, lower, start"],
  );
  const seams = seamsOf(
    ["front", "side", "back", "side"],
    ["band", "lower", "front + back + front", "waist"],
  );
  expect(ask(seams, pieces, "front", "side")).toBe(
    "check: at each of 2 such seams the front's side is 15 in and the back's side 15 1/2 in, the first 1/2 in shorter; they should be equally long",
  );
  expect(ask(seams, pieces, "band", "lower")).toBe(
    "check: the band's lower is 35 in and the front's waist (2 times) and the back's waist 36 in, the first 1 in shorter; they should be equally long",
  );
});

test("of a band sewn to fronts and back in two rows the verdict says how to write them in one", () => {
  const pieces = piecesOf(["front", strip(9), 2], ["back", strip(18)], ["band", strip(36)]);
  const seams = seamsOf(["band", "foot", "front", "top"], ["band", "foot", "back", "top"]);
  expect(ask(seams, pieces, "band", "foot", "back", "top")).toMatch(
    /^check: .*band foot stands in 2 rows: where it is sewn to front top and back top one after the other, write them in one row, joined by \+$/,
  );
});

test("a bias edge sewn to a straight one is answered with a caution", () => {
  const bias = "M 0 0 L 10 10 L 0 20 Z | edges slope, lower, centre";
  const pieces = piecesOf(
    ["bias", bias],
    ["straight", "M 0 0 L 9 0 L 9 14.14 L 0 14.14 Z | edges top, side, foot, centre"],
  );
  const said = (...how: (string | null)[]) => {
    const seams = seamsOf(["bias", "slope", "straight", "side", ...how]);
    const args = [seams, pieces, "bias", "slope"] as never;
    expect(run(SEAM_VERDICT, args, setting("in"))).toBe("ok");
    return toLookAt(SEAM_VERDICT, args, setting("in")).join();
  };
  expect(said()).toMatch(
    /the bias's slope lies near the bias \(45 degrees to the grain\) and the straight's side does not/,
  );
  // The slope is 14.142 in long, the side 14.14 in: as the fuller edge it is eased in, which a stay would hinder.
  expect(said("eased")).not.toMatch(/stay it/);
});

test.each([
  ["a misspelt piece", [["skirt", "top", "bodise", "foot"]], "skirt", 'row 1 of the list of seams names the piece "bodise", and the list of pieces has none of that name; is "bodice" meant?'],
  ["a misspelt edge", [["skirt", "tip", "bodice", "foot"]], "skirt", /edge "tip" of the skirt in row 1 of the list of seams must be the name of an edge .* is "top" meant\?/],
  ["a seam that is not there", [["skirt", "top", "bodice", "foot"]], "skirtt", 'no row of the list of seams names "skirtt top"; is "skirt top" meant?'],
  ["a row half filled in", [["skirt", "top", "bodice", null]], "skirt", 'row 1 of the list of seams has nothing in its column "its edge": fill it in, or clear the row'],
  ["an edge sewn to itself", [["skirt", "top", "skirt", "top"]], "skirt", /sews the skirt's top to itself, and the garment has one such edge/],
  ["a plain seam with a difference", [["skirt", "top", "bodice", "foot", "plain", 2]], "skirt", /is plain, but its wanted difference or fullness asks for edges of different lengths/],
  ["how in another word", [["skirt", "top", "bodice", "foot", "gatherd"]], "skirt", /how in row 1 of the list of seams must be .*; is "gathered" meant\?/],
] as const)("%s is refused in a sentence", (_, rows, piece, sentence) => {
  const edge = rows[0]![1];
  const answer = ask(seamsOf(...rows), piecesOf(["skirt", strip(20)], ["bodice", strip(20)]), piece, edge === "tip" ? "tip" : "top");
  expect(String(answer).replace("refused: ", "")).toMatch(sentence);
  expect(answer).toMatch(/^refused/);
}); // biome-ignore format: a table

test("a seam twice, and seams that go round in a circle, are said at the rows concerned and at no other", () => {
  const pieces = piecesOf(...["a", "b", "c", "d"].map((name) => [name, strip(20)] as const));
  const twice = seamsOf(["a", "top", "b", "foot"], ["b", "foot", "a", "top"], ["c", "top", "d", "foot"]);
  expect(ask(twice, pieces, "a", "top", "b", "foot")).toBe(
    "check: rows 1 and 2 of the list of seams are the same seam, a top to b foot: delete one",
  );
  expect(ask(twice, pieces, "c", "top")).toBe("ok");
  const round = seamsOf(
    ["a", "top", "b", "top"],
    ["b", "top", "c", "top"],
    ["c", "top", "a", "top"],
    ["d", "top", "a", "foot"],
  );
  // One circle is one sentence, at whichever of its rows it is found.
  for (const [from, to] of ["ab", "bc", "ca"].map((two) => [...two] as [string, string]))
    expect(ask(round, pieces, from, "top", to, "top")).toBe(
      "check: rows 1, 2, 3 of the list of seams go round in a circle, a top to c top to b top and back: one of these seams is too many",
    );
  expect(ask(round, pieces, "d", "top")).toBe("ok");
});

test("a centre back seam sews an edge to that of its twin, and an outline with its allowances on is refused", () => {
  const seams = seamsOf(["back", "end", "back", "end"]);
  expect(ask(seams, piecesOf(["back", strip(20), 2]), "back", "end")).toBe("ok");
  const cut = `${strip(20).replace("Z", "Z M 1 1 L 19 1").replace("| edges", "| seam | edges")}`;
  expect(ask(seams, piecesOf(["back", cut, 2]), "back", "end")).toMatch(
    /"back" in the list of pieces has its allowances on/,
  );
});

test("a sentence about a row of the list points at its cell", () => {
  const seams = seamsOf(["skirt", "top", "skirt", "foot"], ["skirt", "end", "bodise", "foot"]);
  const args = [seams, piecesOf(["skirt", strip(20), 2], ["bodice", strip(20)]), "skirt", "end"];
  expect(run(SEAM_VERDICT, args, setting("in"))).toMatchObject({ at: { position: 0, cell: 7 + 2 } });
});

test("a list without its headings, and a list of one column, are refused", () => {
  const pieces = piecesOf(["skirt", strip(20)]);
  expect(ask(["skirt", "top"], pieces, "skirt", "top")).toMatch(
    /seams must be a block of two columns or more/,
  );
  expect(ask(pieces, pieces, "skirt", "top")).toMatch(/the list of seams has no column "edge"/);
});

test("a piece without a number counts as one, and each seam that needs the number says so", () => {
  const pieces = piecesOf(["front", strip(9)], ["back", strip(9), 1]);
  const args = [seamsOf(["front", "top", "back", "foot"]), pieces, "front", "top"] as never;
  expect(run(SEAM_VERDICT, args, setting("in"))).toBe("ok");
  expect(toLookAt(SEAM_VERDICT, args, setting("in"))).toEqual([
    "SEAM_VERDICT: the list of pieces does not say how many of front the garment has, and 1 is taken: type how many",
  ]);
  // A list without such a column has one of each piece.
  const bare = blockOf(
    ["Piece", "Outline"],
    [
      ["front", strip(9)],
      ["back", strip(9)],
    ],
  );
  expect(toLookAt(SEAM_VERDICT, [args[0], bare, "front", "top"] as never, setting("in"))).toEqual([]);
});
