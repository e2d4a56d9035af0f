import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { describe, expect, test } from "vitest";
import { findPlace, fullAddress } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import { nameCell } from "../../../src/book/naming.ts";
import { type Book, blankBook, LONGEST, MOST_COLUMNS, MOST_ROWS, typedAt } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { book, COLUMNS, ROWS, TITLES } from "./books.ts";

const seed = 20_260_510;
const blank = blankBook("Withy Green", "in", "1/8");
const onDraft = (rows: string[][], more: Partial<Book> = {}): Book => ({
  ...blank,
  pages: blank.pages.map((page) => (page.title === "Draft" ? { ...page, rows } : page)),
  ...more,
});
const DRAFT = 1;
const index = fc.nat(TITLES.length - 1);

describe("rows and columns", () => {
  const ways = {
    rows: [edit.insertRows, edit.removeRows],
    columns: [edit.insertColumns, edit.removeColumns],
  } as const;

  test.each(["rows", "columns"] as const)(
    "%s put in and taken out again leave the book as it was",
    (which) => {
      const [put, take] = ways[which];
      fc.assert(
        fc.property(book, index, fc.nat(6), fc.integer({ min: 1, max: 3 }), (one, page, at, count) => {
          fc.pre(which === "rows" || at <= COLUMNS);
          expect(writeBook(take(put(one, page, at, count), page, at, count))).toBe(writeBook(one));
        }),
        { seed, numRuns: 150 },
      );
    },
  );

  test("a named cell keeps what is typed in it, and one taken out loses its name", () => {
    fc.assert(
      fc.property(book, index, fc.nat(ROWS), fc.boolean(), fc.boolean(), (one, page, at, rows, out) => {
        fc.pre(rows || at < COLUMNS - 1);
        const change = rows
          ? out ? edit.removeRows : edit.insertRows
          : out ? edit.removeColumns : edit.insertColumns; // biome-ignore format: a table
        const next = change(one, page, at, 1);
        for (const [name, address] of Object.entries(one.names)) {
          const was = findPlace(one, address)!;
          const gone = out && was.page === page && (rows ? was.row : was.column) === at;
          expect(name in next.names).toBe(!gone);
          if (gone) continue;
          const is = findPlace(next, next.names[name]!)!;
          const [before, after] = [one, next].map((b, i) => {
            const { row, column } = i === 0 ? was : is;
            return typedAt(b, was.page, row, column);
          });
          if (!before!.startsWith("=")) expect(after).toBe(before);
        }
      }),
      { seed, numRuns: 300 },
    );
  });

  test("names move as the engine's named expressions do", () => {
    fc.assert(
      fc.property(
        index,
        index,
        fc.nat(4),
        fc.nat(3),
        fc.nat(4),
        fc.boolean(),
        (at, page, row, column, from, rows) => {
          fc.pre(rows || from < COLUMNS);
          const pages = TITLES.map((title) => ({
            ...blank.pages[0]!,
            title,
            rows: Array.from({ length: ROWS }, () => Array<string>(COLUMNS).fill("1")),
          }));
          const one: Book = { ...blank, pages };
          const named = nameCell(one, { page: at, row, column }, "hem");
          const hf = HyperFormula.buildFromSheets(
            Object.fromEntries(
              pages.map(({ title, rows: typed }) => [title, typed.map((list) => [...list])]),
            ),
            { licenseKey: "gpl-v3" },
            [{ name: "hem", expression: `=${named.names.hem!.replace(/([A-Z]+)(\d+)$/, "$$$1$$$2")}` }],
          );
          if (rows) hf.addRows(page, [from, 2]);
          else hf.addColumns(page, [from, 2]);
          const next = (rows ? edit.insertRows : edit.insertColumns)(named, page, from, 2);
          expect(`=${next.names.hem}`).toBe(hf.getNamedExpressionFormula("hem")!.replaceAll("$", ""));
          hf.destroy();
        },
      ),
      { seed, numRuns: 60 },
    );
  });

  test("notes, trials and what trials type follow their cells", () => {
    const one = onDraft(
      [
        ["a", "1"],
        ["b", "=B1"],
        ["c", "3"],
      ],
      {
        trials: [
          { title: "deeper", cells: { "Draft!B1": "2", "Draft!B3": "=B2*2", "Measure!B3": "=B2+Draft!B2" } },
        ],
      },
    );
    const noted = edit.noteCell(edit.noteCell(one, DRAFT, "B2", "mind this"), DRAFT, "A3", "and this");
    const next = edit.insertRows(noted, DRAFT, 1, 2);
    expect(next.pages[DRAFT]!.notes).toEqual({ B4: "mind this", A5: "and this" });
    expect(next.trials[0]!.cells).toEqual({
      "Draft!B1": "2",
      "Draft!B5": "=B4*2",
      "Measure!B3": "=B2+Draft!B4",
    });
    const fewer = edit.removeRows(next, DRAFT, 3, 1);
    expect(fewer.pages[DRAFT]!.notes).toEqual({ A4: "and this" });
    expect(fewer.trials[0]!.cells).toEqual({
      "Draft!B1": "2",
      "Draft!B4": "=#REF!*2",
      "Measure!B3": "=B2+#REF!",
    });
  });

  test("the last column of a page stays", () => {
    const next = edit.removeColumns(blank, 0, 0, 99);
    expect(next.pages[0]!.columns).toHaveLength(1);
    expect(edit.removeColumns(next, 0, 0, 1)).toBe(next);
  });

  test("a wider page moves nothing, not even what names cells beyond its last column", () => {
    const one = onDraft([["=E1", "=SUM(D1:F1)"]]);
    const next = edit.widen(one, DRAFT, 5);
    expect(next.pages[DRAFT]!.columns).toHaveLength(5);
    expect(next.pages[DRAFT]!.rows).toBe(one.pages[DRAFT]!.rows);
  });
});

