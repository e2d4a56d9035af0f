import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findPlace, type Place } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import { nameCell } from "../../../src/book/naming.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook, COLUMN_KINDS } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { USUAL_LIMITS } from "../../../src/engine/guards.ts";
import type { LayDesk } from "../../../src/engine/lay-desk.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { often } from "../../often.ts";
import { book, COLUMNS, ROWS, TITLES } from "../book/books.ts";

const noDesk: LayDesk = () => ({ refusal: "no lay is asked for here" });
const seed = 20_260_513;

/** Everything a screen shows of a book, cell by cell. */
function shown(engine: Engine): unknown[] {
  return engine.book.pages.flatMap((page, index) =>
    page.rows.flatMap((row, r) =>
      row.map((_, column) => {
        const { value, shown: text, kind, problem, name } = engine.view({ page: index, row: r, column });
        // Which cell of a circle is met first hangs on the way there; that it is one does not.
        const sentence =
          problem && (problem.sentence.includes("rests on itself") ? "a circle" : problem.sentence);
        return [index, r, column, value, text, kind, name, sentence];
      }),
    ),
  );
}

describe("an engine that follows a book", () => {
  const index = fc.nat(TITLES.length - 1);
  const [row, column, count] = [fc.nat(ROWS), fc.nat(COLUMNS - 1), fc.integer({ min: 1, max: 2 })];
  const at = fc.record({ page: index, row, column });
  const typed = fc.constantFrom(
    "7",
    "",
    "=hem*2",
    "=waist+1",
    "=B2",
    "=SUM(A1:B3)",
    "16 1/2 in",
    "3/8",
    "text",
    "=A1/0",
    "=nope",
    "=WITH_EASE(hem;B1)",
    "2026-05-04",
  );
  type Edit = (book: Book) => Book;
  const anEdit: fc.Arbitrary<Edit> = fc.oneof(
    { weight: 4, arbitrary: fc.tuple(at, typed).map(([place, text]): Edit => (b) => edit.type(b, [{ ...place, typed: text }])) },
    fc.tuple(index, row, count).map(([p, r, n]): Edit => (b) => edit.insertRows(b, p, r, n)),
    fc.tuple(index, row, count).map(([p, r, n]): Edit => (b) => edit.removeRows(b, p, r, n)),
    fc.tuple(index, column, count).map(([p, c, n]): Edit => (b) => edit.insertColumns(b, p, c, n)),
    fc.tuple(index, column, count).map(([p, c, n]): Edit => (b) => edit.removeColumns(b, p, c, n)),
    fc.tuple(index, column, fc.constantFrom(...COLUMN_KINDS)).map(([p, c, kind]): Edit => (b) => edit.changeColumn(b, p, c, { kind })),
    fc.tuple(at, fc.constantFrom("hem", "Waist", "brim", "")).map(([place, name]): Edit => (b) => nameCell(b, place, name)),
    fc.tuple(index, fc.constantFrom("Cut", "The hem's")).map(([p, title]): Edit => (b) =>
      b.pages.some((page) => page.title === title) ? b : edit.renamePage(b, p, title)),
    fc.constant((b: Book): Book => ({ ...b, unit: b.unit === "in" ? "cm" : "in" }) ),
    fc.constant((b: Book): Book => ({ ...b, mark: "1/16" })),
  ); // biome-ignore format: a table
  const steps = fc.array(fc.oneof({ weight: 4, arbitrary: anEdit }, fc.constant("undo" as const)), {
    minLength: 1,
    maxLength: 8,
  });

  test("shows after any edits, undo among them, what a fresh engine shows", () => {
    fc.assert(
      fc.property(book, steps, (start, list) => {
        const engine = new Engine(start, noDesk);
        const past: Book[] = [];
        let now = start;
        for (const step of list) {
          if (step === "undo") now = past.pop() ?? now;
          else {
            past.push(now);
            now = step(now);
          }
          engine.become(now);
        }
        const fresh = new Engine(now, noDesk);
        expect(shown(engine)).toEqual(shown(fresh));
        engine.destroy();
        fresh.destroy();
      }),
      { seed, numRuns: often(100) },
    );
  });
});

