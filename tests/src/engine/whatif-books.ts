/** Small books for the questions: a circle skirt, panels round a hem, a laid peplum of a village play's widow. */
import type { Unit } from "../../../functions/units.ts";
import { type Book, blankBook, type Column } from "../../../src/book/shape.ts";

const COLUMNS: readonly Column[] = [
  { heading: "What", kind: "text", width: 200 },
  { heading: "Figure", kind: "any", width: 120 },
];

/** A book of one page: each named cell with what is typed in it. */
export function bookOf(cells: Readonly<Record<string, string>>, unit: Unit = "in"): Book {
  const names = Object.keys(cells);
  const blank = blankBook("The widow's skirts", unit, unit === "in" ? "1/8" : "1 mm");
  const page = {
    ...blank.pages[1]!,
    columns: COLUMNS,
    rows: names.map((name) => [name, cells[name]!]),
  };
  return {
    ...blank,
    pages: [page],
    names: Object.fromEntries(names.map((name, i) => [name, `Draft!B${i + 1}`])),
  };
}

/** Panels of a gathered skirt: whole breadths of cloth, each cut at the depth and its hem, sold in eighths of a yard. */
export const panelSkirt = (): Book =>
  bookOf({
    hip: "40 in",
    fullness: "2.5",
    cloth_width: "45 in",
    depth: "30 in",
    hem: "2 1/2",
    panels: "=ROUNDUP(hip*fullness/cloth_width;0)",
    cut: "=depth+hem+IN(1/2)",
    cloth: "=panels*cut",
    buy: "=CEILING(cloth;4.5)",
    verdict: '=IF(cloth>200;"check: more than the 200 in at hand";"ok")',
    note: "for the harvest scene",
  });

/** Two shaped pieces laid on cloth, and lengths that rest on the same depth. */
export const laidPeplum = (): Book =>
  bookOf({
    waist: "28 in",
    hip: "40 in",
    depth: "9 in",
    pleats: "6",
    pleat_depth: "3/4",
    cloth_width: "54 in",
    panel: "=FLARED_PANEL(waist/2;hip/2;depth)",
    strip: "=RECTANGLE(waist+2*pleats*pleat_depth;depth/3)",
    cloth: "=YARDAGE(panel;2;cloth_width)",
    hem_edge: "=hip+2*depth",
  });

/** Six gores and their lining laid on cloth: a search finds a shorter lay than the quick one. */
export const goredSkirt = (): Book =>
  bookOf({
    depth: "42 in",
    gore: '=GORE(5 1/2; 15; depth; ; ; "straight")',
    cloth: "=YARDAGE(gore; 12; 59)",
  });
