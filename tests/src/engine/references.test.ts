import fc from "fast-check";
import { expect, test } from "vitest";
import { fullAddress, type Place } from "../../../src/book/address.ts";
import { type } from "../../../src/book/edit.ts";
import { isFormula } from "../../../src/book/formula.ts";
import { type Book, blankBook, typedAt } from "../../../src/book/shape.ts";
import { dependents } from "../../../src/engine/dependents.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { QuestionEngine } from "../../../src/engine/question-engine.ts";
import { precedents, Upstream } from "../../../src/engine/references.ts";
import { hasAnswer } from "../../../src/engine/sentences.ts";
import { isProblem, variedCellAt } from "../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { often } from "../../often.ts";

/** A book of two pages, "Measure" and "Draft", with these rows; names point at cells. */
function bookOf(
  measure: readonly (readonly string[])[],
  draft: readonly (readonly string[])[] = [],
  names: Book["names"] = {},
): Book {
  const blank = blankBook("The ferryman's coats", "in", "1/8");
  const columns = Array.from({ length: 6 }, () => ({ heading: "", kind: "any" as const, width: 100 }));
  const [first, second] = blank.pages as [Book["pages"][number], Book["pages"][number]];
  return {
    ...blank,
    names,
    pages: [
      { ...first, columns, rows: measure },
      { ...second, columns, rows: draft },
    ],
  };
}

const at = (book: Book, places: readonly Place[]): string[] =>
  places.map((place) => fullAddress(book, place));

test("a sum of a whole row rests on every cell of the row, and a sweep of one of them follows", () => {
  const book = bookOf([["3"], ["=A1*2", "7"], ["=SUM(2:2)"]], [], { x: "Measure!A1", y: "Measure!A3" });
  const watched = { page: 0, row: 2, column: 0 };
  const cell = variedCellAt(book, { page: 0, row: 0, column: 0 });
  if (isProblem(cell)) throw new Error(cell.problem);
  const engine = new QuestionEngine(book, layDesk, [cell], [watched]);
  expect([5, 8.5].map((figure) => engine.read([figure])[0])).toEqual([{ value: 17 }, { value: 24 }]);
  expect(engine.upstream.has(cell.place)).toBe(true);
  engine.destroy();
});

test("every way to refer to cells is read the same up and down", () => {
  const rows = [
    ["1", "2", "3"],
    ["4", "5", "6"],
    ["7", "8", "9"],
  ];
  const cases: [formula: string, cells: string[]][] = [
    ["=A1+waist", ["Measure!A1", "Measure!B2"]],
    ["=SUM(A1:B2)", ["Measure!A1", "Measure!B1", "Measure!A2", "Measure!B2"]],
    ["=SUM(B2:A1)", ["Measure!A1", "Measure!B1", "Measure!A2", "Measure!B2"]],
    ["=SUM(2:2)", ["Measure!A2", "Measure!B2", "Measure!C2"]],
    ["=SUM($3:2)", ["Measure!A2", "Measure!B2", "Measure!C2", "Measure!A3", "Measure!B3", "Measure!C3"]],
    ["=SUM(B:$C)", ["Measure!B1", "Measure!C1", "Measure!B2", "Measure!C2", "Measure!B3", "Measure!C3"]],
    ["=OFFSET(A1;1;2)", ["Measure!C2"]],
    ["=OFFSET(C3;-1;-2)+1", ["Measure!A2"]],
    ["=SUM(OFFSET(A1;1;1;2;2))", ["Measure!B2", "Measure!C2", "Measure!B3", "Measure!C3"]],
    ["=SUM(A1:OFFSET(A1;1;0))", ["Measure!A1", "Measure!A2"]],
    ["=IF(A1>-9;A1+B1*-C1%;0)", ["Measure!A1", "Measure!B1", "Measure!C1"]],
  ];
  const engineSays = new Engine(bookOf(rows, [], { waist: "Measure!B2" }), layDesk);
  for (const [formula, cells] of cases) {
    const book = bookOf([...rows, ["", "", "", "", formula]], [], { waist: "Measure!B2" });
    const home = { page: 0, row: 3, column: 4 };
    expect(at(book, precedents(book, formula, 0)), formula).toEqual(cells);
    for (const [row, list] of rows.entries())
      for (const column of list.keys()) {
        const place = { page: 0, row, column };
        const rests = cells.includes(fullAddress(book, place));
        expect(at(book, dependents(book, place)).includes("Measure!E4"), `${formula} ${row} ${column}`).toBe(
          rests,
        );
        // The engine itself is asked: what a formula rests on changes its answer.
        const moved = new Engine(type(book, [{ ...place, typed: "1000" }]), layDesk);
        const plain = engineSays.evaluate(formula, 0);
        const changed = moved.value(home) !== ("value" in plain ? plain.value : null);
        expect(changed, `${formula} ${row} ${column}`).toBe(rests);
        moved.destroy();
      }
  }
  engineSays.destroy();
});

