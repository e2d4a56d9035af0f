import { expect, test } from "vitest";
import { formulaTree, isFormula } from "../../../src/book/formula.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { usesIn } from "../../../src/engine/uses.ts";
import { usesOf } from "../../../src/engine/uses-in-formula.ts";

const rowOf = (row: number): string[] => [
  `role ${row}`,
  `=C${row}+D$1*$E${row}`,
  `=SUM(D${row}:F${row};D$2:F$4)`,
  `=IF(ISBLANK(D${row});0;D${row}*2)`,
  `=EASE(B${row};waist)`,
  `=SUMPRODUCT(A$1:A$9;B$1:B$9)+list`,
  `=SUM(C:C)+MAX(Draft!B${row};2)`,
];

test("where formulas that are filled down need figures is what is found for each by itself", () => {
  const blank = blankBook("The baker's coat", "cm", "1 mm");
  const book: Book = {
    ...blank,
    names: { waist: "Measure!C3", list: "Draft!A1:A9" },
    pages: blank.pages
      .slice(0, 2)
      .map((page) => ({ ...page, rows: Array.from({ length: 9 }, (_, i) => rowOf(i + 1)) })),
  };
  const alone = book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((typed, column) =>
        isFormula(typed) ? usesOf(book, formulaTree(typed), { page, row, column }) : [],
      ),
    ),
  );
  const plain = (uses: typeof alone) =>
    uses.map(({ formula, tree, by, areas, as, blanksPass, textsPass, argument }) => ({
      ...{ formula, tree, by, areas, as, blanksPass, textsPass, argument },
    }));
  expect(plain([...usesIn(book)])).toEqual(plain(alone));
  expect(alone.length).toBeGreaterThan(100);
});
