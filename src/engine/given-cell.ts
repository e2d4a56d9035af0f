/** The cells that an argument of a formula is made of. */
import type { CellAddress } from "./inside.ts";

/** An argument as HyperFormula parses it: a reference to a cell, a name, or what is worked out from others. */
export interface ParsedArgument {
  readonly type: string;
  readonly reference?: { toSimpleCellAddress(from: CellAddress): CellAddress };
  readonly expressionName?: string;
  readonly left?: ParsedArgument;
  readonly right?: ParsedArgument;
  readonly value?: unknown;
  readonly expression?: ParsedArgument;
  readonly args?: readonly ParsedArgument[];
}

/** The most cells that a problem is about because of one argument. */
const MOST_CELLS = 8;

/**
 * Where the cells stand that an argument is worked out from, in the order of the formula at `from`: one for =A1, two for
 * =A1+B1. Lists are left out; the list is empty for an argument that names too many cells to lead anywhere.
 */
export function givenCells(
  argument: ParsedArgument | undefined,
  from: CellAddress,
  named: ((name: string) => CellAddress | null) | undefined,
): readonly CellAddress[] {
  const found = new Map<string, CellAddress>();
  const add = (cell: CellAddress | null | undefined) => {
    if (cell) found.set(`${cell.sheet}.${cell.row}.${cell.col}`, cell);
  };
  const visit = (part: unknown): void => {
    if (typeof part !== "object" || part === null) return;
    const { type, reference, expressionName, left, right, value, expression, args } = part as ParsedArgument;
    if (type === "CELL_REFERENCE") add(reference?.toSimpleCellAddress(from));
    else if (expressionName !== undefined) add(named?.(expressionName));
    for (const one of [left, right, value, expression, ...(args ?? [])]) visit(one);
  };
  visit(argument);
  return found.size > MOST_CELLS ? [] : [...found.values()];
}
