import { expect, test } from "vitest";
import { comparePlaces, type Place, placeKey } from "../../../src/book/address.ts";
import { isFormula } from "../../../src/book/formula.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { causes } from "../../../src/engine/cause-keys.ts";
import { checks } from "../../../src/engine/checks.ts";
import { choicesSet } from "../../../src/engine/choices.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { fittingOf } from "../../../src/engine/fitted-cells.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { moveRows } from "../../../src/store/arranging.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import { setCells } from "../../../src/store/changing-cells.ts";
import * as commands from "../../../src/store/commands.ts";
import { nameList } from "../../../src/store/names.ts";
import { type Command, Store } from "../../../src/store/store.ts";
import { Random } from "../../attack/random.ts";
import { often } from "../../often.ts";

const [ROWS, COLUMNS] = [9, 4];
/** SEEDS=100 tries more edits. */
const SEEDS = Number(process.env.SEEDS ?? often(8));

/** Texts that make every kind of problem, and mend it. */
const TYPED = [
  "", "", "27", "40", "12 1/2", "tight", "-", "=A1", "=B2+C3", "=B1*2", "=1/B4", "=SUM(A1:A6)", "=SUM(B:B)/2",
  "=WITH_EASE(B1;B2)", "=EASE(A1;C2)", "=SPREAD_PER_GAP(B1;B2;C1)", "=SPREAD_PER_GAP(B3;B2;C2)", '=IF(B1>30;"check: too wide";"ok")',
  '=COUNTIF(A1:A6;"tihgt")', "=D1", "=C1+D2", "=waist+1", "=waist", "=NOSUCH(1)", "=IFERROR(B1/A2;0)", "=B9", "=EASE(20;90)",
]; // biome-ignore format: a table

function start(random: Random): Book {
  const blank = blankBook("The widow's skirt", "cm", "1 mm");
  const columns = Array.from({ length: COLUMNS }, () => ({ heading: "", kind: "any" as const, width: 90 }));
  const pages = blank.pages.slice(0, 2).map((page) => ({
    ...page,
    columns,
    rows: random.many(ROWS, () => random.many(COLUMNS, () => random.pick(TYPED))),
  }));
  return { ...blank, pages };
}

/** Another figure in the place of one: most edits of a book are of this kind. */
function otherFigure(random: Random, book: Book): Command {
  const places = book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((typed, column) => (/^\d/.test(typed) ? [{ page, row, column }] : [])),
    ),
  );
  const typed = random.pick(["3", "33", "0", "12 cm", "1/2"]);
  return commands.typeCells(places.length > 0 ? [{ ...random.pick(places), typed }] : []);
}

function commandOf(random: Random, book: Book): Command {
  const page = random.below(book.pages.length);
  const [row, column] = [random.below(ROWS), random.below(COLUMNS)];
  const cell = { page, top: row, left: column, bottom: row, right: column };
  const typing = () => commands.typeCells([{ page, row, column, typed: random.pick(TYPED) }]);
  const others: (() => Command)[] = [
    () => commands.insertRows(page, row, 1),
    () => commands.removeRows(page, row, 1),
    () => commands.insertColumns(page, column, 1),
    () => commands.removeColumns(page, column, 1),
    () => moveRows(page, row, 1, random.below(ROWS)),
    () => commands.moveCells({ ...cell, bottom: row + 1 }, { page, row: random.below(ROWS), column: random.below(COLUMNS) }),
    () => commands.changeColumn(page, column, { kind: random.pick(["any", "text", "length"] as const) }),
    () => setCells(cell, { choices: random.pick(["27; 40", "wide; tight", "=A1:A3"]) }),
    () => setCells(cell, { fitting: "side seam" }),
    () => nameList(cell, random.pick(["waist", ""]), null),
    () => commands.copyPage(page, `Copy ${random.below(1000)}`),
    () => commands.removePage(page),
    () => commands.renamePage(page, `Page ${random.below(1000)}`),
    () => changeUnit(random.pick(["cm", "in"] as const)),
  ]; // biome-ignore format: a list
  const turn = random.next();
  if (turn > 0.6) return random.pick(others)();
  return turn < 0.2 ? otherFigure(random, book) : typing();
}

/** The places of the problems that begin in a cell of their own, found by a look at every cell: of those with one cause the first. */
function byEveryCell(engine: Engine): string[] {
  type Found = Parameters<typeof causes>[1][number];
  const found = new Map<string, Found>();
  const look = (place: Place, typed: string) => {
    const asked =
      typed !== "" &&
      (choicesSet(engine.book, place) !== undefined || fittingOf(engine.book, place) !== undefined);
    const { problem } = isFormula(typed) || asked ? engine.view(place) : { problem: null };
    if (!problem || placeKey(problem.from) !== placeKey(place)) return;
    const { is, sentence, at = [], stopped = false } = problem;
    if (is !== "uncounted" && is !== "pending")
      found.set(placeKey(place), { place, is, sentence, at, stopped });
  };
  engine.book.pages.forEach(({ rows }, page) => {
    rows.forEach((cells, row) => {
      cells.forEach((typed, column) => {
        look({ page, row, column }, typed);
      });
    });
  });
  for (const { place, is, sentence, first } of engine.uncounted.values())
    if (first) found.set(placeKey(place), { place, is, sentence, at: [], stopped: false });
  const inOrder = [...found.values()].sort((a, b) => comparePlaces(a.place, b.place));
  const { firstOf } = causes(engine.worked, inOrder, (place) => engine.pointedAt(place));
  return inOrder.filter((one) => firstOf(one) === one).map(({ place }) => placeKey(place));
}

test("after every edit the problems are those of a fresh engine, and no cell with one is passed over", () => {
  let seen = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const random = new Random(seed);
    const store = new Store(start(random), layDesk);
    checks(store.engine);
    for (let step = 0; step < 20; step += 1) {
      const turn = random.next();
      if (turn < 0.12) store.undo();
      else if (turn < 0.2) store.redo();
      else store.run(commandOf(random, store.book));
      // Several edits may come between two looks at the list.
      if (random.chance(0.25)) continue;
      const found = checks(store.engine);
      const fresh = new Engine(store.book, layDesk);
      expect(found, `seed ${seed}, step ${step}`).toEqual(checks(fresh));
      expect(
        found.map(({ place }) => placeKey(place)),
        `seed ${seed}, step ${step}`,
      ).toEqual(byEveryCell(fresh));
      seen += found.length;
      fresh.destroy();
    }
    store.engine.destroy();
  }
  expect(seen).toBeGreaterThan(SEEDS * 40);
});
