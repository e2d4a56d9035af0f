/** Where the cells of a formula are for another formula that is filled from it (src/book/alike.ts). */
import type { Tree } from "../book/formula.ts";
import type { Area } from "./references.ts";

/** Whether a part's rows and columns stay where they are when its formula is filled. */
export interface Stays {
  readonly rows: boolean;
  readonly columns: boolean;
}

const ALL_STAYS: Stays = { rows: true, columns: true };

/** Both ends of a range stay or move alike in formulas that are alike. */
export function staysIn(part: Tree): Stays {
  if (part.is === "range") return staysIn(part.from);
  if (part.is !== "cell") return ALL_STAYS;
  const address = part.text.slice(part.text.lastIndexOf("!") + 1);
  return { rows: /\$\d+$/.test(address), columns: address.startsWith("$") };
}

/** The area of a part when its formula is filled so many rows down and columns across. */
export function filledArea(area: Area, stays: Stays, rows: number, columns: number): Area {
  const down = stays.rows ? 0 : rows;
  const across = stays.columns ? 0 : columns;
  if (down === 0 && across === 0) return area;
  const { page, top, left, bottom, right } = area;
  return { page, top: top + down, left: left + across, bottom: bottom + down, right: right + across };
}
