import fc from "fast-check";
import { expect, test } from "vitest";
import { TAPE_MARKS } from "../../../functions/fractions.ts";
import { UNITS } from "../../../functions/units.ts";
import { type Block, cellAddress, type Place } from "../../../src/book/address.ts";
import { type Book, COLUMN_KINDS, type Page, STAGES } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import * as arranging from "../../../src/store/arranging.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import * as changing from "../../../src/store/changing-cells.ts";
import * as cells from "../../../src/store/commands.ts";
import * as names from "../../../src/store/names.ts";
import * as fromLabels from "../../../src/store/names-from-labels.ts";
import { type Command, Store } from "../../../src/store/store.ts";
import * as trials from "../../../src/store/trials.ts";
import { bookOf } from "../engine/whatif-books.ts";

const SEED = 20_261_127;

const at = (page: number, row: number, column: number): Place => ({ page, row, column });
const draft = bookOf({
  waist: "27 1/2",
  hip: "40",
  ease: "1,5",
  skirt: "=waist+ease",
  hem: "=SEAM_GIRTH(waist;hip;8;3)",
  cloth: "=SUM(B1:B5)",
});
const FIRST: Book = {
  ...draft,
  names: { ...draft.names, measures: "Draft!B1:B3" },
  pages: [{ ...draft.pages[0]!, hidden: ["4:5"] }, { ...draft.pages[0]!, title: "Cut", stage: "Cut", rows: [["skirt", "=waist"]] }],
  trials: [{ title: "Fuller", cells: { "Draft!B1": "30" } }],
}; // biome-ignore format: in pairs

const page = fc.nat({ max: 2 });
const row = fc.nat({ max: 9 });
const column = fc.nat({ max: 4 });
const count = fc.integer({ min: 1, max: 3 });
const place: fc.Arbitrary<Place> = fc.record({ page, row, column });
const block: fc.Arbitrary<Block> = fc
  .tuple(place, fc.nat({ max: 2 }), fc.nat({ max: 2 }))
  .map(([{ page, row, column }, down, across]) => ({
    page,
    top: row,
    left: column,
    bottom: row + down,
    right: column + across,
  }));
const typed = fc.constantFrom(
  "",
  "27",
  "16 1/2",
  "42 cm",
  "28,5",
  "linen",
  "=B1*2",
  "=waist+hip",
  "=SUM(Draft!B1:B4)",
  "=B2",
  "=((",
  "=CM(3)",
  "=SUM(sleeve)",
  "=Draft!depth+waist",
);
const title = fc.constantFrom("Sleeves", "Draft", "Over skirt", "", "a/b");
const name = fc.constantFrom("waist", "depth", "sleeve", "", "B3", "no way");
const owner = fc.constantFrom(undefined, null, 0, 1);
const trial = fc.constantFrom("As cut", "Fuller");
const newPage = title.map(
  (one): Page => ({ title: one, stage: "Draft", columns: [], rows: [["a", "=waist"]], notes: {} }),
);

/** One arbitrary for every command there is; the type asks for those that are added. */
const COMMANDS: {
  readonly [name in "changeUnit" | Exclude<keyof typeof cells, "copyOf"> | keyof typeof arranging | keyof typeof changing | keyof typeof trials | Exclude<keyof typeof names, "namingFault"> | Exclude<keyof typeof fromLabels, "offeredNames">]: fc.Arbitrary<Command>;
} = {
  typeCells: fc.array(fc.tuple(place, typed).map(([at, text]) => ({ ...at, typed: text })), { minLength: 1, maxLength: 4 }).map(cells.typeCells),
  pasteBlock: fc.tuple(place, fc.array(fc.array(typed, { minLength: 2, maxLength: 2 }), { minLength: 1, maxLength: 3 })).map(([at, texts]) => cells.pasteBlock(at, texts)),
  moveCells: fc.tuple(block, place).map(([from, to]) => cells.moveCells(from, to)),
  insertRows: fc.tuple(page, row, count).map((args) => cells.insertRows(...args)),
  removeRows: fc.tuple(page, row, count).map((args) => cells.removeRows(...args)),
  insertColumns: fc.tuple(page, column, count).map((args) => cells.insertColumns(...args)),
  removeColumns: fc.tuple(page, column, count).map((args) => cells.removeColumns(...args)),
  changeColumn: fc.tuple(page, fc.nat({ max: 2 }), fc.constantFrom(...COLUMN_KINDS)).map(([at, one, kind]) => cells.changeColumn(at, one, { kind, heading: "Changed" })),
  countColumn: fc.tuple(page, fc.nat({ max: 2 })).map((args) => cells.countColumn(...args)),
  nameCell: fc.tuple(place, name).map((args) => names.nameCell(...args)),
  nameAll: fc.tuple(fc.array(fc.record({ block, name: fc.constantFrom("girth", "cuff", "waist", "B3") }), { minLength: 1, maxLength: 2 }), fc.constantFrom(null, 0)).map((args) => fromLabels.nameAll(...args)),
  copyPage: fc.tuple(page, title).map((args) => cells.copyPage(...args)),
  nameList: fc.tuple(block, name, owner).map((args) => names.nameList(...args)),
  lengthenList: fc.tuple(fc.constantFrom("measures", "waist", "no way"), fc.constantFrom(null, 0, 7), row).map((args) => names.lengthenList(...args)),
  noteCell: fc.tuple(place, fc.constantFrom("over the stays", "")).map(([at, note]) => cells.noteCell(at.page, cellAddress(at.row, at.column), note)),
  addPage: fc.tuple(newPage, page).map(([one, at]) => cells.addPage(one, at)),
  addGarment: fc.constantFrom("the widow", "").map((label) => cells.addGarment(bookOf({ waist: "32", skirt: "=waist+1" }), label)),
  removePage: fc.nat({ max: 1 }).map(cells.removePage),
  renamePage: fc.tuple(page, title).map((args) => cells.renamePage(...args)),
  retitle: title.map(cells.retitle),
  changeUnit: fc.constantFrom(...UNITS).map(changeUnit),
  changeDecimal: fc.constantFrom("point" as const, "comma" as const).map(cells.changeDecimal),
  changeMark: fc.constantFrom(...TAPE_MARKS).map(cells.changeMark),
  moveRows: fc.tuple(page, row, count, row).map((args) => arranging.moveRows(...args)),
  moveColumns: fc.tuple(page, column, count, column).map((args) => arranging.moveColumns(...args)),
  movePage: fc.tuple(page, page, fc.constantFrom(...STAGES)).map((args) => arranging.movePage(...args)),
  sortBlock: fc.tuple(block, fc.boolean()).map(([one, down]) => changing.sortBlock(one, one.left, down, ({ row: r }) => (r * 7) % 4)),
  hideRows: fc.tuple(page, row, count).map((args) => arranging.hideRows(...args)),
  showRows: fc.tuple(page, row, count).map((args) => arranging.showRows(...args)),
  freezeColumns: fc.tuple(page, fc.nat({ max: 4 })).map((args) => arranging.freezeColumns(...args)),
  fitColumns: fc.tuple(page, column).map(([one, at]) => arranging.fitColumns(one, new Map([[at, 87]]))),
  setCells: fc.tuple(block, fc.constantFrom({ decimals: 2 }, { unit: "yd" as const }, { choices: "=Draft!A1:A3" }, {})).map((args) => changing.setCells(...args)),
  replaceTexts: place.map((one) => changing.replaceTexts([at(0, 3, 1), one], { text: "waist", exactCase: false, wholeCell: false, page: null, within: "all" }, "hip", () => null)),
  keepTrial: fc.tuple(trial, fc.array(place, { minLength: 1, maxLength: 2 })).map((args) => trials.keepTrial(...args)),
  adoptTrial: trial.map(trials.adoptTrial),
  deleteTrial: trial.map(trials.deleteTrial),
}; // biome-ignore format: a command to a line

