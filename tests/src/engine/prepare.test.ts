import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { atOnce } from "../../../src/engine/at-once.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { prepare } from "../../../src/engine/prepare.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { Random } from "../../attack/random.ts";
import { often } from "../../often.ts";

const [ROWS, COLUMNS] = [20, 6];
/** SEEDS=100 tries more books. */
const SEEDS = Number(process.env.SEEDS ?? often(10));

const entryOf = (random: Random, row: number): string =>
  random.pick([
    "", "27", "40", "12 1/2", "30 cm", "tight", "-", `=B${row}*2`, `=C${random.between(1, ROWS)}+1`, "=waist+2", "=waist", "=B1/D4", "=NOSUCH(1)",
    `=SUM(A${row}:C${row})`, `=SUM(B$1:B${row})/2`, "=SUM(C:C)", "=MAX(tried)", `=EASE(A${row};waist)`, "=1/0", "=((", "=Draft!B3+1", "=Measure!E5",
    `=SPREAD_PER_GAP(B${row};B2;C1)`, `=IF(B${row}>30;"check: too wide";"ok")`, '=COUNTIF(A1:A9;"tihgt")', `=D${row}&""`, "=IFERROR(B1/A2;0)",
  ]); // biome-ignore format: a list

function bookOf(random: Random): Book {
  const blank = blankBook("The ferryman's breeches", "cm", "1 mm");
  const columns = Array.from({ length: COLUMNS }, () => ({ heading: "", kind: "any" as const, width: 90 }));
  const pages = blank.pages.slice(0, 2).map((page) => ({
    ...page,
    columns,
    rows: random.many(ROWS, (row) => random.many(COLUMNS, () => entryOf(random, row + 1))),
  }));
  return { ...blank, pages, names: { waist: "Measure!C3", tried: "Draft!A1:A9" } };
}

const seen = (engine: Engine): unknown => ({
  cells: engine.book.pages.map(({ rows }, page) =>
    rows.map((cells, row) => cells.map((_, column) => ({ ...engine.view({ page, row, column }) }))),
  ),
  checks: checks(engine),
});

test("an engine that was prepared in slices has every answer and every problem of one that is built at once, and follows edits like it", () => {
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const random = new Random(seed);
    const engine = new Engine(blankBook("The one before", "cm", "1 mm"), layDesk);
    let book = bookOf(random);
    atOnce(engine.prepare(book, prepare));
    expect(engine.book.title).toBe("The one before");
    engine.open(book);
    for (let step = 0; step < 4; step += 1) {
      const fresh = new Engine(book, layDesk);
      expect(seen(engine), `seed ${seed}, step ${step}`).toEqual(seen(fresh));
      fresh.destroy();
      const place = { page: random.below(2), row: random.below(ROWS), column: random.below(COLUMNS) };
      book = type(book, [{ ...place, typed: entryOf(random, place.row + 1) }]);
      engine.become(book);
    }
    engine.destroy();
  }
});

test("a book whose preparation is stopped leaves the engine as it was", () => {
  const random = new Random(3);
  const before = bookOf(random);
  const engine = new Engine(before, layDesk);
  const had = seen(engine);
  for (const share of engine.prepare(bookOf(random), prepare)) if (share > 0.5) break;
  expect(seen(engine)).toEqual(had);
  engine.become(type(before, [{ page: 0, row: 0, column: 1, typed: "31" }]));
  expect(engine.value({ page: 0, row: 0, column: 1 })).toBe(31);
});

test("what was prepared for another book is of no use for this one", () => {
  const random = new Random(4);
  const engine = new Engine(blankBook("The one before", "cm", "1 mm"), layDesk);
  atOnce(engine.prepare(bookOf(random), prepare));
  const other = bookOf(random);
  engine.open(other);
  expect(seen(engine)).toEqual(seen(new Engine(other, layDesk)));
});

test("what was prepared is taken up although the former book was changed meanwhile, and is given up when it is not needed", () => {
  const random = new Random(5);
  const [before, next] = [bookOf(random), bookOf(random)];
  let asked = 0;
  const clock = () => {
    asked += 1;
    return 0;
  };
  const engine = new Engine(before, layDesk, { cell: 5000, work: 20_000, clock });
  const changed = type(before, [{ page: 0, row: 0, column: 1, typed: "31" }]);
  const opening = (isNeeded: boolean): number => {
    atOnce(engine.prepare(next, prepare));
    engine.become(engine.book === changed ? before : changed);
    if (!isNeeded) engine.letGo();
    const had = asked;
    engine.open(next);
    const took = asked - had;
    engine.open(before);
    return took;
  };
  expect(opening(true)).toBe(0);
  expect(opening(false)).toBeGreaterThan(10);
});
