/** The measurements of the wearer of a garment that takes figures from a chart: those in the chart's rows of this wearer. */
import { headingText } from "../../functions/block.ts";
import { isWearerHeading } from "../../functions/wearers/chart.ts";
import type { Place } from "../book/address.ts";
import type { Engine } from "./engine.ts";

export interface Charted {
  readonly page: number;
  /** Whose figures the garment rests on; several when it rests on those of more than one. */
  readonly wearers: readonly string[];
  /** The rows of that wearer, those first on which the garment rests. */
  readonly rows: readonly number[];
}

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

/** The chart among the cells behind a garment whose page's headings name wearers; null when there is no such chart. */
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
    const wearers = [...new Map(used.map(({ row }) => [plain(wearerOf(row)), wearerOf(row)])).values()];
    if (wearers.length === 0) continue;
    const own = new Set(used.map(({ row }) => row));
    const others = rows.flatMap((_, row) =>
      !own.has(row) && plain(wearerOf(row)) === plain(wearers[0]!) ? [row] : [],
    );
    return { page, wearers, rows: [...own, ...others] };
  }
  return null;
}
