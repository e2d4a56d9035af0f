import { expect, test } from "vitest";
import { findPlace, fullAddress, type Place, placeKey } from "../../../src/book/address.ts";
import { insertRows, type } from "../../../src/book/edit.ts";
import { formulaTree, isFormula } from "../../../src/book/formula.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { dependents, referringRows } from "../../../src/engine/dependents.ts";
import { areasOf, isIn } from "../../../src/engine/references.ts";
import { Random } from "../../attack/random.ts";
import { often } from "../../often.ts";

/** Enough for several blocks of rows, the last of them not full. */
const ROWS = 150;
const COLUMNS = 5;

/** Figures and formulas that refer to cells near, far, on the other page, by name and by the headings of a list. */
const entryOf = (random: Random, row: number): string =>
  random.pick([
    "", "27", "tight", `=B${row}`, `=A${random.between(1, ROWS)}*2`, "=waist+1", `=Draft!C${row}-A1`, "=SUM(B:B)",
    `=SUM(A${row}:C${row + 2})`, "=SUM(tried)", "=Measure!A140", `=OFFSET(A${row};1;1)`, "=SEAM_LENGTH(A1:E9;Draft!A1:C9;A2;B2)",
  ]); // biome-ignore format: a list

const HEADINGS = ["Piece", "Edge", "Sewn to", "Remark", "Its edge"];

function bookOf(random: Random): Book {
  const blank = blankBook("The baker's coat", "cm", "1 mm");
  const columns = Array.from({ length: COLUMNS }, () => ({ heading: "", kind: "any" as const, width: 90 }));
  const pages = blank.pages.slice(0, 2).map((page) => ({
    ...page,
    columns,
    rows: random.many(ROWS, (row) =>
      row === 0 ? HEADINGS : random.many(COLUMNS, () => entryOf(random, row + 1)),
    ),
  }));
  return { ...blank, names: { waist: "Measure!C3", tried: "Draft!A1:A9" }, pages };
}

/** Every formula is read anew. */
function readAnew(book: Book, place: Place): Place[] {
  return book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((typed, row) =>
      typed.flatMap((text, column) => {
        const refers =
          isFormula(text) && areasOf(book, formulaTree(text), page).some((area) => isIn(area, place));
        return refers ? [{ page, row, column }] : [];
      }),
    ),
  );
}

/** SEEDS=100 tries more books. */
const SEEDS = Number(process.env.SEEDS ?? often(4));

test("after each change the cells that refer to a cell are those that reading every formula anew finds", () => {
  let found = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const random = new Random(seed);
    const anywhere = () => ({
      page: random.below(2),
      row: random.below(ROWS),
      column: random.below(COLUMNS),
    });
    let book = bookOf(random);
    const changes: readonly (() => Book)[] = [
      () => type(book, [{ ...anywhere(), typed: entryOf(random, 5) }]),
      () =>
        type(
          book,
          random.many(40, () => ({ ...anywhere(), typed: entryOf(random, 9) })),
        ),
      () => type(book, [{ page: 0, row: 0, column: random.below(4), typed: random.pick(HEADINGS) }]),
      () => insertRows(book, random.below(2), random.below(ROWS), 1),
      () => ({ ...book, names: { ...book.names, waist: fullAddress(book, anywhere()) } }),
      () => ({ ...book, pages: book.pages.toReversed() }),
    ];
    for (let step = 0; step < 25; step += 1) {
      const old = book;
      book = random.pick(changes)();
      const named = [old, book].map((one) => findPlace(one, one.names.waist!)!);
      const listed = random.many(4, (column) => ({ page: 0, row: 2, column }));
      for (const place of [...random.many(2, anywhere), ...named, ...listed]) {
        const expected = readAnew(book, place).map(placeKey);
        expect(dependents(book, place).map(placeKey), `seed ${seed}, step ${step}`).toEqual(expected);
        found += expected.length;
      }
    }
    const formulas = book.pages.flatMap(({ rows }) => rows.flat()).filter(isFormula);
    expect([...referringRows(book)].flat().map(({ typed }) => typed)).toEqual(formulas);
  }
  expect(found).toBeGreaterThan(SEEDS * 1000);
});
