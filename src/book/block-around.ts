/** The block that a single chosen cell belongs to, where one is asked for. */
import type { Block, Place } from "./address.ts";
import { type Book, typedAt } from "./shape.ts";

/** The block of filled cells around a cell: it ends where a whole row or column beside it is blank. */
export function blockAround(book: Book, { page, row, column }: Place): Block {
  const block = { page, top: row, left: column, bottom: row, right: column };
  const filled = (r: number, c: number) => typedAt(book, page, r, c).trim() !== "";
  const anyIn = (top: number, left: number, bottom: number, right: number) => {
    for (let r = Math.max(top, 0); r <= bottom; r += 1)
      for (let c = Math.max(left, 0); c <= right; c += 1) if (filled(r, c)) return true;
    return false;
  };
  for (let grown = true; grown; ) {
    grown = false;
    const { top, left, bottom, right } = block;
    if (top > 0 && anyIn(top - 1, left - 1, top - 1, right + 1)) [block.top, grown] = [top - 1, true];
    if (anyIn(bottom + 1, left - 1, bottom + 1, right + 1)) [block.bottom, grown] = [bottom + 1, true];
    if (left > 0 && anyIn(top - 1, left - 1, bottom + 1, left - 1)) [block.left, grown] = [left - 1, true];
    if (anyIn(top - 1, right + 1, bottom + 1, right + 1)) [block.right, grown] = [right + 1, true];
  }
  return block;
}
