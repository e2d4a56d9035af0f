/** Something doubtful in a measurement chart. */
import type { CallContext, Cell } from "../define.ts";
import type { CellOfList } from "../refusal.ts";

/** What kind of fault it is: the first word of its verdict, so that a narrow column shows it. */
export type Sort = "unmeasured" | "missing" | "too old" | "doubtful";

/** Something doubtful: a sentence, and the cells that it is about. */
export interface Fault {
  readonly sort: Sort;
  readonly sentence: string;
  readonly at: readonly CellOfList[];
}

/** What a fault is written with; unit and mark decide how. */
export type Said = Pick<CallContext, "say" | "cm" | "unit" | "mark">;

/** Whether a cell holds a length. Anything else has a fault of its own in its row, and nothing is compared with it. */
export const isFigure = (cell: Cell | undefined): cell is number => typeof cell === "number" && cell > 0;
