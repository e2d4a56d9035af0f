import { expect, test } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { exampleFormula } from "../../../../functions/help.ts";
import {
  edgeLength,
  movePiece,
  type Piece,
  pieceArea,
  pieceBounds,
  writePiece,
} from "../../../../functions/pieces/piece.ts";
import type { Unit } from "../../../../functions/units.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { piecesOf } from "../../../../src/engine/pieces.ts";
import { trueScaleSheet } from "../../../../src/engine/true-scale-sheet.ts";
import { factorOfFile, sized } from "../../../../src/exchange/outlines/scale.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { foundIn } from "./drawings.ts";

/** A book in the unit with one cell for each example of a function that gives a piece. */
function bookOfExamples(unit: Unit) {
  const formulas = [...catalogue.values()]
    .filter(({ returns }) => returns === "piece")
    .flatMap((one) =>
      one.examples
        .filter((example) => (example.unit ?? "in") === unit)
        .map((example) => exampleFormula(one, example)),
    );
  const book = blankBook("Examples", unit, unit === "in" ? "1/8" : "1 mm");
  const page = { ...book.pages[1]!, rows: formulas.map((formula, i) => [`example ${i + 1}`, formula]) };
  return { book: { ...book, pages: [page] }, formulas };
}

/** Every figure of a piece's text, from the upper left corner of its box. */
const figures = (piece: Piece): number[] =>
  [...writePiece(piece).matchAll(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)].map(Number);

for (const unit of ["in", "cm"] as const)
  test(`what draft writes for every example of a piece, measured in ${unit}, is read back as the same piece`, () => {
    const { book, formulas } = bookOfExamples(unit);
    const { found } = piecesOf(new Engine(book, layDesk));
    expect(found.length).toBeGreaterThan(unit === "in" ? 30 : 0);
    expect(formulas.length).toBeGreaterThanOrEqual(found.length);
    for (const one of found) {
      const { svg } = trueScaleSheet(book, one);
      const read = foundIn(svg);
      expect(
        read.pieces.map(({ name }) => name),
        svg,
      ).toEqual([one.title]);
      const back = sized(read.pieces[0]!.piece, factorOfFile(read, unit)!);
      const box = pieceBounds(one.piece);
      const [before, after] = [figures(movePiece(one.piece, -box.left, -box.low)), figures(back)];
      expect(after.length, one.title).toBe(before.length);
      before.forEach((figure, i) => {
        expect(Math.abs(after[i]! - figure), `${one.title}, figure ${i}`).toBeLessThan(1e-6);
      });
      expect(back.names).toEqual(one.piece.names);
      expect(back.marks.map(({ role }) => role)).toEqual(one.piece.marks.map(({ role }) => role));

      // The outline alone, as another program would leave it: without the text that Ellwand put beside it.
      const bare = foundIn(svg.replace(/ data-ellwand-piece="[^"]*"/, ""));
      const outline = sized(bare.pieces[0]!.piece, factorOfFile(bare, unit)!);
      expect(pieceArea(outline), one.title).toBeCloseTo(pieceArea(one.piece), 3);
      const round = (piece: Piece) => piece.edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
      expect(round(outline), one.title).toBeCloseTo(round(one.piece), 5);
    }
  });
