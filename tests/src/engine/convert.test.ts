import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Kind } from "../../../functions/define.ts";
import { readTape } from "../../../functions/fractions.ts";
import { UNITS, type Unit } from "../../../functions/units.ts";
import { findPlace } from "../../../src/book/address.ts";
import { readGarment } from "../../../src/book/garment.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import type { CellView } from "../../../src/engine/view.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { often } from "../../often.ts";

const blank = blankBook("Withy Green", "in", "1/8");
const COLUMNS_OF_LENGTH = [0, 1, 2].map(() => ({ heading: "", kind: "length", width: 100 }) as const);

const POWER: Partial<Record<Kind, number>> = { length: 1, area: 2 };

/** One engine to a unit, following each book in turn: to build one takes far longer than to work a small book. */
const engines: Partial<Record<Unit, Engine>> = {};

type Views = readonly (CellView & { readonly address: string })[];

/** What each book showed before it was converted: the same for every unit it is converted to. */
const viewsBefore = new WeakMap<Book, Views>();

function viewsOnce(book: Book): Views {
  const known = viewsBefore.get(book) ?? views(book);
  viewsBefore.set(book, known);
  return known;
}

/** Every cell of a book as it is shown, in the order of the pages. */
function views(book: Book): Views {
  engines[book.unit] ??= new Engine({ ...blank, unit: book.unit }, layDesk);
  const engine = engines[book.unit]!;
  engine.become(book);
  return book.pages.flatMap((page, index) =>
    page.rows.flatMap((row, r) =>
      row.map((_, column) => {
        const place = { page: index, row: r, column };
        return { ...engine.view(place), address: engine.address(place) };
      }),
    ),
  );
}

const EXACT = 1e-9;
/** A quick lay is placed on a grid of a millionth of the cloth. */
const LAID = 1e-6;

/** Millimetres in each unit (NIST SP 811). */
const SIZES: Record<Unit, number> = { in: 25.4, cm: 10, mm: 1 };

/** Every cell whose value differs once the book is converted to another unit. */
function moved(book: Book, to: Unit, back = false): string[] {
  const converted = back ? convertBook(convertBook(book, to), book.unit) : convertBook(book, to);
  const factor = back ? 1 : SIZES[book.unit] / SIZES[to];
  const before = viewsOnce(book);
  const after = views(converted);
  expect(after.length).toBe(before.length);
  return before.flatMap((was, i) => {
    const is = after[i]!;
    const told = `${was.address} ${was.typed} → ${is.typed}: ${was.value} → ${is.value}`;
    if (is.problem?.is !== was.problem?.is) return [told];
    if (typeof was.value !== "number") return was.kind === "piece" || is.value === was.value ? [] : [told];
    const expected = was.value * factor ** (POWER[was.kind] ?? 0);
    const within = /YARDAGE|cloth_length/.test(was.typed) ? LAID : EXACT;
    const off = Math.abs((is.value as number) - expected) / Math.max(1, Math.abs(expected));
    return off < within ? [] : [told];
  });
}

function expectStill(book: Book, to: Unit, back = false) {
  expect(moved(book, to, back)).toEqual([]);
}

