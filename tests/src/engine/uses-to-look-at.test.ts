import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { KeptUses, type UsesToLookAt } from "../../../src/engine/uses-to-look-at.ts";
import { Random } from "../../attack/random.ts";

const [ROWS, COLUMNS] = [8, 6];

/** Entries of every kind, and formulas that need figures from near, from far and through cells that repeat others. */
const entryOf = (random: Random, row: number): string =>
  random.pick([
    "", "", "27", "12 1/2", "30 cm", "tight", "-", "1,250", `=B${row}`, `=C${random.between(1, ROWS)}`, "=waist", "=Draft!A2", "=A1*2", "=A2+B2", "=A3/B1",
    `=B${row}+D$2`, `=SUM(A${row}:C${row})`, `=SUM(B$1:B$${ROWS})/2`, "=SUM(C:C)", "=SUM(tried)", `=EASE(A${row};waist)`,
    `=SPREAD_PER_GAP(A${row};B${row};B$2)`, `=C${row}*2-A$1`, `=Draft!D${row}/3`, "=ISBLANK(B3)", "-3", "-3", `=A${row}*B${row}`,
    `=MAX(0;B${row}-C${row})`,
  ]); // biome-ignore format: a list

function bookOf(random: Random): Book {
  const blank = blankBook("The baker's coat", "cm", "1 mm");
  const kinds = ["any", "any", "length", "text", "any", "number"] as const;
  const columns = kinds.map((kind) => ({ heading: "", kind, width: 90 }));
  return {
    ...blank,
    names: { waist: "Measure!C3", tried: "Draft!A1:A9" },
    pages: blank.pages.slice(0, 2).map((page) => ({
      ...page,
      columns,
      rows: random.many(ROWS, (row) => random.many(COLUMNS, () => entryOf(random, row + 1))),
    })),
  };
}

const plain = ({ counted, lengths, amounts, unclear }: UsesToLookAt): string =>
  JSON.stringify([
    [counted, lengths, amounts].map((uses) =>
      uses.map(({ formula, by, areas, as }) => [formula, by, areas, as]),
    ),
    unclear,
  ]);

/** SEEDS=100 tries more books. */
const SEEDS = Number(process.env.SEEDS ?? 5);

test("after each edit the places that may lack a figure are those that a look through the whole book finds", () => {
  let found = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const random = new Random(seed);
    let book = bookOf(random);
    const kept = new KeptUses();
    kept.of(book);
    for (let step = 0; step < 60; step += 1) {
      const places = random.many(random.pick([1, 1, 1, 3, 31]), () => ({
        page: random.below(2),
        row: random.below(ROWS),
        column: random.below(COLUMNS),
      }));
      book = type(book, places.map((place) => ({ ...place, typed: entryOf(random, place.row + 1) })));
      const now = plain(kept.of(book));
      expect(now === plain(new KeptUses().of(book)), `seed ${seed}, step ${step}`).toBe(true);
      found += now.length;
    }
  }
  expect(found).toBeGreaterThan(SEEDS * 10_000);
}); // biome-ignore format: short

test("a number that becomes a length is looked at wherever a count is needed", () => {
  const from = bookOf(new Random(1));
  const entries = ["20", "7", "=SPREAD_PER_GAP(A1;40;B1)"];
  const first = type(from, [
    ...entries.map((typed, column) => ({ page: 1, row: column === 2 ? 1 : 0, column, typed })),
  ]);
  const kept = new KeptUses();
  const formulas = () => kept.of(book).lengths.map(({ formula: { row, column } }) => `${row} ${column}`);
  let book = first;
  expect(formulas()).not.toContain("1 2");
  book = type(first, [{ page: 1, row: 0, column: 1, typed: "7 cm" }]);
  expect(formulas()).toContain("1 2");
});

/** A pattern of formulas in a column of 12 rows, and the formula that stands in a row. */
const ABOVE = {
  title: "a cell three rows above",
  at: (row: number) => `=B${row - 3}+1`,
  needs: (row: number) => row - 3,
};
const BELOW = {
  title: "a cell three rows below",
  at: (row: number) => `=B${row + 3}+1`,
  needs: (row: number) => row + 3,
};

/** A book with figures in column B and formulas in column D of 12 rows, counted from 1. */
function bookOfColumn(formulaOf: (row: number) => string): Book {
  const blank = bookOf(new Random(1));
  const rows = Array.from({ length: 12 }, (_, row) =>
    Array.from({ length: COLUMNS }, (_, column) =>
      column === 1 ? "27" : column === 3 ? formulaOf(row + 1) : "",
    ),
  );
  return { ...blank, pages: blank.pages.map((page, i) => (i === 0 ? { ...page, rows } : page)) };
}

/** The rows where formulas of column D may lack a figure, counted from 1. */
const lacking = (kept: KeptUses, book: Book) =>
  kept.of(book).counted.filter(({ formula }) => formula.column === 3).map(({ formula }) => formula.row + 1); // biome-ignore format: short

for (const { title, at, needs } of [ABOVE, BELOW])
  test.each([
    ["above all others like it", [7, 8], 5],
    ["below all others like it", [5, 6], 8],
    ["above and below, one after the other", [6], [5, 8, 4, 9]],
  ])(
    `a formula that needs ${title}, typed ${"%s"}, is found when that cell becomes a word`,
    (_, first, then) => {
      let book = bookOfColumn((row) => (first.includes(row) ? at(row) : ""));
      const kept = new KeptUses();
      expect(lacking(kept, book)).toEqual([]);
      const typed = (row: number, column: number, text: string) => {
        book = type(book, [{ page: 0, row: row - 1, column, typed: text }]);
      };
      for (const row of [then].flat()) {
        typed(row, 3, at(row));
        kept.of(book);
      }
      for (const row of [...first, ...[then].flat()]) {
        typed(needs(row), 1, "tight");
        expect(lacking(kept, book)).toEqual([row]);
        typed(needs(row), 1, "27");
        expect(lacking(kept, book)).toEqual([]);
      }
    },
  );

test("formulas that all need one cell are found from the first to the last when that cell becomes a word", () => {
  let book = bookOfColumn((row) => (row === 5 || row === 7 ? "=B$2+1" : ""));
  const kept = new KeptUses();
  expect(lacking(kept, book)).toEqual([]);
  for (const row of [4, 9]) {
    book = type(book, [{ page: 0, row: row - 1, column: 3, typed: "=B$2+1" }]);
    kept.of(book);
  }
  book = type(book, [{ page: 0, row: 1, column: 1, typed: "tight" }]);
  expect(lacking(kept, book)).toEqual([4, 5, 7, 9]);
});
