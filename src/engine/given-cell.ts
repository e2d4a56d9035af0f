/** The cell that stands as an argument in a formula. */
import type { CellAddress } from "./inside.ts";

/** An argument as HyperFormula parses it: a reference to a cell, a name, or anything else. */
export interface ParsedArgument {
  readonly type: string;
  readonly reference?: { toSimpleCellAddress(from: CellAddress): CellAddress };
  readonly expressionName?: string;
}

/** Where the cell stands that an argument is, in a formula at `from`; null for one that is worked out or typed in the formula. */
export function givenCell(
  argument: ParsedArgument | undefined,
  from: CellAddress,
  named: ((name: string) => CellAddress | null) | undefined,
): CellAddress | null {
  if (argument?.type === "CELL_REFERENCE") return argument.reference?.toSimpleCellAddress(from) ?? null;
  const { expressionName } = argument ?? {};
  return expressionName === undefined ? null : (named?.(expressionName) ?? null);
}
