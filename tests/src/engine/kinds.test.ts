import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { type Book, blankBook, COLUMN_KINDS, type ColumnKind } from "../../../src/book/shape.ts";
import { atOnce } from "../../../src/engine/at-once.ts";
import { KindCells } from "../../../src/engine/kind-cells.ts";
import { Kinds } from "../../../src/engine/kinds.ts";
import { moveRows } from "../../../src/store/arranging.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import * as commands from "../../../src/store/commands.ts";
import { nameList } from "../../../src/store/names.ts";
import type { Command } from "../../../src/store/store.ts";
import { Random } from "../../attack/random.ts";
import { often } from "../../often.ts";

const [ROWS, COLUMNS] = [9, 5];
/** SEEDS=500 tries more books. */
const SEEDS = Number(process.env.SEEDS ?? often(40));

const PLAIN = [
  "", "", "27", "40", "12 1/2", "1/2", "tight", "-", " ", "12 cm", "2026-05-04", "5%", "M 0 0 L 1 1", "piece", "quantity", "TRUE",
]; // biome-ignore format: a table

/** Formulas of x, y and z, cells at the left of their own. */
const FORMULAS = [
  "=x", "=x", "=x+y", "=x*2", "=1/x", "=SUM(x:y)", "=SUM(A:A)/2", "=WITH_EASE(x;y)", "=EASE(x;y)", "=SPREAD_PER_GAP(x;y;z)", '=IF(x>30;"wide";"ok")',
  "=waist+x", "=x*y", "=x/y", "=x-y", "=MAX(x:y)", "=VLOOKUP(x;A1:B6;2)", "=Draft!x*y", "=SQRT(x)", "=x*y*z", "=YARDAGE(x;y;54)",
  "=LIST_SUM(A1:B6;x;y)", "=PIECE_AREA(x)", "=SUM(list)*x",
]; // biome-ignore format: a table

/** What is typed in a column. Formulas name cells at their left, and with this chance any cells, so that some go round in circles. */
function typedFor(random: Random, column: number, circular: number): string {
  if (column === 0 || random.chance(0.4)) return random.pick(PLAIN);
  const cell = () =>
    `${"ABCDE"[random.below(random.chance(circular) ? COLUMNS : column)]}${1 + random.below(ROWS)}`;
  return random.pick(FORMULAS).replace(/\b[xyz]\b/g, cell);
}

function start(random: Random, circular: number): Book {
  const blank = blankBook("The widow's skirt", "cm", "1 mm");
  const column = () => ({
    heading: random.pick(["", "piece", "width"]),
    kind: random.pick<ColumnKind>(["any", "any", ...COLUMN_KINDS]),
    width: 90,
  });
  const pages = blank.pages.slice(0, 2).map((page) => ({
    ...page,
    columns: random.many(COLUMNS, column),
    rows: random.many(ROWS, () => Array.from({ length: COLUMNS }, (_, at) => typedFor(random, at, circular))),
  })); // biome-ignore format: short
  return { ...blank, pages, names: { waist: "Measure!A3", list: "Draft!A2:A5" } };
}

function commandOf(random: Random, book: Book, circular: number): Command {
  const page = random.below(book.pages.length);
  const [row, column] = [random.below(ROWS + 3), random.below(COLUMNS + 1)];
  const cell = { page, top: row, left: column, bottom: row, right: column };
  const typing = () => {
    const at = random.below(COLUMNS);
    return { page, row: random.below(ROWS), column: at, typed: typedFor(random, at, circular) };
  };
  if (random.chance(0.85)) return commands.typeCells(random.many(1 + random.below(3), typing));
  const others: (() => Command)[] = [
    () => commands.insertRows(page, row, 1),
    () => commands.removeRows(page, row, 1),
    () => commands.insertColumns(page, column, 1),
    () => moveRows(page, row, 1, random.below(ROWS)),
    () => commands.changeColumn(page, column, { kind: random.pick(COLUMN_KINDS) }),
    () => nameList(cell, random.pick(["waist", "chest"]), null),
    () => commands.removePage(page),
    () => commands.renamePage(page, `Page ${random.below(1000)}`),
    () => changeUnit(random.pick(["cm", "in"] as const)),
  ]; // biome-ignore format: a list
  return random.pick(others)();
}

/** The kinds of every cell and of some beyond the rows. */
const all = (kinds: Kinds, book: Book): string[] =>
  book.pages.flatMap((_, page) =>
    Array.from({ length: ROWS + 4 }, (__, row) =>
      Array.from({ length: COLUMNS + 2 }, (___, column) => kinds.of({ page, row, column })).join(" "),
    ),
  );

test("after every edit, undo and redo the kinds are those of the book opened anew, with circles too", () => {
  let [followed, seen, inCircles] = [0, 0, 0];
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const random = new Random(seed);
    // Every fourth book is full of circles, and comes into and out of them.
    const circular = seed % 4 === 0 ? 0.4 : 0.02;
    let book = start(random, circular);
    let kinds = new Kinds(book);
    all(kinds, book);
    const past = [book];
    for (let step = 0; step < 12; step += 1) {
      all(kinds, book);
      const next = random.chance(0.15) ? random.pick(past) : commandOf(random, book, circular).edit(book);
      if ("refusal" in next) continue;
      kinds = kinds.follow(next);
      followed += kinds.isFollowed ? 1 : 0;
      book = next;
      past.push(book);
      expect(all(kinds, book), `seed ${seed}, step ${step}`).toEqual(all(new Kinds(book), book));
      seen += 1;
      const cells = new KindCells(book);
      atOnce(cells.read());
      if (cells.circles.size > 0) inCircles += 1;
    }
  }
  expect(followed / seen).toBeGreaterThan(0.3);
  expect(inCircles / seen).toBeGreaterThan(0.2);
});

const sheet = (rows: readonly (readonly string[])[]): Book =>
  type(
    {
      ...blankBook("Skirt", "cm", "1 mm"),
      pages: blankBook("", "cm", "1 mm").pages.map((page) => ({ ...page, columns: [] })),
    },
    rows.flatMap((cells, row) => cells.map((typed, column) => ({ page: 0, row, column, typed }))),
  );

test("a figure is a length as soon as a formula takes it for one, and none when the formula is gone", () => {
  const book = sheet([["30", ""]]);
  const at = { page: 0, row: 0, column: 0 };
  let kinds = new Kinds(book);
  expect(kinds.of(at)).toBe("figure");
  const asked = type(book, [{ page: 0, row: 0, column: 1, typed: "=EASE(A1;90)" }]);
  kinds = kinds.follow(asked);
  expect(kinds.of(at)).toBe("length");
  expect(kinds.follow(book).of(at)).toBe("figure");
});

test("a heading typed anew changes the kinds of its column", () => {
  const list = [
    ["piece", "width"],
    ["front", "30"],
  ];
  const formula = "=CUT_COUNT(A1:B2)";
  const book = type(sheet(list), [{ page: 0, row: 0, column: 3, typed: formula }]);
  const next = type(book, [{ page: 0, row: 0, column: 1, typed: "quantity" }]);
  const kinds = new Kinds(book);
  kinds.of({ page: 0, row: 1, column: 1 });
  expect(kinds.follow(next).of({ page: 0, row: 1, column: 1 })).toBe(
    new Kinds(next).of({ page: 0, row: 1, column: 1 }),
  );
});
