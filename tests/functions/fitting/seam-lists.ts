import { asBlock } from "../../../functions/block.ts";
import type { Block, Cell } from "../../../functions/define.ts";

/** A list of seams: piece, edge, sewn to, its edge, how, wanted difference, fullness. */
export const seamsOf = (...rows: readonly (readonly Cell[])[]): Block =>
  blockOf(["Piece", "Edge", "Sewn to", "Its edge", "How", "Wanted difference", "Fullness"], rows);

/** A list of pieces: piece, outline, how many, on the fold. */
export const piecesOf = (...rows: readonly (readonly Cell[])[]): Block =>
  blockOf(["Piece", "Outline", "How many", "On the fold"], rows);

export const blockOf = (headings: readonly string[], rows: readonly (readonly Cell[])[]): Block =>
  asBlock(
    rows.flatMap((row) => headings.map((_, i) => row[i] ?? null)),
    headings.length,
    headings,
  );
