import { describe, expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { bookDifferences } from "../../../src/engine/book-differences.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { explain } from "../../../src/engine/explain.ts";
import { fittedText } from "../../../src/engine/fitted-text.ts";
import { pageCsv } from "../../../src/exchange/page-csv.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import { setCells } from "../../../src/store/changing-cells.ts";
import * as commands from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const column = (heading: string, kind: Page["columns"][number]["kind"] = "any") => ({
  heading,
  kind,
  width: 100,
});

/** A waist that follows the fittings, a skirt of two halves of it; a log; a list of seams. */
function fittedBook(): Book {
  const book = blankBook("Fitted", "in", "1/8");
  const pages: Page[] = [
    {
      title: "Draft",
      stage: "Draft",
      columns: [column("What", "text"), column("Value")],
      rows: [
        ["Waist of the bodice", "27"],
        ["Waist of the skirt", "=waist+1"],
        ["Half of it", "=skirt_waist/2"],
        ["The skirt", "=FLARED_PANEL(half;30;20)"],
      ],
      notes: {},
      cells: { B1: { fitting: "bodice waist" } },
    },
    {
      title: "Fit",
      stage: "Fit",
      columns: [
        column("Piece", "text"),
        column("Seam", "text"),
        column("Amount"),
        column("In or out", "text"),
        column("Each side or all round", "text"),
      ],
      rows: [
        ["bodice", "waist", "1/4", "out", "each side"],
        ["bodice", "waist", "0"],
        [],
        ["Piece", "Edge", "Sewn to", "Its edge"],
        ["bodice", "waist", "skirt", "waist"],
      ],
      notes: {},
    },
  ];
  const names = {
    waist: "Draft!B1", skirt_waist: "Draft!B2", half: "Draft!B3", skirt: "Draft!B4",
    fitting_log: "Fit!A1:E3", seams: "Fit!A4:D6",
  }; // biome-ignore format: a table
  return { ...book, pages, names };
}

const at = (row: number, page = 0, columnAt = 1) => ({ page, row, column: columnAt });
const engineOf = (book: Book) => new Engine(book, layDesk);

test("what is typed stays, and all that rests on the cell follows the log", () => {
  const engine = engineOf(fittedBook());
  expect(engine.view(at(0))).toMatchObject({
    typed: "27",
    shown: "27 1/2",
    value: 27.5,
    worked: false,
    problem: null,
  });
  expect(engine.value(at(1))).toBe(28.5);
  expect(engine.value(at(2))).toBe(14.25);
  expect(fittedText(engine, at(0))).toBe("taken 27, fitted +1/2 (bodice waist): 27 1/2");
  expect(pageCsv(engine, 0, "shown")).toContain("27 1/2 (taken 27, fitted +1/2 (bodice waist): 27 1/2)");
  const working = explain(engine, at(0));
  expect(working.calls.map(({ declaration }) => declaration.name)).toEqual(["FITTING_CHANGE", "FITTED"]);
  // Every row of the log is a cell it rests on.
  expect(engine.restsOn(at(0)).some(({ page }) => page === 1)).toBe(true);
});

test("an entry in the log moves the figure by itself, and another seam of the list can be followed too", () => {
  const store = new Store(fittedBook(), layDesk);
  store.run(commands.typeCells([{ ...at(1, 1, 2), typed: "1" }]));
  expect(store.engine.value(at(0))).toBe(28.5);
  store.run(setCells({ page: 0, top: 0, left: 1, bottom: 0, right: 1 }, { fitting: "skirt waist" }));
  expect(store.engine.value(at(0))).toBe(28.5);
  store.run(setCells({ page: 0, top: 0, left: 1, bottom: 0, right: 1 }, { fitting: undefined }));
  expect(store.engine.value(at(0))).toBe(27);
  store.undo();
  store.undo();
  store.undo();
  expect(store.book).toEqual(fittedBook());
  expect(store.engine.value(at(0))).toBe(27.5);
});

describe("the setting is carried", () => {
  const set = { page: 0, top: 0, left: 1, bottom: 0, right: 1 };

  test("through saving and opening, and an old file has none", () => {
    const book = fittedBook();
    const read = readBook(writeBook(book));
    expect("book" in read && read.book).toEqual(book);
    expect(writeBook({ ...book, pages: book.pages.map(({ cells: _, ...page }) => page) })).not.toContain(
      'fitting"',
    );
  });

  test.each([
    ["a move of the cell", commands.moveCells(set, at(5))],
    ["rows put in above it", commands.insertRows(0, 0, 2)],
    ["a page that is renamed", commands.renamePage(1, "Fittings of the play")],
    ["another unit", changeUnit("cm")],
    ["a decimal comma", commands.changeDecimal("comma")],
    ["a copy of its page", commands.copyPage(0, "Widow")],
    ["rows deleted from the log", commands.removeRows(1, 2, 1)],
  ])("through %s, and no answer moves", (_, command) => {
    const store = new Store(fittedBook(), layDesk);
    const before = store.engine.value({ page: 0, row: 1, column: 1 }) as number;
    expect(store.run(command)).toBeNull();
    const { book, engine } = store;
    const places = book.pages.flatMap((page, index) =>
      page.rows.flatMap((cells, row) =>
        cells.flatMap((typed, columnAt) =>
          typed === "=waist+1" || typed.startsWith("=waist+IN")
            ? [{ page: index, row, column: columnAt }]
            : [],
        ),
      ),
    );
    expect(places.length).toBeGreaterThan(0);
    for (const place of places)
      expect(engine.value(place) as number).toBeCloseTo(before * (book.unit === "cm" ? 2.54 : 1), 9);
    expect(checks(engine)).toEqual([]);
    // Saved and opened it is the same book with the same answers.
    const read = readBook(writeBook(book));
    if (!("book" in read)) throw new Error(read.reason);
    expect(engineOf(read.book).value(places[0]!)).toBe(engine.value(places[0]!));
    store.undo();
    expect(store.book).toEqual(fittedBook());
  });
});

test("a typed length with its unit, a fraction and a formula are all added to", () => {
  const store = new Store(fittedBook(), layDesk);
  for (const [typed, value] of [["26 1/2", 27], ["50.8 cm", 20.5], ["=26+1/2", 27], ["=WITH_EASE(26, 1)", 27.5]] as const) {
    store.run(commands.typeCells([{ ...at(0), typed }]));
    expect(store.engine.view(at(0))).toMatchObject({ typed, value });
    expect(store.engine.view(at(0)).kind).toBe("length");
  }
  store.run(commands.typeCells([{ ...at(0), typed: "" }]));
  expect(store.engine.view(at(0)).shown).toBe("");
}); // biome-ignore format: cases

describe("a problem at the cell", () => {
  const problem = (change: (book: Book) => Book) => {
    const engine = engineOf(change(fittedBook()));
    const found = checks(engine).find(({ address }) => address === "Draft!B1");
    return found?.sentence;
  };
  const following = (fitting: string) => (book: Book) => ({
    ...book,
    pages: book.pages.with(0, { ...book.pages[0]!, cells: { B1: { fitting } } }),
  });

  test("a seam that neither list knows, never a 0", () => {
    expect(problem(following("bodice wrist"))).toMatch(
      /neither the fitting log nor the list of seams knows "bodice wrist"; is "bodice waist" meant\?/,
    );
  });
  test("no log of that name", () => {
    expect(problem((book) => ({ ...book, names: { waist: "Draft!B1" } }))).toMatch(
      /^this cell follows the fittings of "bodice waist", and the book has no list named fitting_log/,
    );
  });
  test("words that name no seam, from a file", () => {
    expect(problem(following("waist"))).toMatch(
      /neither the fitting log nor the list of seams knows "waist"/,
    );
  });
  test("a text where a length was taken", () => {
    const store = new Store(fittedBook(), layDesk);
    store.run(commands.typeCells([{ ...at(0), typed: "twenty" }]));
    expect(store.engine.view(at(0)).problem?.sentence).toMatch(/flat must be a length, not "twenty"/);
  });
  test("a seam that can't be read is refused when it is set", () => {
    const store = new Store(fittedBook(), layDesk);
    expect(
      store.run(
        setCells({ page: 0, top: 0, left: 1, bottom: 0, right: 1 }, { fitting: "bodice waist, sideways" }),
      ),
    ).toMatch(/"sideways" can't stand behind a seam/);
  });
});

test("two books compared say what follows the fittings, and which answers the log moved", () => {
  const [first, second] = [fittedBook(), fittedBook()];
  const log = second.pages[1]!;
  const next = {
    ...second,
    pages: second.pages.with(1, {
      ...log,
      rows: log.rows.with(0, ["bodice", "waist", "1/2", "out", "each side"]),
    }),
  };
  const { answers } = bookDifferences(first, next, layDesk);
  expect(answers).toContainEqual({ where: "Draft!B1", label: "waist", before: "27 1/2", after: "28" });
  const bare = { ...first, pages: first.pages.with(0, { ...first.pages[0]!, cells: {} }) };
  expect(bookDifferences(bare, first, layDesk).changes).toContainEqual({
    is: "cell", where: "Draft!B1", label: "waist", before: "", after: "follows the fittings of bodice waist",
  }); // biome-ignore format: one difference
});

test("a misspelt entry of the log is listed once, with everything that it stops", () => {
  const book = fittedBook();
  const pages = book.pages.map((page, i) =>
    i === 1
      ? { ...page, rows: [["bodice", "wasit", "1/4", "out"], ...page.rows.slice(1), [], ["net", "", '=FITTING_CHANGE(fitting_log; "skirt waist"; seams)'], ["all", "", "=LOG_VERDICT(fitting_log; seams)"]] }
      : page,
  );
  const engine = engineOf({ ...book, pages });
  const found = checks(engine);
  expect(found.map(({ address, waiting, at: cells }) => [address, waiting, cells])).toEqual([
    // The log's own verdict says it best.
    ["Fit!C8", 5, [at(0, 1, 1)]],
  ]);
  for (const row of [6, 7]) expect(engine.view(at(row, 1, 2)).problem?.sentence).toBe(found[0]!.sentence);
}); // biome-ignore format: long lines