const blank = blankBook("Withy Green", "in", "1/8");
const DRAFT = 1;

/** A book whose Draft page holds these rows; the names are of cells of its column B. */
function draft(
  rows: readonly string[][],
  names: readonly (string | null)[] = [],
  unit: Book["unit"] = "in",
): Engine {
  const pages = blank.pages.map((page, i) => (i === DRAFT ? { ...page, rows } : page));
  const named = names.flatMap((name, i) => (name ? [[name, `Draft!B${i + 1}`] as const] : []));
  return new Engine({ ...blank, unit, pages, names: Object.fromEntries(named) }, layDesk);
}
const place = (engine: Engine, address: string): Place => findPlace(engine.book, address)!;
const sentenceAt = (engine: Engine, address: string): string | undefined =>
  engine.view(place(engine, address)).problem?.sentence;

/** What the cell Draft!B9 says with this formula in it. */
function told(formula: string, typed: readonly string[] = ["27", "42 1/2", "8"]): string | undefined {
  const rows: string[][] = typed.map((text) => ["", text]);
  while (rows.length < 8) rows.push([]);
  rows.push(["", formula]);
  return sentenceAt(draft(rows, ["waist", "hip", "hip_drop", "depth"]), "Draft!B9");
}

describe("what can't be worked is said in the cell, in a plain sentence:", () => {
  test.each([
    // blank, text, zero, negative
    ["=HEM_AT(waist;hip;hip_drop;depth)", "depth is empty: a length is needed there"],
    ["=HEM_AT(waist;hip;hip_drop;)", "depth is empty: a length is needed there"],
    ["=HEM_AT(waist;hip;hip_drop)", "depth is missing: a length is needed there"],
    ['=HEM_AT(waist;hip;"deep";9)', 'hip_drop must be a length, not "deep"'],
    ["=HEM_AT(waist;hip;0;9)", /^hip_drop must be at least .+ in, not 0$/],
    ["=HEM_AT(-3;hip;hip_drop;9)", /^top must be at least .+ in, not -3 in$/],
    ["=SPREAD_PER_GAP(hip;waist;5)", /hem/],
    ["=SPREAD_PER_GAP(waist;hip;0)", /^sections must be at least 1, not 0$/],
    ["=SPREAD_PER_GAP(waist;hip;2.5)", /^sections must be a whole number, not 2.5$/],
    ["=SPREAD_PER_GAP(waist;hip;5;1/2;9)", "SPREAD_PER_GAP takes at most 4 arguments, not 5"],
    ["=SPREAD_PER_GAP(B1:B3;hip;5)", "top must be one cell, not a range of 3 cells"],
    // names, functions, pages, cells
    ["=wasit*2", 'no cell is named "wasit"; is waist meant?'],
    ["=bodice*2", 'no cell is named "bodice"; check the spelling or give a cell that name'],
    ["=SPREAD_PERGAP(1;2;3)", "no function is named SPREAD_PERGAP; is SPREAD_PER_GAP meant?"],
    ["=ZZZZZZZZZZ(1)", "no function is named ZZZZZZZZZZ; check the spelling in the list of functions"],
    // The name of a cell whose row was deleted may be that of a function too.
    ["=hem_at*2", 'no cell is named "hem_at"; the function HEM_AT(...) has its arguments in brackets'],
    ["=Drafft!B1", 'there is no page called "Drafft"; is Draft meant?'],
    ["='Over skirt'!B1+1", 'there is no page called "Over skirt"'],
    ["=#REF!+1", "this points at a cell that was deleted; point it at another"],
    ["=B0", "B0 names row 0, and the first row of a page is 1; write the row that is meant"],
    ["=B99999", "B99999 lies below the last row of a page, which is 20000"],
    ["=hem2", 'no cell is named "hem2", and a page has no such column'],
    // signs
    ["=(waist+1", "a ( in this formula is never closed; put a ) where it ends"],
    ["=((waist+1", "2 ( in this formula are never closed; put a ) where each ends"],
    ["=waist+1)", "this formula has a ) too many"],
    ['="waist', 'a text in this formula has no closing quote: "waist'],
    ["=waist?", "the sign ? has no meaning in a formula; delete it"],
    [
      "=waist,2",
      "unexpected comma: it separates the arguments of a function and stands only inside brackets",
    ],
    [
      "=MAX(waist; MAX(2,5))",
      /^2,5 has two readings in this formula: the number 2.5, or two arguments 2 and 5/,
    ],
    ["=waist waist", "this formula can't be read; check its brackets, quotes and the ; between arguments"],
    ["=+", "this formula can't be read; check its brackets, quotes and the ; between arguments"],
    // the engine's own refusals
    ["=waist/0", "this divides by zero or by a blank cell; give the divisor a number"],
    ["=waist/depth", "this divides by zero: depth (Draft!B4) is blank; give it a number other than 0"],
    ['=waist+"wide"', "a text stands where this formula needs a number"],
    [
      "=SQRT(-1)",
      "this has no number for an answer; check for a root of a negative number or a number far too large",
    ],
    ["=MATCH(99;B1:B3;0)", "nothing was found to match"],
    ["=ROUND(waist)*ROUND(1;2;3)", "a function in this formula is given too many or too few arguments"],
    ["=ROUND(1;2;3)", "ROUND is given too many or too few arguments"],
    ["=INDEX(B1:B3;9;1)", "a number in this formula is greater than its function takes"],
    ["=B1:B3", "this formula gives a range of answers; Ellwand keeps one value in a cell"],
    [
      `=${"(".repeat(60)}1${")".repeat(60)}`,
      "this formula has more than 50 brackets within one another; work a part of it in a cell of its own",
    ],
    // pieces
    ['=PIECE_AREA("M 0 0 L 4 0 L 4 4")', /^piece is not a valid piece: the outline is open/],
    [
      '=PIECE_AREA("M 0 0 L 4 4 L 4 0 L 0 4 Z")',
      /^piece is not a valid piece: the outline crosses itself near \(2, 2\)$/,
    ],
    ['=PIECE_AREA("M 0 0 L 4 0 L 8 0 Z")', "piece is not a valid piece: the outline has no area"],
    ['=PIECE_AREA("")', "piece is empty: a piece is needed there"],
    ['=PIECE_AREA("a sleeve")', /^piece is not a valid piece: /],
    ["=PIECE_AREA(waist)", "piece must be a piece (an outline in path data), not 27"],
    ["=YARDAGE(RECTANGLE(60;70);1;45)", /wide/],
  ] as [string, string | RegExp][])("%s", (formula, sentence) => {
    const is = told(formula);
    if (typeof sentence === "string") expect(is).toBe(sentence);
    else expect(is).toMatch(sentence);
    expect(is).toMatch(/^[^\n]{10,200}$/);
  });

  test("a text in a cell that is reckoned with is named", () => {
    const engine = draft(
      [
        ["", "wide"],
        ["", "3"],
        ["", "=waist+B2"],
        ["", "=B1+B2"],
        ["", "=SUM(B2;waist*2)"],
      ],
      ["waist"],
    );
    for (const address of ["Draft!B3", "Draft!B4", "Draft!B5"])
      expect(sentenceAt(engine, address)).toBe('waist (Draft!B1) must be a number here, not "wide"');
  });

  test("a script in a cell is a text that is shown as it is", () => {
    const script = "<script>alert(1)</script>";
    const engine = draft([
      ["", script],
      ["", `=${script}`],
    ]);
    expect(engine.view(place(engine, "Draft!B1"))).toMatchObject({
      shown: script,
      problem: null,
      kind: "text",
    });
    expect(sentenceAt(engine, "Draft!B2")).toBe(
      'no cell is named "script"; check the spelling or give a cell that name',
    );
  });

  test("a formula that rests on itself says by way of which cells", () => {
    const circle = draft([
      ["", "=B1+1"],
      ["", "=B3"],
      ["", "=B4*2"],
      ["", "=SUM(B1:B2)"],
      ["", "=B4+1"],
    ]);
    expect(sentenceAt(circle, "Draft!B1")).toBe("Draft!B1 rests on itself; take it out of its own formula");
    expect(sentenceAt(circle, "Draft!B2")).toBe(
      "Draft!B2 rests on itself through Draft!B3 and Draft!B4; break the circle in one of them",
    );
    expect(circle.view(place(circle, "Draft!B5")).problem!.sentence).toMatch(/rests on itself/);
    const pair = draft(
      [
        ["", "=waist"],
        ["", "=B1"],
      ],
      [null, "waist"],
    );
    expect(sentenceAt(pair, "Draft!B1")).toBe(
      "Draft!B1 rests on itself through waist (Draft!B2); break the circle in one of them",
    );
    const long = draft(Array.from({ length: 40 }, (_, i) => ["", `=B${((i + 1) % 40) + 1}`]));
    expect(sentenceAt(long, "Draft!B1")).toBe(
      "Draft!B1 rests on itself through Draft!B2, Draft!B3, Draft!B4, Draft!B5 and 35 more; break the circle in one of them",
    );
    const pages = draft([["", "=Cut!A1"]]);
    pages.become(edit.type(pages.book, [{ page: 3, row: 0, column: 0, typed: "=Draft!B1" }]));
    expect(sentenceAt(pages, "Draft!B1")).toBe(
      "Draft!B1 rests on itself through Piece (Cut!A1); break the circle in one of them",
    );
  });

  test("which circle a cell is given does not depend on the cell that is asked for first", () => {
    const cells = ["Draft!B1", "Draft!B2", "Draft!B3", "Draft!B4"];
    const said = (order: readonly string[]) => {
      const circles = draft([
        ["", "=B3+B2"],
        ["", "=B2+B1"],
        ["", "=B4"],
        ["", "=B1+B3"],
      ]);
      const found = new Map(order.map((cell) => [cell, sentenceAt(circles, cell)]));
      return cells.map((cell) => found.get(cell));
    };
    expect(said(cells)).toEqual([
      "Draft!B1 rests on itself through Draft!B2; break the circle in one of them",
      "Draft!B2 rests on itself; take it out of its own formula",
      "Draft!B3 rests on itself through Draft!B4; break the circle in one of them",
      "Draft!B4 rests on itself through Draft!B3; break the circle in one of them",
    ]);
    expect(said(cells.toReversed())).toEqual(said(cells));
    expect(said(["Draft!B2", "Draft!B4", "Draft!B1", "Draft!B3"])).toEqual(said(cells));
  });

  test("a circle that is broken works again", () => {
    const engine = draft([
      ["", "=B2"],
      ["", "=B1"],
    ]);
    engine.become(edit.type(engine.book, [{ page: DRAFT, row: 1, column: 1, typed: "5" }]));
    expect(engine.view(place(engine, "Draft!B1"))).toMatchObject({ value: 5, problem: null });
  });

  test("whatever rests on a wrong cell says which cell it waits for", () => {
    const engine = draft([
      ["", "=SPREAD_PER_GAP(1;2;0)"],
      ["", "=B1+1"],
      ["", "=B2*2"],
      ["", "=IFERROR(B3;7)"],
    ]);
    for (const address of ["Draft!B1", "Draft!B2", "Draft!B3"])
      expect(engine.view(place(engine, address)).problem).toEqual({
        is: "error",
        sentence: "sections must be at least 1, not 0",
        from: place(engine, "Draft!B1"),
      });
    expect(engine.view(place(engine, "Draft!B4"))).toMatchObject({ value: 7, problem: null });
  });
});