// The book of the whole cast is converted once, in whole-cast.test.ts: it is large, and its problems tell lengths.
describe.each(
  readdirSync("templates").filter((name) => name.endsWith(".json") && name !== "whole-cast.json"),
)("the ready book %s", (name) => {
  const reading = readBook(readFileSync(`templates/${name}`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const { book } = reading;
  const others = UNITS.filter((unit) => unit !== book.unit);
  const [other] = others as [Unit, ...Unit[]];

  test.each(others)("has the same answers in %s", (unit) => {
    expectStill(book, unit);
  });
  test.each(others)("has the same answers when it is converted to %s and back", (unit) => {
    expectStill(book, unit, true);
  });
  test("keeps the texts, names and pages", () => {
    const converted = convertBook(book, other);
    expect(converted.names).toBe(book.names);
    expect(converted.pages.map(({ title, columns }) => [title, columns])).toEqual(
      book.pages.map(({ title, columns }) => [title, columns]),
    );
  });
});

const GARMENTS = "templates/garments";

test.each(readdirSync(GARMENTS))("the garment %s has the same answers in another unit and back", (name) => {
  const reading = readGarment(readFileSync(`${GARMENTS}/${name}`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const book = reading.garment.books.cm;
  expectStill(book, "in");
  expectStill(book, "mm", true);
});

/** A book whose Draft page has these texts in column B, each named. */
function bookOf(cells: Readonly<Record<string, string>>, unit: Unit = "in", more: Partial<Book> = {}): Book {
  const rows = Object.entries(cells).map(([name, typed]) => [name, typed]);
  const pages = blank.pages.map((page, i) => (i === 1 ? { ...page, rows } : page));
  const names = Object.fromEntries(Object.keys(cells).map((name, i) => [name, `Draft!B${i + 1}`]));
  return { ...blank, unit, mark: unit === "in" ? "1/8" : "1 mm", pages, names, ...more };
}

const BASE = {
  waist: "27",
  hip: "42 1/2",
  depth: "9",
  first: "1 1/2",
  spacing: "2",
  number: "3",
  ease: "1/2",
  share: "1/2",
  sections: "5",
  fullness: "1.2",
  price: "14",
  day: "2026-05-04",
  room: "100",
};
/** Formulas that tell what the figures of BASE are. */
const TELLING = {
  t_1: "=HEM_AT(waist;hip;8;depth;fullness)",
  t_2: "=SPREAD_PER_GAP(waist;hip;sections;share)",
  t_3: "=first+(number-1)*spacing",
  t_4: "=PLEAT_ALLOWANCE(number;ease)",
  t_5: "=PIECE_AREA(RECTANGLE(waist;depth))>room",
};

describe("of the figures and formulas of a book", () => {
  const kinds = (book: Book) => {
    const engine = new Engine(book, layDesk);
    return (name: string) => engine.kinds.of(findPlace(book, book.names[name]!)!);
  };

  test.each([
    // typed, in a cell that is used as told by TELLING
    ["waist", "68.58"],
    ["hip", "107.95 cm"],
    ["spacing", "5.08"],
    ["first", "3.81 cm"],
    ["share", "1/2"],
    ["number", "3"],
    ["fullness", "1.2"],
    ["price", "14"],
    ["day", "2026-05-04"],
    ["room", "645.16"],
  ])("%s becomes %s", (name, typed) => {
    const book = bookOf({ ...BASE, ...TELLING });
    const converted = convertBook(book, "cm");
    expect(converted.pages[1]!.rows.find(([what]) => what === name)![1]).toBe(typed);
  });

  test.each([
    ["=waist+2", "=waist+IN(2)"],
    ["=2+waist", "=IN(2)+waist"],
    ["=waist*2", "=waist*2"],
    ["=waist*1 1/2", "=waist*1 1/2"],
    ["=waist+16 1/2", "=waist+IN(16 1/2)"],
    ["=waist+42 cm", "=waist+42 cm"],
    ["=16 1/2", "=IN(16 1/2)"],
    ["=16.5", "=16.5"],
    ["=waist/2-3/4", "=waist/2-IN(3)/4"],
    ["=MAX(waist;30)", "=MAX(waist;IN(30))"],
    ["=IF(waist>30;30;waist)", "=IF(waist>IN(30);IN(30);waist)"],
    ["=IF(number>3;1;2)", "=IF(number>3;1;2)"],
    ["=-(waist-2)", "=-(waist-IN(2))"],
    ["=SUM(waist;2;hip)", "=SUM(waist;IN(2);hip)"],
    ["=waist+0", "=waist+0"],
    ["=waist/2/8", "=waist/2/8"],
    ["=8/waist", "=IN(8)/waist"],
    ["=WITH_EASE(waist;2;0.1)", "=WITH_EASE(waist;IN(2);0.1)"],
    ["=RECTANGLE(20;30)", "=RECTANGLE(IN(20);IN(30))"],
    ["=YARDAGE(RECTANGLE(20;30);2;54)", "=YARDAGE(RECTANGLE(IN(20);IN(30));2;IN(54))"],
    ["=IN(3)+CM(2)", "=IN(3)+CM(2)"],
    ['=TAPE("16 1/2")', '=TAPE("16 1/2 in")'],
    ['=TAPE("16 1/2 cm")', '=TAPE("16 1/2 cm")'],
    ["=ROUND(waist/3;1)", "=(ROUND(ROUND((waist/3)/IN(1);9);1)*IN(1))"],
    ["=INT(waist)", "=(INT(ROUND((waist)/IN(1);9))*IN(1))"],
    ["=ROUNDUP(hip*2/waist;0)", "=ROUNDUP(ROUND(hip*2/waist;9);0)"],
    ["=CEILING(waist;4.5)", "=(CEILING(ROUND((waist)/IN(1);9);4.5)*IN(1))"],
    ["=CEILING(waist;ease)", "=(CEILING(ROUND((waist)/IN(1);9);ROUND((ease)/IN(1);9))*IN(1))"],
    ["=ROUND(number*2;0)", "=ROUND(number*2;0)"],
    ["=waist*depth+100", "=waist*depth+(100*IN(1)^2)"],
    ["=SQRT(waist^2+9)", "=SQRT(waist^2+(9*IN(1)^2))"],
    ['=PIECE_AREA("M 0 0 H 10 V 10 H 0 Z")', '=PIECE_AREA("M 0 0 H 25.4 V 25.4 H 0 Z")'],
    // A usual length left out is another on the metric tape: it is written in as it was.
    ["=BUY_LENGTH(waist)", "=BUY_LENGTH(waist;IN(4.5))"],
    ["=BUY_LENGTH(waist;;share)", "=BUY_LENGTH(waist;IN(4.5);share)"],
    ["=CASING_DEPTH(ease)+1", "=CASING_DEPTH(ease;IN(0.125);IN(0.25))+IN(1)"],
    ["=BAND_LENGTH(waist;2)", "=BAND_LENGTH(waist;IN(2))"],
    ['="hem 9 in"', '="hem 9 in"'],
  ])("%s becomes %s", (formula, told) => {
    const book = bookOf({ ...BASE, ...TELLING, it: formula });
    const converted = convertBook(book, "cm");
    expect(converted.pages[1]!.rows.at(-1)![1]).toBe(told);
    expectStill(book, "cm");
    expectStill(book, "cm", true);
  });

  test("so many to the inch becomes so many to the centimetre", () => {
    const { rows } = convertBook(bookOf({ ...BASE, ...TELLING, it: "=sections/waist" }), "cm").pages[1]!;
    expect(rows.at(-1)![1]).toBe("=sections/waist");
  });

  test("a pleat's spacing is a length though only a sum says so", () => {
    const kind = kinds(bookOf({ ...BASE, ...TELLING }));
    expect(["spacing", "first", "number", "share", "room", "ease"].map(kind)).toEqual([
      "length", "length", "count", "share", "area", "length",
    ]); // biome-ignore format: in pairs
  });

  test("a typed outline is drawn as large in the other unit, its letters and arcs kept", () => {
    const outline = "m0,0 h10 a5 5 30 01 0,10 l-10,0z M 1 2 l.5.5";
    const book = bookOf({ sleeve: outline, area: "=PIECE_AREA(sleeve)", wide: "=PIECE_WIDTH(sleeve)" });
    const converted = convertBook(book, "cm");
    expect(converted.pages[1]!.rows[0]![1]).toBe(
      "m 0 0 h 25.4 a 12.7 12.7 30 0 1 0 25.4 l -25.4 0 z M 2.54 5.08 l 1.27 1.27",
    );
    expectStill(book, "cm");
  });

  test("what trials type is converted as the cell itself would be", () => {
    const trials = [
      {
        title: "deeper",
        cells: {
          "Draft!B3": "10",
          "Draft!B7": "3/4",
          "Draft!B8": "3/4",
          "Draft!B1": "=hip-2",
          "Draft!B6": "4",
        },
      },
    ];
    const { cells } = convertBook(bookOf({ ...BASE, ...TELLING }, "in", { trials }), "cm").trials[0]!;
    expect(cells).toEqual({
      "Draft!B3": "25.4", "Draft!B7": "1.905 cm", "Draft!B8": "3/4", "Draft!B1": "=hip-IN(2)", "Draft!B6": "4",
    }); // biome-ignore format: in pairs
  });

  test("found lays are kept, so that none is lost on the way back", () => {
    const lays = { abc: { placements: [], length: 40, density: 0.8 } };
    expect(convertBook(bookOf(BASE, "in", { lays }), "cm").lays).toBe(lays);
  });

  test("a book in its own unit already is the same book", () => {
    const book = bookOf(BASE);
    expect(convertBook(book, "in")).toBe(book);
  });

  test("whatever a tape in millimetres or sixteenths shows comes back as it was typed", () => {
    for (const [unit, other, step] of [["cm", "in", 0.1], ["in", "cm", 1 / 16], ["mm", "in", 1], ["in", "mm", 1 / 16], ["mm", "cm", 1]] as const) {
      const marks = Array.from({ length: 2000 }, (_, i) => String(Number((i * step).toFixed(4))));
      const rows = marks.map((mark) => ["", "", mark]);
      const pages = [{ ...blank.pages[0]!, columns: [...COLUMNS_OF_LENGTH], rows }];
      const book: Book = { ...blank, unit, pages, names: {} };
      const back = convertBook(convertBook(book, other), unit).pages[0]!.rows.map((row) => row[2]!);
      const read = back.map((typed) => (unit === "in" ? readTape(typed, "in")!.length : Number(typed)));
      expect(read).toEqual(marks.map(Number));
    }
  }); // biome-ignore format: in pairs

  test("inches come back as fractions of the tape", () => {
    const book = bookOf({ waist: "41.91", hip: "100", hem: "=HEM_AT(waist;hip;20;20)" }, "cm");
    expect(convertBook(book, "in").pages[1]!.rows.map(([, typed]) => typed)).toEqual([
      "16 1/2", "39.3700787402", "=HEM_AT(waist;hip;CM(20);CM(20))",
    ]); // biome-ignore format: in pairs
  });
});

// Formulas that mean something: each is a length, an area or a plain number by the way it is built.
const { length, count } = fc.letrec<{ length: string; area: string; count: string }>((tie) => {
  const some = fc.constantFrom("3", "16 1/2", "2.5", "1/2 in", "4 cm");
  const L = tie("length");
  const N = tie("count");
  return {
    length: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      fc.constantFrom("waist", "hip", "depth", "first", "spacing", "ease"),
      fc.tuple(L, fc.constantFrom("+", "-"), fc.oneof(L, some)).map((parts) => `(${parts.join("")})`),
      fc.tuple(some, L).map(([a, b]) => `(${a}+${b})`),
      fc.tuple(L, N).map(([a, b]) => `(${a}*${b})`),
      fc.tuple(fc.constantFrom("2", "1.5", "number", "fullness"), L).map(([a, b]) => `${a}*${b}`),
      L.map((a) => `${a}*1 1/2`),
      fc.tuple(L, fc.constantFrom("2", "3", "sections")).map(([a, b]) => `${a}/${b}`),
      fc
        .tuple(fc.constantFrom("MIN", "MAX", "SUM"), L, fc.oneof(L, some))
        .map(([f, a, b]) => `${f}(${a};${b})`),
      fc.tuple(L, some, L, some).map(([a, b, c, d]) => `IF(${a}>${b};${c};${d})`),
      fc.tuple(L, fc.oneof(L, some)).map(([a, b]) => `WITH_EASE(${a};${b})`),
      fc.tuple(tie("area"), L).map(([a, b]) => `(${a}/(${b}+1000))`),
      L.map((a) => `ABS(-${a})`),
      L.map((a) => `ROUND(${a};2)`),
      L.map((a) => `CEILING(ABS(${a});4.5)`),
      tie("area").map((a) => `SQRT(ABS(${a}))`),
    ),
    area: fc.oneof(
      { maxDepth: 3 },
      fc.tuple(L, L).map(([a, b]) => `(${a}*${b})`),
      L.map((a) => `(${a})^2`),
      fc.tuple(tie("area"), fc.constantFrom("room", "100")).map(([a, b]) => `(${a}+${b})`),
    ),
    count: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom("2", "1.5", "number", "fullness", "share", "sections"),
      fc.tuple(L, L).map(([a, b]) => `(${a}/(ABS(${b})+1000))`),
      fc.tuple(N, N).map(([a, b]) => `(${a}+${b})`),
      fc.tuple(L, L).map(([a, b]) => `ROUNDUP(${a}/(ABS(${b})+7);0)`),
      fc.tuple(L, fc.constantFrom("20", "16 1/2")).map(([a, b]) => `IF(${a}<${b};1;2)`),
    ),
  };
});

test("no answer of any sensible formula moves, there or there and back, whichever unit comes first", () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof(length, count), { minLength: 2, maxLength: 4 }),
      fc.constantFrom<readonly [Unit, Unit]>(["in", "cm"], ["cm", "in"], ["cm", "mm"], ["mm", "in"]),
      (formulas, [unit, to]) => {
        const its = Object.fromEntries(formulas.map((formula, i) => [`it_${i}`, `=${formula}`]));
        const book = bookOf({ ...BASE, ...TELLING, ...its }, unit);
        expectStill(book, to);
        expectStill(book, to, true);
      },
    ),
    { seed: 20_260_514, numRuns: often(400) },
  );
});

