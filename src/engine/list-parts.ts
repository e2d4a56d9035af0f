/** A list that HyperFormula is given in several ranges: of the columns that are read, those that are neighbours in one. */
import { SimpleRangeValue } from "hyperformula";
import { addressKey, type CellAddress } from "./inside.ts";
import type { CellInList } from "./list-cells.ts";

/** The function by which HyperFormula is given such a list: its ranges from left to right. */
export const PARTS_OF_LIST = "ELLWAND.PARTS";

type Data = SimpleRangeValue["data"];

/** One range of a list, with its place in the book. */
interface Part {
  readonly start: CellAddress;
  readonly end: CellAddress;
  readonly data: Data;
}

const partsOf = new WeakMap<SimpleRangeValue, readonly Part[]>();

/** A part of a list, from the argument that names it and its value. HyperFormula gives a range of one cell as the cell's value. */
export function partOfList(
  argument: { readonly start?: CellAddress; readonly end?: CellAddress },
  value: unknown,
): Part | null {
  if (value instanceof SimpleRangeValue) return value.range ? { ...value.range, data: value.data } : null;
  const { start, end } = argument;
  return start && end ? { start, end, data: [[value as Data[number][number]]] } : null;
}

/** The parts side by side as one list. */
export function joinedParts(parts: readonly Part[]): SimpleRangeValue {
  const rows = parts[0]?.data ?? [];
  const list = SimpleRangeValue.onlyValues(rows.map((_, i) => parts.flatMap(({ data }) => data[i] ?? [])));
  partsOf.set(list, parts);
  return list;
}

/** Whether a value was joined of the parts of a list. */
export const isOfParts = (list: SimpleRangeValue): boolean => partsOf.has(list);

/** The ranges of a list, each with its place in the book; empty for values that stand in no cells. */
const rangesOf = (list: SimpleRangeValue): readonly Pick<Part, "start" | "end">[] =>
  partsOf.get(list) ?? (list.range ? [list.range] : []);

const widthOf = ({ start, end }: Pick<Part, "start" | "end">): number => end.col - start.col + 1;

/** A key that is equal for lists of the same cells; null for values that stand in no cells. */
export function listKey(list: SimpleRangeValue): string | null {
  const ranges = rangesOf(list);
  return ranges.length === 0
    ? null
    : ranges.map(({ start, end }) => `${addressKey(start)} ${addressKey(end)}`).join(" ");
}

/** The headings that stand over a list's columns. `over` gives those of one range. */
export const headingsOver = (
  list: SimpleRangeValue,
  over: (sheet: number, column: number, wide: number) => readonly string[],
): readonly string[] =>
  rangesOf(list).flatMap((range) => over(range.start.sheet, range.start.col, widthOf(range)));

/** Where a cell of a list stands, counted row by row; null for values that stand in no cells. */
export function cellInList(list: SimpleRangeValue, cell: number): CellInList<CellAddress> | null {
  const [down, across] = [Math.floor(cell / list.width()), cell % list.width()];
  let before = 0;
  for (const range of rangesOf(list)) {
    const { start, end } = range;
    if (across < before + widthOf(range))
      return { start, end, at: { ...start, row: start.row + down, col: start.col + across - before } };
    before += widthOf(range);
  }
  return null;
}
