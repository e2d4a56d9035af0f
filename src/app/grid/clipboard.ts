/** Blocks of cells as the plain text that other programs put on the clipboard and take from it. */
import Papa from "papaparse";

/** Tabs between cells, a new line for each row; quotes only round a cell that needs them. */
export const blockText = (block: readonly (readonly string[])[]): string =>
  Papa.unparse(block as string[][], { delimiter: "\t", newline: "\n" });

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

/** A block repeated to fill `tall` × `wide` when it goes into both a whole number of times; else as it is. */
export function repeated<T>(block: readonly (readonly T[])[], tall: number, wide: number): T[][] {
  const rows = block.length;
  const columns = block[0]?.length ?? 0;
  if (rows === 0 || columns === 0) return [];
  const down = tall % rows === 0 ? tall : rows;
  const across = wide % columns === 0 ? wide : columns;
  return Array.from({ length: down }, (_, r) =>
    Array.from({ length: across }, (_, c) => block[r % rows]![c % columns]!),
  );
}