test("a chain of 15,000 cells is worked, shown and followed, whichever way it runs", () => {
  const down = draft(Array.from({ length: 15_000 }, (_, i) => ["", i === 0 ? "1 in" : `=B${i}+1/8`]));
  expect(down.view(place(down, "Draft!B15000"))).toMatchObject({ kind: "length", shown: "1875 7/8" });
  const up = draft(Array.from({ length: 15_000 }, (_, i) => ["", i === 14_999 ? "1 in" : `=B${i + 2}+1/8`]));
  expect(up.view(place(up, "Draft!B1"))).toMatchObject({ kind: "length", shown: "1875 7/8" });
  up.become(edit.type(up.book, [{ page: DRAFT, row: 14_999, column: 1, typed: "2 in" }]));
  expect(up.view(place(up, "Draft!B1")).shown).toBe("1876 7/8");
  up.become(edit.type(up.book, [{ page: DRAFT, row: 14_999, column: 1, typed: "=1/0" }]));
  expect(up.view(place(up, "Draft!B1")).problem!.from).toEqual(place(up, "Draft!B15000"));
});

describe("a formula worked beside the book", () => {
  const engine = draft(
    [
      ["", "27"],
      ["", "=1/0"],
      ["", "abc"],
    ],
    ["waist", "bad"],
  );
  test.each([
    ["=waist*2", { value: 54, kind: "figure", unusual: null }],
    ["=SPREAD_PER_GAP(16.5;23.5;5)", { value: 1.4, kind: "length", unusual: null }],
    [
      "=HOOK_COUNT(1;7)",
      {
        value: 2,
        kind: "count",
        unusual: "HOOK_COUNT: the spacing 7 in is above the edge 1 in; are they swapped?",
      },
    ],
    [
      "=bad+1",
      { problem: "bad (Draft!B2): this divides by zero or by a blank cell; give the divisor a number" },
    ],
    ["=wasit", { problem: 'no cell is named "wasit"; is waist meant?' }],
    [
      "=1+",
      { problem: "this formula can't be read; check its brackets, quotes and the ; between arguments" },
    ],
    [
      "waist",
      { problem: "this formula can't be read; check its brackets, quotes and the ; between arguments" },
    ],
    ["=B1:B3", { problem: "this formula gives a range of answers; Ellwand keeps one value in a cell" }],
    ["=SPREAD_PER_GAP(16.5;23.5;0)", { problem: "sections must be at least 1, not 0" }],
  ])("%s", (formula, answer) => {
    expect(engine.evaluate(formula, DRAFT)).toEqual(answer);
  });
});

