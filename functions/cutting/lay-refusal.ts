/** Where a refusal to lay pieces leads: to the piece that is wider than the cloth, or to the width of the cloth. */
import { boundingBox, type Point } from "../geometry/strokes.ts";
import type { LayCloth, LayPiece, LayQuestion } from "../lay.ts";
import { type CellOfList, Refusal } from "../refusal.ts";
import type { CutRow } from "./cut-list.ts";

/** How wide a piece lies across the cloth at least, of the turns that it may have. */
function leastWidth({ outline, turns }: LayPiece): number {
  const widths = turns.map((turn) => {
    const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
    const { low, high } = boundingBox(outline.map(([x, y]): Point => [cos * x - sin * y, sin * x + cos * y]));
    return high - low;
  });
  return Math.min(...widths);
}

/** The rows that no turn brings inside the width of any of these cloths. */
function tooWide(
  rows: readonly CutRow[],
  pieces: readonly LayPiece[],
  cloths: readonly LayCloth[],
): CutRow[] {
  const widest = Math.max(...cloths.map(({ width }) => width));
  const names = new Set(
    pieces.filter((piece) => leastWidth(piece) > widest * (1 + 1e-9)).map(({ name }) => name),
  );
  return rows.filter(({ name }) => names.has(name));
}

/**
 * The refusal of a planner, with the cell that it is about: the first piece that is too wide; where every piece of
 * several is, the width of the cloth, which stands in `width` when it is one argument.
 */
export function layRefusal(
  refusal: string,
  question: Pick<LayQuestion, "pieces" | "cloths">,
  rows: readonly CutRow[],
  width?: string,
): Refusal {
  const wide = tooWide(rows, question.pieces, question.cloths);
  const [first] = wide;
  if (!first) return new Refusal(refusal);
  const isCloth = width !== undefined && rows.length > 1 && wide.length === rows.length;
  const at: CellOfList = isCloth ? { argument: width, cell: 0 } : pieceCell(first);
  return new Refusal(refusal, at);
}

/** The cell of a row that holds its outline. */
export const pieceCell = ({ at }: Pick<CutRow, "at">): CellOfList => ({ argument: "pieces", cell: at ?? 0 });
