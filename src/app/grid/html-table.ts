/** Tables of the clipboard's HTML. The document is never shown: nothing in it is run or loaded. */

/** The most rows and columns that one cell of a table may span; more is damage. */
const MOST_SPAN = 1000;

/** Handlers in attributes. None would run, but the browser complains of each. */
const HANDLERS = /\son\w+\s*=\s*(?:"[^"]*"|'[^']*'|[^\s>]*)/gi;

export interface HtmlTable {
  readonly cells: string[][];
  /** How many cells span several rows or columns: their text stands in the first. */
  readonly spanning: number;
  /** How many tables there are; only the first is read. */
  readonly tables: number;
}

const wordsOf = (cell: Element): string =>
  (cell.textContent ?? "").replaceAll("\u00a0", " ").replace(/\s+/g, " ").trim();

/** The first table in a piece of HTML, every row as wide as the widest; null for HTML without a table. */
export function htmlTable(html: string): HtmlTable | null {
  if (!/<table[\s>]/i.test(html)) return null;
  const page = new DOMParser().parseFromString(html.replace(HANDLERS, " "), "text/html");
  const all = [...page.querySelectorAll("table")].filter((one) => !one.parentElement?.closest("table"));
  const table = all[0];
  if (!table) return null;
  const cells: (string | undefined)[][] = [];
  let spanning = 0;
  for (const [r, row] of [...table.rows].entries()) {
    cells[r] ??= [];
    let column = 0;
    for (const cell of row.cells) {
      while (cells[r][column] !== undefined) column += 1;
      const [across, down] = [Math.min(cell.colSpan, MOST_SPAN), Math.min(cell.rowSpan || 1, MOST_SPAN)];
      if (across > 1 || down > 1) spanning += 1;
      for (let y = r; y < Math.min(r + down, table.rows.length); y += 1) {
        cells[y] ??= [];
        for (let x = column; x < column + across; x += 1) cells[y]![x] = "";
      }
      cells[r][column] = wordsOf(cell);
      column += across;
    }
  }
  const wide = Math.max(0, ...cells.map((row) => row.length));
  if (wide === 0) return null;
  return {
    cells: cells.map((row) => Array.from({ length: wide }, (_, i) => row[i] ?? "")),
    spanning,
    tables: all.length,
  };
}

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** A block as an HTML table, for programs that take one. */
export const tableHtml = (block: readonly (readonly string[])[]): string =>
  `<table>${block
    .map((row) => `<tr>${row.map((text) => `<td>${escaped(text)}</td>`).join("")}</tr>`)
    .join("")}</table>`;
