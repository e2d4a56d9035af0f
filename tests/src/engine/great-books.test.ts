/** What once took minutes, in sizes that the slow way would not get through within a test's time. */
import { describe, expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { tokens } from "../../../src/book/formula.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { understand } from "../../../src/engine/content.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { chain } from "../../../src/engine/explain.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { insertRows, removeRows } from "../../../src/store/commands.ts";
import { Random } from "../../attack/random.ts";

const at = (row: number, column = 1) => ({ page: 0, row, column });
const column = (texts: readonly string[]): Book =>
  type(
    blankBook("The seven sisters' capes", "in", "1/8"),
    texts.map((typed, row) => ({ ...at(row), typed })),
  );

test("a circle of 3,000 cells is told cell by cell, each with its way round", () => {
  const count = 3000;
  const engine = new Engine(
    column(Array.from({ length: count }, (_, row) => `=B${((row + 1) % count) + 1}`)),
    layDesk,
  );
  const found = checks(engine);
  expect(found).toHaveLength(count);
  expect(found[count - 1]!.sentence).toBe(
    "Measure!B3000 rests on itself through Measure!B1, Measure!B2, Measure!B3, Measure!B4 and 2995 more; break the circle in one of them",
  );
});

test("circles that cross one another end as well", () => {
  const count = 1500;
  const next = (row: number) => `B${(row % count) + 1}`;
  const texts = Array.from({ length: count }, (_, row) => `=${next(row + 1)}+${next(row + 7)}`);
  const found = checks(new Engine(column(texts), layDesk));
  expect(found).toHaveLength(count);
  expect(
    found.every(({ sentence }) =>
      /rests on itself (?:through .*|by way of many cells); break the circle/.test(sentence),
    ),
  ).toBe(true);
});

test("a lookup over its own column is a circle like any other", () => {
  const texts = Array.from({ length: 1000 }, (_, row) =>
    row % 5 === 0 ? `=VLOOKUP(${row};A:B;2)` : String(row),
  );
  const found = checks(new Engine(column(texts), layDesk));
  expect(found).toHaveLength(200);
  expect(found[0]!.sentence).toMatch(/rests on itself/);
});

/** What reads a range, before the formulas within it are worked. */
const RANGES = ["A:F", "B:B", "1:40", "3:3", "A1:F30", "B2:B20"];
const READERS = [
  "SUM(R)",
  "COUNTIF(R;5)",
  "SUMIF(R;5;R)",
  "IF(R>0;R;7)",
  "CHOOSE(1;R)",
  "INDEX(R;2;1)",
  "MATCH(5;R;0)",
  "VLOOKUP(5;R;1;FALSE())",
  "SUM(OFFSET(A1;0;0;9;3))+SUM(R)",
  'MEASURE_OF(R;"the widow";"waist girth")',
  'LIST_SUM(R;"length")',
  "CHART_SUMMARY(R)",
  "YARDAGE(R;54)",
  "FITTING_CHANGE(R;R;R)",
];

test("a range is read before the formulas in it are worked: whole rows and columns, lists, circles through themselves", () => {
  const readers = RANGES.flatMap((range) => READERS.map((one) => `=${one.replaceAll("R", range)}`));
  const rows = (formulas: readonly string[]) =>
    type(blankBook("The long list", "in", "1/8"), [
      ...formulas.flatMap((typed, i) => [
        { ...at(i, i % 4), typed },
        // Worked only after those that read them.
        { ...at(i + 1, 4), typed: `=F${i + 2}*2` },
      ]),
      ...formulas.map((_, i) => ({ ...at(i, 5), typed: "5" })),
      { ...at(0, 30), typed: "=AF1*2" },
      { ...at(0, 31), typed: "21" },
    ]);
  for (const formulas of [
    readers,
    readers.toReversed(),
    ...RANGES.map((_, i) => readers.slice(i * 14, i * 14 + 14)),
  ]) {
    const engine = new Engine(rows(formulas), layDesk);
    expect(engine.view(at(0, 30)).value).toBe(42);
    expect(checks(engine).filter(({ sentence }) => /not computed|failed/.test(sentence))).toEqual([]);
    engine.become(type(engine.book, [{ ...at(1, 5), typed: "6" }]));
    expect(engine.view(at(1, 4)).value).toBe(12);
  }
});

test("whole columns with something far down are worked, shown and emptied again", () => {
  const book = type(blankBook("The long list", "in", "1/8"), [
    { ...at(0, 27), typed: "=SUM(A:Z)" },
    { ...at(9999), typed: "5" },
    // It stretches the columns to the last row of a page, empty as it is: what they cost is what is in them.
    { ...at(0, 28), typed: "=SUM(A20000)+1" },
  ]);
  const engine = new Engine(book, layDesk);
  expect([27, 28].map((one) => engine.view(at(0, one)).value)).toEqual([5, 1]);
  expect(chain(engine, at(0, 27))).toHaveLength(2);
  expect(engine.evaluate("=A:Z")).toHaveProperty("problem");
  for (const [typed, value] of [
    ["", 0],
    ["7", 7],
  ] as const) {
    engine.become(type(engine.book, [{ ...at(9999), typed }]));
    expect(engine.view(at(0, 27)).value).toBe(value);
  }
});

test("whole columns and rows answer as ranges of all their cells do, whatever is filled, cleared or put in", () => {
  const asks = [
    "SUM(x)", "COUNT(x)", "COUNTA(x)", "MAX(x)", "MIN(x)", "PRODUCT(x)", "MEDIAN(x)", 'COUNTIF(x;">3")', 'SUMIF(x;">3";x)',
    "AVERAGE(x)", "MATCH(7;x;0)", "SUMPRODUCT(x;x)", "SUMSQ(x)+SUM(x;5)",
  ]; // biome-ignore format: a table
  const areas = [
    ["Draft!A:A", "Draft!A1:A40"],
    ["Draft!A:C", "Draft!A1:C40"],
    ["Draft!3:4", "Draft!A3:H4"],
  ] as const;
  const typings = areas.flatMap(([whole, cells], i) =>
    asks.flatMap((ask, row) =>
      [whole, cells].map((area, k) => ({ ...at(row, 2 * i + k), typed: `=${ask.replaceAll("x", area)}` })),
    ),
  ); // biome-ignore format: short
  const engine = new Engine(type(blankBook("The long list", "cm", "1 mm"), typings), layDesk);
  const random = new Random(7);
  for (let step = 0; step < 60; step += 1) {
    const place = { page: 1, row: random.below(24), column: random.below(4) };
    const next = random.chance(0.1)
      ? (random.chance(0.5) ? insertRows : removeRows)(1, place.row, 1).edit(engine.book)
      : type(engine.book, [{ ...place, typed: random.pick(["", "", "7", "3", "40", "wool", "=A2+1"]) }]);
    if ("refusal" in next) continue;
    engine.become(next);
    for (const [row, ask] of asks.entries())
      for (let i = 0; i < areas.length; i += 1)
        if (engine.book.pages[0]!.rows[row]![2 * i + 1]!.includes(areas[i]![1]))
          expect(engine.view(at(row, 2 * i)).shown, `step ${step}: ${ask} of ${areas[i]![0]}`).toBe(
            engine.view(at(row, 2 * i + 1)).shown,
          );
  }
});

describe("a text of 100,000 characters is read in one go:", () => {
  const many = (part: string) => part.repeat(Math.floor(100_000 / part.length));
  test.each<[string, string]>([
    ["digits", `${many("1")}x`],
    ["digits and a point", `${many("1")}.x`],
    ["a percentage that is none", `${many("1")} percent`],
    ["fractions", many("1/2 ")],
    ["lengths", many("1 in ")],
    ["quotes", many("'")],
    ["quoted pages", many("'a'!")],
    ["letters", many("a")],
    ["blanks", `1${many(" ")}x`],
    ["commas", many("1,")],
    ["brackets", many("(")],
    ["cells", many("A1:")],
  ])("%s", (_, text) => {
    for (const kind of ["any", "length", "number"] as const) understand(text, kind, "in");
    understand(`=${text}`, "any", "in");
    expect(
      tokens(`=${text}`)
        .map((token) => token.text)
        .join(""),
    ).toBe(`=${text}`);
  });
});

describe("a sentence stays short, however long what it tells of:", () => {
  const long = "a".repeat(50_000);
  test.each([
    `=${long}`,
    `=${long}(1)`,
    `="${long}`,
    `='${long}'!B1`,
    `=${"9".repeat(50_000)}`,
    `=B1+"${long}"`,
  ])("%.12s…", (formula) => {
    const engine = new Engine(column(["5", formula]), layDesk);
    const { problem } = engine.view(at(1));
    expect((problem?.sentence ?? "").length).toBeLessThan(300);
  });
});