describe("typing", () => {
  test("changes the cells typed in and shares every other row with the book before", () => {
    fc.assert(
      fc.property(book, index, fc.nat(7), fc.nat(5), fc.string(), (one, page, row, column, typed) => {
        const next = edit.type(one, [{ page, row, column, typed }]);
        expect(typedAt(next, page, row, column)).toBe(typed);
        one.pages.forEach((was, p) => {
          const is = next.pages[p]!;
          if (p !== page) expect(is).toBe(was);
          was.rows.forEach((cells, r) => {
            if (p !== page || r !== row) expect(is.rows[r]).toBe(cells);
          });
        });
      }),
      { seed, numRuns: 200 },
    );
  });

  test("what stands there already is no change at all", () => {
    const one = onDraft([["a", "1"]]);
    expect(
      edit.type(one, [
        { page: DRAFT, row: 0, column: 1, typed: "1" },
        { page: DRAFT, row: 90, column: 1, typed: "" },
      ]),
    ).toBe(one);
  });

  test("of several texts for one cell the last stays", () => {
    const cell = { page: DRAFT, row: 0, column: 0 };
    expect(
      typedAt(
        edit.type(blank, [
          { ...cell, typed: "a" },
          { ...cell, typed: "b" },
        ]),
        DRAFT,
        0,
        0,
      ),
    ).toBe("b");
  });

  test("too far out or too long is told", () => {
    const at = (row: number, column: number, typed = "a") =>
      edit.typingFault([{ page: 0, row, column, typed }]);
    expect(at(MOST_ROWS, 0)).toBe("a page has at most 20000 rows");
    expect(at(0, MOST_COLUMNS)).toBe("a page has at most 200 columns");
    expect(at(0, 0, "x".repeat(LONGEST.typed + 1))).toBe(
      "a cell holds at most 100000 characters, not 100001",
    );
    expect(at(MOST_ROWS - 1, MOST_COLUMNS - 1, "x".repeat(LONGEST.typed))).toBeNull();
  });
});

describe("pages", () => {
  test("a page called otherwise and called back is as it was", () => {
    fc.assert(
      fc.property(book, index, (one, page) => {
        const { title } = one.pages[page]!;
        const there = edit.renamePage(one, page, "Cut list");
        expect(there.pages[page]!.title).toBe("Cut list");
        for (const address of Object.values(there.names)) expect(findPlace(there, address)).not.toBeNull();
        expect(writeBook(edit.renamePage(there, page, title))).toBe(writeBook(one));
      }),
      { seed, numRuns: 150 },
    );
  });

  test("a page taken out takes its names and its trials' cells along; formulas say what they lost", () => {
    const one: Book = {
      ...onDraft([["=Measure!B1+SUM(Measure!A:B)+C1"]]),
      names: { waist: "Measure!B1", hem: "Draft!A1" },
      trials: [{ title: "t", cells: { "Measure!B1": "27", "Draft!B9": "=Measure!B1" } }],
    };
    const next = edit.removePage(one, 0);
    expect(next.pages[0]!.rows[0]).toEqual(["=#REF!+SUM(#REF!)+C1"]);
    expect(next.names).toEqual({ hem: "Draft!A1" });
    expect(next.trials[0]!.cells).toEqual({ "Draft!B9": "=#REF!" });
  });

  test("the last page stays", () => {
    const one = { ...blank, pages: [blank.pages[0]!] };
    expect(edit.removePage(one, 0)).toBe(one);
  });
});

describe("names", () => {
  const one = onDraft([["=Hem+hem*2", "=HEM_AT(hem;2;3;4)", '="hem"']], {
    names: { hem: "Draft!B9", waist: "Draft!B8" },
    trials: [{ title: "t", cells: { "Draft!B9": "=waist+hem" } }],
  });

  test("formulas and trials follow a new name, functions and texts do not", () => {
    const next = nameCell(one, { page: DRAFT, row: 8, column: 1 }, "hem_round");
    expect(next.pages[DRAFT]!.rows[0]).toEqual([
      "=hem_round+hem_round*2",
      "=HEM_AT(hem_round;2;3;4)",
      '="hem"',
    ]);
    expect(next.trials[0]!.cells["Draft!B9"]).toBe("=waist+hem_round");
    expect(next.names).toEqual({ waist: "Draft!B8", hem_round: "Draft!B9" });
  });

  test("a name taken away leaves the formulas as they were typed", () => {
    const next = nameCell(one, { page: DRAFT, row: 8, column: 1 }, "");
    expect(next.pages).toBe(one.pages);
    expect(next.names).toEqual({ waist: "Draft!B8" });
  });

  test("naming a cell names that cell, wherever it is", () => {
    fc.assert(
      fc.property(book, index, fc.nat(9), fc.nat(9), (b, page, row, column) => {
        const next = nameCell(b, { page, row, column }, "brim");
        expect(next.names.brim).toBe(fullAddress(b, { page, row, column }));
      }),
      { seed, numRuns: 60 },
    );
  });
});