test("a length whose cell is blank keeps its figure on another tape, for every function with a figure for each tape", () => {
  let calls = 0;
  for (const { name, takes, returns, examples } of catalogue.values()) {
    const kinds = Object.entries(takes);
    const optional = kinds.filter(([, { otherwise }]) => typeof otherwise === "object" && otherwise !== null);
    if (optional.length === 0 || returns === "piece") continue;
    for (const from of ["in", "cm"] as const) {
      const example = examples.find(({ unit = "in" }) => unit === from);
      if (!example) continue;
      for (const [missing] of optional) {
        const cells: Record<string, string> = { gone: "", again: "=gone" };
        const args = (blank: string) =>
          kinds.map(([arg]) => {
            const value = example.given[arg] ?? null;
            if (arg === missing) return blank;
            if (value === null || Array.isArray(value)) return value === null ? "" : null;
            if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
            return typeof value === "boolean" ? `${value}()` : String(value);
          });
        if (args("gone").includes(null)) continue;
        cells.a_1 = `=${name}(${args("gone").join(";")})`;
        cells.a_2 = `=2*${name}(${args("again").join(";")})`;
        const book = bookOf(cells, from);
        if (views(book).some(({ problem }) => problem?.is === "error")) continue;
        calls += 1;
        for (const unit of UNITS) if (unit !== from) expectStill(book, unit);
      }
    }
  }
  expect(calls).toBeGreaterThan(8);
});

test("a blank cell that is filled after its book was converted counts again", () => {
  const book = convertBook(bookOf({ gone: "", depth: "=CASING_DEPTH(1;gone)" }), "cm");
  expect(book.pages[1]!.rows[1]![1]).toBe("=CASING_DEPTH(IN(1);IF(ISBLANK(gone);IN(0.125);gone);IN(0.25))");
  const depth = (cell: string) => {
    const rows = [["gone", cell], book.pages[1]!.rows[1]!];
    const filled = { ...book, pages: book.pages.map((page, i) => (i === 1 ? { ...page, rows } : page)) };
    return views(filled).find(({ name }) => name === "depth")!.value as number;
  };
  expect(depth("3") - depth("")).toBeCloseTo(3 - 0.125 * 2.54, 9);
});
