/** Where a refusal to lay pieces leads: to the piece that is wider than the cloth, or to the width of the cloth. */
import type { LayCloth } from "../lay.ts";
import { pieceBounds, turnPiece } from "../pieces/piece.ts";
import { type CellOfList, Refusal } from "../refusal.ts";
import { type CutRow, unfoldedPiece } from "./cut-list.ts";
import { GRAIN_TURNS } from "./lay-question.ts";

/** The cell of a row that holds its outline. */
export const pieceCell = ({ at = 0 }: CutRow): CellOfList => ({ argument: "pieces", cell: at });

/**
 * The refusal of a planner, with the cell that it is about: the first piece that no turn brings inside the width of any of
 * these cloths; where every piece of several is too wide, the argument that gives the width.
 */
export function layRefusal(
  refusal: string,
  rows: readonly CutRow[],
  cloths: readonly Pick<LayCloth, "width">[],
  argument?: string,
): Refusal {
  const widest = Math.max(...cloths.map(({ width }) => width));
  const isTooWide = (row: CutRow) =>
    GRAIN_TURNS[row.grain].oneWay.every((turn) => {
      const { left, right } = pieceBounds(turnPiece(unfoldedPiece(row), turn));
      return right - left > widest * (1 + 1e-9);
    });
  const [first, ...more] = rows.filter(isTooWide);
  const isCloth = argument !== undefined && more.length > 0 && more.length + 1 === rows.length;
  return new Refusal(refusal, first && (isCloth ? { argument, cell: 0 } : pieceCell(first)));
}
