import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { pieceArea } from "../../../functions/pieces/piece.ts";
import { readBook } from "../../../src/book/read.ts";
import { drawnAt } from "../../../src/engine/drawn.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { piecesOf } from "../../../src/engine/pieces.ts";
import { trueScaleSheet } from "../../../src/engine/true-scale-sheet.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

/** The outlines that are drawn on the paper of each piece of a book, by the areas that they have. */
function outlinesOnPaper(cells: Readonly<Record<string, string>>): Record<string, number[]> {
  const { found } = piecesOf(new Engine(bookOf(cells), layDesk));
  return Object.fromEntries(
    found.map(({ title, shapes }) => [
      title,
      shapes.flatMap((shape) => (shape.kind === "outline" ? [Math.round(pieceArea(shape.piece))] : [])),
    ]),
  );
}

test("paper has the piece of the cell alone: not the whole that it is cut from, nor one that the formula only measures", () => {
  const cells = {
    skirt: "=RECTANGLE(20;40)",
    yoke: '=SPLIT(skirt;"right side";10;"left side";30;2)',
    facing: '=FACING(skirt;"bottom";2)',
    chosen: '=IF(EDGE_LENGTH(skirt;"top")>10;yoke;skirt)',
    turned: "=TURN(yoke;90)",
  };
  expect(outlinesOnPaper(cells)).toEqual({
    skirt: [800],
    yoke: [200],
    facing: [40],
    chosen: [200],
    turned: [200],
  });
});

test("a sheet speaks of a seam line only where allowances were added", () => {
  const book = bookOf({
    half: "=RECTANGLE(10;20)",
    whole: '=JOIN(half;"right side";half;"left side")',
    cut: "=WITH_ALLOWANCE(whole;1)",
  });
  const engine = new Engine(book, layDesk);
  const says = piecesOf(engine).found.map((one) => [
    one.title,
    trueScaleSheet(engine.book, one).svg.includes("the seam line is within it"),
  ]);
  expect(says).toEqual([["half", false], ["whole", false], ["cut", true]]); // biome-ignore format: a table
});

test("every piece of a template is drawn as the function that makes it draws it", () => {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  const { found } = piecesOf(engine);
  expect(found.length).toBeGreaterThan(3);
  for (const { place, address } of found) expect(drawnAt(engine, place)!.isOfValue, address).toBe(true);
});
