/**
 * What large changes of a book cost, against building that book anew; in one run, for timings on a
 * busy machine say little by themselves.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/paste.speed.ts
 */
import { it } from "vitest";
import { readBook } from "../../src/book/read.ts";
import { type Book, blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { checks } from "../../src/engine/checks.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { changeUnit } from "../../src/store/change-unit.ts";
import {
  insertColumns,
  insertRows,
  moveCells,
  pasteBlock,
  renamePage,
  typeCells,
} from "../../src/store/commands.ts";
import { Store } from "../../src/store/store.ts";

/** Processor time of this process in milliseconds. */
const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const cost = (act: () => void): number => {
  const began = worked();
  act();
  return worked() - began;
};

const blank = blankBook("Withy Green", "in", "1/8");
const start = { page: 0, row: 0, column: 0 };
/** Figures, tape fractions and texts; with `formulas` a third of the cells are worked out. */
const block = (rows: number, columns: number, formulas: boolean): string[][] =>
  Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) =>
      c % 3 === 0
        ? String(r)
        : c % 3 === 1
          ? `${r % 50} 1/2`
          : formulas
            ? `=A${r + 1}*2+B${r + 1}`
            : `text ${r}`,
    ),
  );

const anew = (book: Book): void => {
  const engine = new Engine(book, layDesk);
  engine.view(start);
  void engine.uncounted;
  engine.destroy();
};

it.each([
  [19_900, 3, false],
  [6000, 3, true],
  [1000, 190, false],
  [300, 190, true],
])("%i × %i cells, formulas: %s", (rows, columns, formulas) => {
  const store = new Store(blank, layDesk);
  store.run(typeCells([{ page: 1, row: 0, column: 1, typed: "=SUM(Measure!A:B)" }]));
  const seen = (act: () => void) => () => {
    act();
    store.engine.view(start);
    void store.engine.uncounted;
  };
  const cells = block(rows, columns, formulas);
  const whole = { page: 0, top: 0, left: 0, bottom: rows - 1, right: columns - 1 };
  const steps: [string, () => void][] = [
    ["paste", seen(() => store.run(pasteBlock(start, cells)))],
    ["undo", seen(() => store.undo())],
    ["redo", seen(() => store.redo())],
    ["put a row in", seen(() => store.run(insertRows(0, 0, 1)))],
    ["put a column in", seen(() => store.run(insertColumns(0, 0, 1)))],
    ["move the block", seen(() => store.run(moveCells(whole, { page: 0, row: 5, column: 4 })))],
    ["call a page otherwise", seen(() => store.run(renamePage(0, "Figures")))],
    ["another unit", seen(() => store.run(changeUnit("cm")))],
    ["type a figure", seen(() => store.run(typeCells([{ ...start, row: 50, column: 8, typed: "7" }])))],
    ["type a formula", seen(() => store.run(typeCells([{ ...start, row: 50, column: 8, typed: "=7*2" }])))],
    ["list what to look at", () => checks(store.engine)],
    ["write, read and open", () => {
      const reading = readBook(writeBook(store.book));
      if ("book" in reading) seen(() => store.open(reading.book))();
    }],
  ]; // biome-ignore format: a table
  console.log(
    `${rows} × ${columns}${formulas ? ", a third of them formulas" : ""}: cost of a step over that of building its book anew`,
  );
  for (const [name, act] of steps) {
    const before = store.book;
    const spent = cost(act);
    // Undo leaves little: it is measured by what it takes away.
    const build = cost(() => anew(name === "undo" ? before : store.book));
    console.log(
      `${(spent / build).toFixed(2).padStart(8)}  ${name} (${spent.toFixed(0)} ms, built anew ${build.toFixed(0)} ms)`,
    );
  }
});