const anyCommand = fc.oneof(
  ...Object.entries(COMMANDS).map(([key, one]) => one.map((command) => ({ key, command }))),
);

const values = (store: Store) =>
  store.book.pages.flatMap(({ rows }, index) =>
    rows.flatMap((cellsOf, r) =>
      cellsOf.map((_, c) => store.engine.view({ page: index, row: r, column: c }).shown),
    ),
  );

test("undoing everything gives back the first book and its values, and redoing everything the last ones", () => {
  const run = new Set<string>();
  const refused = new Set<string>();
  fc.assert(
    fc.property(fc.array(anyCommand, { minLength: 8, maxLength: 16 }), (list) => {
      const store = new Store(FIRST, layDesk);
      const first = values(store);
      let steps = 0;
      for (const { key, command } of list) {
        const before = store.book;
        if (store.run(command) !== null) {
          refused.add(key);
          expect(store.book, `${key} was refused and changed the book`).toBe(before);
        } else if (store.book !== before) {
          run.add(key);
          steps += 1;
          expect(store.undoable).toBe(command.label);
        }
      }
      const last = store.book;
      const shown = values(store);
      for (let i = 0; i < steps; i += 1) expect(store.undo()).toBeNull();
      expect(store.undoable).toBeUndefined();
      expect(store.book).toEqual(FIRST);
      expect(values(store)).toEqual(first);
      for (let i = 0; i < steps; i += 1) expect(store.redo()).toBeNull();
      expect(store.redoable).toBeUndefined();
      expect(store.book).toEqual(last);
      expect(values(store)).toEqual(shown);
      store.engine.destroy();
    }),
    { seed: SEED, numRuns: 60 },
  );
  expect(Object.keys(COMMANDS).filter((key) => !run.has(key))).toEqual([]);
  for (const key of ["nameCell", "renamePage", "retitle"]) expect(refused).toContain(key);
});

test("a new command after an undo ends the steps that could be done again", () => {
  const store = new Store(FIRST, layDesk);
  store.run(cells.retitle("The widow's apron"));
  store.run(cells.retitle("The widow's cloak"));
  store.undo();
  expect([store.book.title, store.redoable]).toEqual(["The widow's apron", cells.retitle("").label]);
  store.run(cells.noteCell(0, "A1", "over the stays"));
  expect(store.redoable).toBeUndefined();
  store.undo();
  store.undo();
  expect(store.book).toEqual(FIRST);
});

test("a command that changes nothing is no step", () => {
  const store = new Store(FIRST, layDesk);
  for (const command of [cells.changeMark(FIRST.mark), changeUnit(FIRST.unit)]) store.run(command);
  expect(store.undoable).toBeUndefined();
});

test("what waits to be kept is kept before a command, and undo then takes it back while redo can still follow", () => {
  const store = new Store(FIRST, layDesk);
  let waiting: string | null = "31";
  store.beforeStep = () => {
    const typed = waiting;
    waiting = null;
    if (typed !== null) store.run(cells.typeCells([{ ...at(0, 0, 1), typed }]));
  };
  const waist = () => store.book.pages[0]!.rows.map(([, typed]) => typed);
  store.run(cells.insertRows(0, 0, 1));
  expect(waist().slice(0, 2)).toEqual([undefined, "31"]);
  waiting = "33";
  store.undo();
  expect(waist()[0]).toBe(undefined);
  expect(waist()[1]).toBe("31");
  expect(store.redo()).toBeNull();
  expect(waist()[0]).toBe("33");
});
