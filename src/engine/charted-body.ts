/** The measurements of the wearer of a garment that takes figures from a chart: those in the chart's rows of this wearer. */
import { headingText } from "../../functions/block.ts";
import { comparedName } from "../../functions/compared-name.ts";
import { isWearerHeading } from "../../functions/wearers/chart.ts";
import type { Place } from "../book/address.ts";
import type { Engine } from "./engine.ts";

export interface Charted {
  readonly page: number;
  /** The wearers whose figures the garment rests on. */
  readonly wearers: readonly string[];
  /** The rows that the garment rests on, then the other rows of the first wearer. */
  readonly rows: readonly number[];
}

/** The chart of wearers among the cells that a garment rests on. Returns null when the garment rests on no such chart. */
export function chartedBehind(engine: Engine, behind: readonly Place[]): Charted | null {
  for (const page of new Set(behind.map((one) => one.page))) {
    const { columns, rows } = engine.book.pages[page]!;
    const column = columns.findIndex(({ heading }) => isWearerHeading(headingText(heading)));
    if (column < 0) continue;
    const wearerOf = (row: number): string => {
      const value = engine.value({ page, row, column });
      return typeof value === "string" ? value.trim() : "";
    };
    const used = behind.filter(
      (one) => one.page === page && one.column !== column && wearerOf(one.row) !== "",
    );
    const wearers = [
      ...new Map(used.map(({ row }) => [comparedName(wearerOf(row)), wearerOf(row)])).values(),
    ];
    if (wearers.length === 0) continue;
    const own = new Set(used.map(({ row }) => row));
    const others = rows.flatMap((_, row) =>
      !own.has(row) && comparedName(wearerOf(row)) === comparedName(wearers[0]!) ? [row] : [],
    );
    return { page, wearers, rows: [...own, ...others] };
  }
  return null;
}
