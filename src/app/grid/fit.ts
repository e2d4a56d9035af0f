/** The width at which a column shows everything that it holds. */
import type { GridView } from "./grid-view.ts";

/** No column is fitted wider than this, in pixels: a long note would push everything else out of sight. */
const MOST = 520;
const LEAST = 48;
/** The cell's padding and line, and the sign before a calculated value. */
const AROUND = 15;
const SIGN = 18;

let pen: CanvasRenderingContext2D | null | undefined;

function widthOf(text: string, font: string): number {
  pen ??= document.createElement("canvas").getContext("2d");
  if (!pen) return text.length * 8;
  pen.font = font;
  return pen.measureText(text).width;
}

/** Of the texts of a column only the longest are measured. */
const MEASURED = 60;

/** The width of one column, in pixels, its heading included. */
export function fittingWidth(grid: GridView, column: number): number {
  const family = getComputedStyle(grid.hot.rootElement as HTMLElement).fontFamily;
  const heading = grid.page.columns[column]?.heading ?? "";
  const texts = grid.page.rows.flatMap((_, row) => {
    const { shown, worked, problem } = grid.view(row, column);
    return shown === "" ? [] : [{ text: shown, sign: worked || problem !== null }];
  });
  const longest = texts.toSorted((a, b) => b.text.length - a.text.length).slice(0, MEASURED);
  const widths = longest.map(({ text, sign }) => widthOf(text, `650 14px ${family}`) + (sign ? SIGN : 0));
  const most = Math.max(LEAST, widthOf(heading, `600 14px ${family}`), ...widths);
  return Math.min(MOST, Math.ceil(most) + AROUND);
}
