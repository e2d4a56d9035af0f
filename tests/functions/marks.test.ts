import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Cell } from "../../functions/define.ts";
import { mirrorPiece, readPiece, turnPiece, writePiece } from "../../functions/pieces/piece.ts";
import { run } from "../../functions/run.ts";

/** The roles of the marks on the piece that a function returns, in order. */
function roles(name: string, ...args: readonly (Cell | readonly Cell[])[]): string[] {
  return readPiece(String(run(catalogue.get(name)!, args, { unit: "in" }))).marks.map(({ role }) => role);
}
const text = (name: string, ...args: readonly (Cell | readonly Cell[])[]): string =>
  String(run(catalogue.get(name)!, args, { unit: "in" }));

const apron = "M 0 0 L 20 0 L 20 30 L 0 30 Z M 10 0 L 10 30 | fold";

test("the roles of a piece's marks are written behind its path and read again", () => {
  const piece = readPiece(
    "M 0 0 L 9 0 L 9 9 L 0 9 Z M 3 0 L 3 9 M 4 0 L 4 9 M 5 0 L 5 9 | fold inner placement",
  );
  expect(piece.marks.map(({ role }) => role)).toEqual(["fold", "inner", "placement"]);
  expect(readPiece(writePiece(piece))).toEqual(piece);
});

test("a text from before marks had roles is read with placement lines and written as it was", () => {
  const old = "M 0 0 L 9 0 L 9 9 L 0 9 Z M 3 0 L 3 9";
  expect(readPiece(old).marks.map(({ role }) => role)).toEqual(["placement"]);
  expect(writePiece(readPiece(old))).not.toContain("|");
});

test("a word that is no role is refused by name", () => {
  expect(() => readPiece("M 0 0 L 9 0 L 9 9 Z M 3 0 L 3 3 | crease")).toThrow(
    /"crease" is not a role of a mark/,
  );
});

test("turned, mirrored and moved marks keep their roles", () => {
  const piece = readPiece(apron);
  for (const changed of [turnPiece(piece, 37), mirrorPiece(piece)])
    expect(changed.marks.map(({ role }) => role)).toEqual(["fold"]);
});

test("allowances, darts, notches, joins and cuts each mark in their own role and keep the others", () => {
  expect(roles("WITH_ALLOWANCE", apron, 0.5)).toEqual(["fold", "seam", "seam", "seam", "seam"]);
  expect(roles("TURN", text("WITH_ALLOWANCE", apron, 0.5), 45)).toEqual([
    "fold",
    "seam",
    "seam",
    "seam",
    "seam",
  ]);
  expect(roles("MIRROR", text("WITH_DART", apron, 1, 5, 2, 6))).toEqual(["fold", "dart", "dart", "fold"]);
  expect(roles("WITH_NOTCH", apron, 2, 8)).toEqual(["fold", "notch"]);
  expect(roles("JOIN", apron, 2, "M 0 0 L 6 0 L 6 30 L 0 30 Z M 3 0 L 3 30 | grain", 4)).toEqual([
    "fold",
    "grain",
    "guide",
  ]);
  expect(roles("WITH_ALLOWANCE", text("PLEATED_PANEL", 24, 24, 10, [6, 12], [1]), 0.5)).toEqual([
    ...["fold", "inner", "placement", "fold", "inner", "placement"],
    ...["seam", "seam", "seam", "seam"],
  ]);
});
