/** Blocks of cells as the plain text that other programs put on the clipboard and take from it. */

/** What a cell can't have without quotes round it: a reader would part it there, or trim it. */
const NEEDS_QUOTES = /[\t\r\n"\ufeff]|^ | $/;

/** Tabs between cells, a new line for each row; quotes only round a cell that needs them. */
export const blockText = (block: readonly (readonly string[])[]): string =>
  block
    .map((row) =>
      row.map((cell) => (NEEDS_QUOTES.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join("\t"),
    )
    .join("\n");

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
