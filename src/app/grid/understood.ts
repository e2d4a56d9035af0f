/** What a text from the clipboard is taken for, and what else it could be. */

import Papa from "papaparse";
import { phrase, plural } from "../../../functions/phrase.ts";
import type { HtmlTable } from "./html-table.ts";

/** The block in a clipboard's text, every row as wide as the widest. Quotes that don't pair are signs like others. */
export function textBlock(text: string): string[][] {
  if (text === "") return [];
  const read = (quoteChar: string) =>
    Papa.parse<string[]>(text.replace(/\r\n?/g, "\n"), { delimiter: "\t", newline: "\n", quoteChar });
  const quoted = read('"');
  const rows = (quoted.errors.some(({ type }) => type === "Quotes") ? read("\0") : quoted).data;
  // Programs end the last row with a line break too.
  if (rows.length > 1 && rows.at(-1)!.length === 1 && rows.at(-1)![0] === "") rows.pop();
  const wide = Math.max(...rows.map((row) => row.length));
  return rows.map((row) => Array.from({ length: wide }, (_, i) => row[i] ?? ""));
}

export interface Understood {
  readonly cells: string[][];
  /** What was doubtful and how it was taken, in a sentence; null when nothing was. */
  readonly doubt: string | null;
  /** The other reading, with the label of its button. */
  readonly other: { readonly label: string; readonly cells: string[][] } | null;
}

const SEPARATORS = [
  [";", phrase`semicolons`],
  [",", phrase`commas`],
  ["|", phrase`upright strokes`],
] as const;

/** The text cut at a separator, when it cuts every line into the same number of cells; else null. */
function cutAt(text: string, separator: string): string[][] | null {
  const { data, errors } = Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: "\n",
    skipEmptyLines: true,
  });
  const wide = data[0]?.length ?? 0;
  const quotes = errors.some(({ type }) => type === "Quotes");
  if (quotes || wide < 2 || data.length < 2 || data.some((row) => row.length !== wide)) return null;
  return data.map((row) => row.map((one) => one.trim()));
}

/** Whether the commas of a text are more likely those of figures or of sentences than between cells. */
const isProse = (text: string): boolean =>
  text.split("\n").every((line) => /^\s*[-+]?\d+,\d+\s*$/.test(line) || line.trim() === "") ||
  (/,\s/.test(text) && !/,\S/.test(text.replaceAll(/"[^"]*"/g, "")));

/**
 * The cells in a text of the clipboard, or in the table that came with it. Tabs part cells beyond doubt;
 * where there are no tabs, a table is taken, or lines that semicolons or commas cut into equal numbers of cells.
 */
export function understood(given: string, table: HtmlTable | null): Understood {
  const text = given.replace(/\r\n?/g, "\n").replaceAll("\u00a0", " ");
  const plain = textBlock(text);
  if (text.includes("\t")) return { cells: plain, doubt: null, other: null };
  const asText = plain.length > 0 ? { label: phrase`Paste as plain lines`, cells: plain } : null;
  if (table && (table.cells[0]!.length > 1 || plain.length === 0)) {
    const doubts = [
      ...(table.spanning > 0
        ? [
            phrase`${plural(table.spanning, "# cell", "# cells")} of the table spanned several, and the text stands in the first`,
          ]
        : []),
      ...(table.tables > 1 ? [phrase`of ${table.tables} tables only the first was pasted`] : []),
    ];
    return { cells: table.cells, doubt: doubts.join("; ") || null, other: doubts.length > 0 ? asText : null };
  }
  if (/^\s*=/m.test(text)) return { cells: plain, doubt: null, other: null };
  for (const [separator, noun] of SEPARATORS) {
    const cells = cutAt(text, separator);
    if (!cells) continue;
    const columns = phrase`${cells[0]!.length} columns separated by ${noun}`;
    if (separator === "," && isProse(text))
      return {
        cells: plain,
        doubt: phrase`the commas were taken as part of the text`,
        other: { label: phrase`Paste as ${columns}`, cells },
      };
    return { cells, doubt: phrase`the text was taken as ${columns}`, other: asText };
  }
  return { cells: plain, doubt: null, other: null };
}