test("on another page and by name the cells are found as well, and a row 0 refers to nothing", () => {
  const book = bookOf(
    [["1"], ["2"]],
    [["=SUM(Measure!A:A)"], ["=SUM(Measure!1:2)"], ["=hip+1"], ["=SUM(0:5)"]],
    {
      hip: "Measure!A2",
    },
  );
  expect(at(book, dependents(book, { page: 0, row: 1, column: 0 }))).toEqual([
    "Draft!A1",
    "Draft!A2",
    "Draft!A3",
  ]);
  expect(precedents(book, "=SUM(0:5)", 1)).toEqual([]);
});

test("a blank cell inside a list counts among what the list's sum rests on", () => {
  const book = bookOf([["1", "=SUM(A1:A4)"], ["2"], [""], ["3"]]);
  const upstream = new Upstream(book, [{ page: 0, row: 0, column: 1 }]);
  expect(upstream.has({ page: 0, row: 2, column: 0 })).toBe(true);
  expect(upstream.has({ page: 0, row: 4, column: 0 })).toBe(false);
});

const ROWS = 4;
const COLUMNS = 4;

const cellText = fc
  .tuple(fc.integer({ min: 0, max: COLUMNS - 1 }), fc.integer({ min: 1, max: ROWS }))
  .map(([column, row]) => `${"ABCD"[column]}${row}`);
const page = fc.constantFrom("", "", "Measure!", "Draft!");
const reference = fc.oneof(
  fc.tuple(page, cellText).map(([title, cell]) => `${title}${cell}`),
  fc.constantFrom("one", "two"),
  fc
    .tuple(cellText, fc.integer({ min: -1, max: 1 }), fc.integer({ min: -1, max: 1 }))
    .map(([cell, down, across]) => `OFFSET(${cell};${down};${across})`),
);
const block = fc.oneof(
  fc.tuple(page, cellText, cellText).map(([title, a, b]) => `${title}${a}:${b}`),
  fc
    .tuple(page, fc.integer({ min: 1, max: ROWS }), fc.integer({ min: 1, max: ROWS }))
    .map(([title, a, b]) => `${title}${a}:${b}`),
  fc.tuple(page, fc.constantFrom("A", "B", "C", "D")).map(([title, a]) => `${title}${a}:${a}`),
  fc.tuple(cellText, fc.integer({ min: 1, max: 2 })).map(([cell, tall]) => `OFFSET(${cell};0;0;${tall};2)`),
);
const formula = fc.oneof(
  fc.tuple(reference, reference, fc.constantFrom("+", "-", "*")).map(([a, b, sign]) => `=${a}${sign}${b}`),
  fc.tuple(fc.constantFrom("SUM", "MAX", "COUNT"), block).map(([name, list]) => `=${name}(${list})`),
  fc.tuple(reference, reference, block).map(([a, b, list]) => `=IF(${a}>3;${b};SUM(${list}))`),
);
const typed = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 1, max: 40 }).map(String) },
  { weight: 3, arbitrary: formula },
  { weight: 1, arbitrary: fc.constantFrom("", "shift") },
);
const rows = fc.array(fc.array(typed, { minLength: COLUMNS, maxLength: COLUMNS }), {
  minLength: ROWS,
  maxLength: ROWS,
});

/** Every cell of a random book. */
const places: Place[] = [0, 1].flatMap((onPage) =>
  Array.from({ length: ROWS * COLUMNS }, (_, i) => ({
    page: onPage,
    row: Math.floor(i / COLUMNS),
    column: i % COLUMNS,
  })),
);

test("what a sweep answers is what typing each value answers, in random books", () => {
  fc.assert(
    fc.property(
      rows,
      rows,
      fc.nat(),
      fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 2, maxLength: 3 }),
      (a, b, pick, figures) => {
        const book = bookOf(a, b, { one: "Measure!A1", two: "Draft!B2" });
        const varied = places.filter((place) =>
          /^\d+$/.test(typedAt(book, place.page, place.row, place.column)),
        );
        const watched = places.filter((place) =>
          isFormula(typedAt(book, place.page, place.row, place.column)),
        );
        fc.pre(varied.length > 0 && watched.length > 0);
        const cell = variedCellAt(book, varied[pick % varied.length]!);
        if (isProblem(cell)) throw new Error(cell.problem);
        const copies = watched.map((place) => new QuestionEngine(book, layDesk, [cell], [place]));
        const engine = new Engine(book, layDesk);
        const before = watched.map((place) => engine.value(place));
        for (const figure of figures) {
          engine.become(type(book, [{ ...cell.place, typed: String(figure) }]));
          watched.forEach((place, i) => {
            const [reading] = copies[i]!.read([figure]);
            const { value, problem } = engine.view(place);
            if (problem && !hasAnswer(problem)) expect(reading).toHaveProperty("sentence");
            else expect(reading).toEqual({ value });
            // A cell that follows the varied cell is known to rest on it.
            if (value !== before[i]) expect(copies[i]!.upstream.has(cell.place)).toBe(true);
          });
        }
        for (const engine of copies) engine.destroy();
        engine.destroy();
      },
    ),
    { seed: 2026, numRuns: often(25) },
  );
});
