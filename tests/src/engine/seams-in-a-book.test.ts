import fc from "fast-check";
import { expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import { setCells } from "../../../src/store/changing-cells.ts";
import * as commands from "../../../src/store/commands.ts";
import { type Command, Store } from "../../../src/store/store.ts";

const page = (title: string, headings: string, rows: string[][], cells?: Page["cells"]): Page => ({
  title,
  stage: "Draft",
  columns: headings.split(", ").map((heading) => ({ heading, kind: "any", width: 100 })),
  rows,
  notes: {},
  ...(cells && { cells }),
});

/** A bodice and a skirt, each of two pieces; `follows` says whether the skirt's waist follows the fittings too. */
function gown(follows: boolean, amount = "0"): Book {
  return {
    ...blankBook("Gown", "in", "1/8"),
    pages: [
      page(
        "Draft",
        "What, Value",
        [["Waist of the bodice", "28"], ["Waist of the skirt", "28"]],
        { B1: { fitting: "bodice bottom" }, ...(follows && { B2: { fitting: "skirt top" } }) },
      ),
      page("Pieces", "Piece, Outline, How many, Hem, Cloth", [
        ["bodice", "=RECTANGLE(waist/2;15)", "2"],
        ["skirt", "=FLARED_PANEL(skirt_waist/2;skirt_waist;38)", "2", '=EDGE_LENGTH(B2;"hem")', "=YARDAGE(B2;C2;54)"],
        ["flounce", "=RECTANGLE(3*skirt_waist;5)", "1"],
      ]),
      page("Seams", "Piece, Edge, Sewn to, Its edge, How, Wanted difference, Verdict", [
        ["bodice", "bottom", "skirt", "top", "plain", "", "=SEAM_VERDICT(seams;pieces;A1;B1;C1;D1)"],
        ["flounce", "top", "skirt", "hem", "gathered", "28", "=SEAM_VERDICT(seams;pieces;A2;B2;C2;D2)"],
      ]),
      page("Fit", "Piece, Seam, Amount, In or out", [["bodice", "bottom", amount, "out"]]),
    ],
    names: {
      waist: "Draft!B1", skirt_waist: "Draft!B2", pieces: "Pieces!A1:C3", seams: "Seams!A1:F3", fitting_log: "Fit!A1:D3",
    },
  }; // biome-ignore format: a book
}

function answers(book: Book) {
  const engine = new Engine(book, layDesk);
  const value = (at: number, row: number, column: number) => engine.value({ page: at, row, column });
  return {
    skirt: value(0, 1, 1) as number,
    hem: value(1, 1, 3) as number,
    cloth: value(1, 1, 4) as number,
    verdicts: [value(2, 0, 6), value(2, 1, 6)],
    problems: checks(engine).map(({ sentence }) => sentence),
  };
}

test("letting the bodice out by half an inch lengthens the skirt's seam, its hem and its cloth", () => {
  const before = answers(gown(true));
  const after = answers(gown(true, "1/2"));
  expect(before.verdicts).toEqual(["ok", "ok"]);
  expect(after.skirt).toBe(28.5);
  expect(after.hem - before.hem).toBeCloseTo(0.5, 9);
  expect(after.cloth).toBeGreaterThan(before.cloth);
  expect(after.verdicts[0]).toBe("ok");
});

test("where the skirt does not follow, the seam's verdict reports the difference", () => {
  const { skirt, problems } = answers(gown(false, "1/2"));
  expect(skirt).toBe(28);
  expect(problems).toEqual([
    "at each of 2 such seams the bodice's bottom is 14 1/4 in and the skirt's top 14 in, the first 1/4 in longer; they should be equally long",
  ]);
});

test("bare figures of the wanted differences and of the log are lengths, and move with the unit", () => {
  const book = gown(true, "1/2");
  const metric = convertBook(book, "cm");
  expect(metric.pages[2]!.rows[1]![5]).toBe("71.12");
  expect(metric.pages[3]!.rows[0]![2]).toBe("1.27 cm");
  expect(answers(metric).verdicts[1]).toMatch(/the first 72.4 cm longer; the first should be 71.1 cm longer/);
  expect(answers(metric).skirt).toBeCloseTo(28.5 * 2.54, 9);
  // The name of a seam and how it is sewn are words.
  expect(metric.pages[2]!.rows[1]!.slice(0, 5)).toEqual(book.pages[2]!.rows[1]!.slice(0, 5));
});

/** Steps that a maker takes with such a book, at random. */
const steps = fc.oneof<fc.Arbitrary<Command>[]>(
  fc
    .record({ row: fc.nat(1), typed: fc.constantFrom("28", "27 1/2", "70 cm", "=26+1", "") })
    .map(({ row, typed }) => commands.typeCells([{ page: 0, row, column: 1, typed }])),
  fc
    .record({ column: fc.constantFrom(2, 3), typed: fc.constantFrom("1/2", "1", "in", "out", "0") })
    .map(({ column, typed }) => commands.typeCells([{ page: 3, row: 0, column, typed }])),
  fc
    .record({
      row: fc.nat(2),
      fitting: fc.constantFrom("bodice bottom", "skirt top", "skirt hem", undefined),
    })
    .map(({ row, fitting }) => setCells({ page: 0, top: row, left: 1, bottom: row, right: 1 }, { fitting })),
  fc.nat(3).map((at) => commands.insertRows(0, at, 1)),
  fc.nat(2).map((at) => commands.insertRows(3, at, 1)),
  fc
    .nat(1)
    .map((row) =>
      commands.moveCells(
        { page: 0, top: row, left: 1, bottom: row, right: 1 },
        { page: 0, row: row + 4, column: 1 },
      ),
    ),
  fc.constantFrom(changeUnit("cm"), changeUnit("in"), commands.changeDecimal("comma")),
  fc.constantFrom(commands.copyPage(0, "Another"), commands.renamePage(3, "Log")),
);

test("whatever is done, the engine that followed has the answers of one built anew, a saved book opens as the same, and undo leads back", () => {
  fc.assert(
    fc.property(fc.array(steps, { minLength: 1, maxLength: 6 }), (list) => {
      // Without the length of cloth, whose lays take long.
      const { pages, ...whole } = gown(true, "1/2");
      const rows = pages[1]!.rows.map((row) => row.slice(0, 4));
      const start = { ...whole, pages: pages.with(1, { ...pages[1]!, rows }) };
      const store = new Store(start, layDesk);
      let done = 0;
      for (const step of list) {
        const { book } = store;
        if (store.run(step) === null && store.book !== book) done += 1;
      }
      const saved = readBook(writeBook(store.book));
      if (!("book" in saved)) throw new Error(saved.reason);
      expect(writeBook(saved.book)).toBe(writeBook(store.book));
      const anew = new Engine(saved.book, layDesk);
      store.book.pages.forEach(({ rows }, at) => {
        rows.forEach((cells, row) => {
          cells.forEach((_, column) => {
            const place = { page: at, row, column };
            const [here, there] = [store.engine.view(place), anew.view(place)];
            expect([here.shown, here.problem?.sentence]).toEqual([there.shown, there.problem?.sentence]);
          });
        });
      });
      anew.destroy();
      for (let i = 0; i < done; i += 1) store.undo();
      expect(store.book).toEqual(start);
    }),
    { seed: 20261127, numRuns: 12 },
  );
});
