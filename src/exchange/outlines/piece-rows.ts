/** Pieces that were read, as the cells of a book. */

import { DEFAULT_MARK } from "../../../functions/fractions.ts";
import { phrase } from "../../../functions/phrase.ts";
import { type Piece, readPiece, writePiece } from "../../../functions/pieces/piece.ts";
import type { Unit } from "../../../functions/units.ts";
import { namesFromLabels } from "../../book/label-names.ts";
import { blockAddress } from "../../book/names.ts";
import { type Book, blankBook, type Column, LONGEST, type Page } from "../../book/shape.ts";
import { isFunction } from "../../engine/function-names.ts";

/** A piece that is put into a book, in the book's unit. */
export interface TakenPiece {
  readonly name: string;
  readonly piece: Piece;
  /** How the piece was read, in sentences for the maker. */
  readonly said: readonly string[];
}

/** The text of the cell that holds the piece. Throws an Error with a sentence when no cell can hold it. */
export function pieceCell({ name, piece }: TakenPiece): string {
  const text = writePiece(piece);
  if (text.length > LONGEST.typed)
    throw new Error(
      phrase`“${name}” has too many points for one cell: simplify its line in the program it was made with`,
    );
  try {
    readPiece(text);
  } catch (reason) {
    throw new Error(phrase`“${name}” can't be put into a cell: ${(reason as Error).message}`);
  }
  return text;
}

const column = (heading: string, kind: Column["kind"], width: number): Column => ({ heading, kind, width });

const COLUMNS: readonly Column[] = [
  column("Piece", "text", 200),
  column("Outline", "any", 160),
  column("Width", "any", 90),
  column("Length", "any", 90),
  column("Area", "any", 110),
  column("Note", "text", 420),
];

/** A Draft page that lists pieces: name, outline, width across the grain, length along it, area, and how it was read. */
const pageOfPieces = (title: string, pieces: readonly TakenPiece[]): Page => ({
  title,
  stage: "Draft",
  columns: COLUMNS,
  rows: pieces.map((one, i) => [
    one.name,
    pieceCell(one),
    `=PIECE_WIDTH(B${i + 1})`,
    `=PIECE_LENGTH(B${i + 1})`,
    `=PIECE_AREA(B${i + 1})`,
    one.said.join(" "),
  ]),
  notes: {},
});

/** A book with one such page, its outlines named after their pieces. Throws an Error with a sentence as `pieceCell` does. */
export function bookOfPieces(title: string, unit: Unit, pieces: readonly TakenPiece[]): Book {
  const book = { ...blankBook(title, unit, DEFAULT_MARK[unit]), pages: [pageOfPieces("Draft", pieces)] };
  const block = { page: 0, top: 0, left: 0, bottom: pieces.length - 1, right: 1 };
  const { names } = namesFromLabels(book, block, null, isFunction, "rows");
  return {
    ...book,
    names: Object.fromEntries(names.map((one) => [one.name, blockAddress(book, one.block)])),
  };
}