test("a better lay wakes every cell that laid those pieces, and no other", () => {
  const rows = [
    ["", "45"],
    ["", "=YARDAGE(RECTANGLE(20;30);2;B1)"],
    ["", "=B2*2"],
    ["", "=LAY_DENSITY(RECTANGLE(20;30);2;B1)"],
  ];
  const engine = draft(rows);
  const before = engine.view(place(engine, "Draft!B3")).value as number;
  let asked = 0;
  const counting: LayDesk = (question, found) => {
    asked += 1;
    const kept = Object.values(found)[0];
    return kept ? { ...kept, lengths: [kept.length], missing: [] } : layDesk(question, found);
  };
  const own = new Engine(engine.book, counting);
  const once = asked;
  own.become({ ...own.book, lays: { abc: { placements: [], length: 7, density: 1 } } });
  expect(own.view(place(own, "Draft!B3")).value).toBe(14);
  expect(before).toBeGreaterThan(14);
  expect(asked).toBe(2 * once);
});

describe.each(readdirSync("templates").filter((name) => name.endsWith(".json")))(
  "the ready book %s",
  (name) => {
    const reading = readBook(readFileSync(`templates/${name}`, "utf8"));
    if ("reason" in reading) throw new Error(reading.reason);
    // On a loaded machine the usual limits, which are of the clock, would stop cells that lay pieces.
    const engine = new Engine(reading.book, layDesk, { ...USUAL_LIMITS, clock: () => 0 });

    test("has an answer in every cell", () => {
      for (const [page, { rows }] of engine.book.pages.entries())
        for (const [row, cells] of rows.entries())
          for (const column of cells.keys())
            expect(
              engine.view({ page, row, column }).problem?.is,
              engine.address({ page, row, column }),
            ).not.toBe("error");
    });
  },
);
