/** A book of many formulas for the benchmarks of the page: rows of a name, two measurements and five formulas. */
import { type Book, blankBook } from "../../src/book/shape.ts";

/** The formulas of one row. */
const IN_ROW = 5;

export function largeBook(formulas: number): Book {
  const book = blankBook("Many", "cm", "1 mm");
  const rows = Array.from({ length: formulas / IN_ROW }, (_, n) => {
    const i = n + 1;
    const figures = [`${60 + (i % 41) / 2}`, `${88 + (i % 37)}`];
    const formulas = [
      `=B${i}+2`,
      `=EASE(B${i};C${i})`,
      `=SPREAD_PER_GAP(D${i};D${i}*2;7)`,
      `=SUM(B${i}:F${i})`,
    ];
    return [`role ${i}`, ...figures, ...formulas, `=IF(G${i}>300;E${i}+F${i};ROUND(F${i}*2;1))`];
  });
  const columns = Array.from({ length: 10 }, () => ({ heading: "", kind: "any" as const, width: 80 }));
  return { ...book, pages: book.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page)) };
}
