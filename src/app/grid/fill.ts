/** Filling cells from those beside them. */
import type { Block } from "../../book/address.ts";
import type { Typing } from "../../book/edit.ts";
import type { Book } from "../../book/shape.ts";
import { copyOf } from "../../store/commands.ts";

/** What is typed when `source` is drawn out over `target`, which lies straight below, above, right or left of it. */
export function drawnOut(book: Book, source: Block, target: Block): Typing[] {
  const rows = source.bottom - source.top + 1;
  const columns = source.right - source.left + 1;
  const corner = (row: number, column: number) => ({ page: target.page, row, column });
  // Above and to the left, the part that does not fit whole is the end of the source, not its beginning.
  if (target.bottom < source.top) {
    const part = (target.bottom - target.top + 1) % rows;
    const whole = { ...target, top: target.top + part };
    return [
      ...(part
        ? copyOf(book, { ...source, top: source.bottom - part + 1 }, corner(target.top, target.left))
        : []),
      ...(whole.top <= whole.bottom ? copyOf(book, source, corner(whole.top, whole.left), whole) : []),
    ];
  }
  if (target.right < source.left) {
    const part = (target.right - target.left + 1) % columns;
    const whole = { ...target, left: target.left + part };
    return [
      ...(part
        ? copyOf(book, { ...source, left: source.right - part + 1 }, corner(target.top, target.left))
        : []),
      ...(whole.left <= whole.right ? copyOf(book, source, corner(whole.top, whole.left), whole) : []),
    ];
  }
  return copyOf(book, source, corner(target.top, target.left), target);
}

/**
 * Source and target of filling the chosen block down (or right): its first row is drawn over the others;
 * a single row is filled from the row above. Null where there is nothing to fill from.
 */
export function fillWithin(block: Block, direction: "down" | "right"): readonly [Block, Block] | null {
  if (direction === "down") {
    const single = block.top === block.bottom;
    if (single && block.top === 0) return null;
    const from = single ? block.top - 1 : block.top;
    return [
      { ...block, top: from, bottom: from },
      { ...block, top: from + 1 },
    ];
  }
  const single = block.left === block.right;
  if (single && block.left === 0) return null;
  const from = single ? block.left - 1 : block.left;
  return [
    { ...block, left: from, right: from },
    { ...block, left: from + 1 },
  ];
}
