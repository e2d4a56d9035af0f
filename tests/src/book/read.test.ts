import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { VERSION, writeBook } from "../../../src/book/write.ts";
import { often } from "../../often.ts";

const template = readFileSync(new URL("../../../templates/peplum-bodice.json", import.meta.url), "utf8");
const sound = JSON.parse(writeBook(blankBook("Withy Green", "in", "1/8")));

const reasonOf = (text: string): string => {
  const reading = readBook(text);
  return "reason" in reading ? reading.reason : "no reason: it was read";
};
const reasonFor = (change: (data: typeof sound) => void): string => {
  const data = structuredClone(sound);
  change(data);
  return reasonOf(JSON.stringify(data));
};

describe("a file that is no book is told in a plain sentence:", () => {
  test("a book cut off anywhere", () => {
    for (const share of [0.01, 0.2, 0.5, 0.9, 0.999]) {
      const cut = template.slice(0, Math.floor(template.length * share));
      expect(reasonOf(cut)).toMatch(/^this book is cut off: the file stops at ".+"; look for a whole copy$/);
    }
    expect(reasonOf(template.slice(0, template.lastIndexOf("}")))).toMatch(/^this book is cut off/);
  });

  test("a book of a newer version", () => {
    expect(reasonOf(template.replace(/"ellwand": \d+/, '"ellwand": 7'))).toBe(
      `this book was saved by a newer Ellwand (version 7, this one reads up to ${VERSION}); bring Ellwand up to date and open it again`,
    );
  });

  test("ten million signs of nonsense", () => {
    let state = 20_260_508;
    const next = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return String.fromCharCode(state % 0xd800);
    };
    const nonsense = Array.from({ length: 10_000_000 }, next).join("");
    const reason = reasonOf(nonsense);
    expect(reason).toMatch(/^this is not a book: the text is not JSON, it begins with ".{1,40}"$/u);
    expect(reason).not.toMatch(/\p{Cc}/u);
    expect(reasonOf("x".repeat(100_000_001))).toMatch(
      /^this file is too large for a book: 100 million characters/,
    );
  });

  test("a million brackets", () => {
    const deep = `${"[".repeat(1_000_000)}${"]".repeat(1_000_000)}`;
    expect(reasonOf(deep)).toBe('this is not a book of Ellwand: it does not say "ellwand" and a version');
    expect(reasonOf(`{"ellwand":1,"title":${deep}}`)).toBe(
      "this book is damaged: the book's title must be a text, not a list",
    );
    expect(reasonOf(`{"ellwand":${deep}}`)).toBe(
      "this book's version must be a whole number from 1, not a list",
    );
  });

  test.each([
    ["", "this file is empty; choose a book saved by Ellwand"],
    [" \n", "this file is empty; choose a book saved by Ellwand"],
    ["null", 'this is not a book of Ellwand: it does not say "ellwand" and a version'],
    ["[1,2]", 'this is not a book of Ellwand: it does not say "ellwand" and a version'],
    ["{}", 'this is not a book of Ellwand: it does not say "ellwand" and a version'],
    ['{"ellwand":"1"}', 'this book\'s version must be a whole number from 1, not "1"'],
    ['{"ellwand":0.5}', "this book's version must be a whole number from 1, not 0.5"],
    ['{"ellwand":1}', "this book is damaged: the book has no title"],
    ["waist;hip\n27;42", 'this is not a book: the text is not JSON, it begins with "waist;hip 27;42"'],
    ["\u0089PNG\r\n\u001a", 'this is not a book: the text is not JSON, it begins with " PNG "'],
  ])("%j", (text, reason) => {
    expect(reasonOf(text)).toBe(reason);
  });
});

describe("a damaged book is told by its place and its fault:", () => {
  test.each<[string, (data: typeof sound) => void, string]>([
    ["no pages", (data) => delete data.pages, "the book has no pages"],
    ["choices that say nothing", (data) => { data.pages[0].columns[1].choices = " "; }, 'the choices of column B of the page "Measure" must not be blank'],
    ["an unknown unit of a cell", (data) => { data.pages[0].cells = { B3: { unit: "ell" } }; }, 'the cells at B3, unit of the page "Measure" can\'t be "ell"'],
    ["too many decimal places", (data) => { data.pages[0].cells = { B3: { decimals: 7 } }; }, 'the cells at B3, number of decimal places of the page "Measure" must be at most 6, not 7'],
    ["hidden rows that are none", (data) => { data.pages[0].hidden = ["2:4", "five"]; }, 'the hidden rows at number 2 of the page "Measure" can\'t be "five"'],
    ["too many columns in sight", (data) => { data.pages[0].frozen = 9; }, 'the number of columns that stay in sight of the page "Measure" must be at most 3, not 9'],
    ["no unit", (data) => delete data.unit, "the book has no unit"],
    ["no finest mark", (data) => delete data.mark, "the book has no finest mark"],
    ["an unknown unit", (data) => { data.unit = "ell"; }, 'the book\'s unit must be "in" or "cm" or "mm", not "ell"'],
    ["a blank title", (data) => { data.title = " "; }, "the book's title must not be blank"],
    ["a long title", (data) => { data.title = "x".repeat(201); }, "the book's title must have at most 200 letters, not 201"],
    ["pages of no kind", (data) => { data.pages = {}; }, "the book's pages must be a list, not a group of named things"],
    ["not one page", (data) => { data.pages = []; }, "the book's pages must not be empty"],
    ["a page that is none", (data) => { data.pages[1] = 3; }, "page 2 must be a group of named things, not 3"],
    ["a page without a title", (data) => delete data.pages[1].title, "page 2 has no title"],
    ["a page without rows", (data) => delete data.pages[1].rows, 'the page "Draft" has no rows'],
    ["a page without a stage", (data) => delete data.pages[1].stage, 'the page "Draft" has no stage'],
    ["a stage of no name", (data) => { data.pages[1].stage = "Sew"; }, 'the stage of the page "Draft" must be "Measure" or "Draft" or "Fit" or "Cut" or "Trimmings", not "Sew"'],
    ["a page title with a bracket", (data) => { data.pages[1].title = "Dra[ft"; }, 'the title of page 2 must not contain any of [ ] : * ? / \\, unlike "Dra[ft"'],
    ["a page of no columns", (data) => { data.pages[1].columns = []; }, 'the columns of the page "Draft" must not be empty'],
    ["a column of no known kind", (data) => { data.pages[1].columns[1].kind = "size"; }, 'the kind of column B of the page "Draft" must be "any" or "text" or "length" or "number" or "money" or "date", not "size"'],
    ["a column of no width", (data) => delete data.pages[1].columns[1].width, 'column B of the page "Draft" has no width'],
    ["a hair-thin column", (data) => { data.pages[1].columns[1].width = 1; }, 'the width of column B of the page "Draft" must be at least 20, not 1'],
    ["a number for a cell", (data) => { data.pages[1].rows = [["a"], ["b", 7]]; }, 'cell B2 of the page "Draft" must be a text, not 7'],
    ["a row that is none", (data) => { data.pages[1].rows = [["a"], "b"]; }, 'row 2 of the page "Draft" must be a list, not "b"'],
    ["a note that is none", (data) => { data.pages[1].notes = { B3: null }; }, 'the notes at B3 of the page "Draft" must be a text, not null'],
    ["a trial without cells", (data) => { data.trials = [{ title: "deeper" }]; }, "trial 1 has no cells"],
    ["a lay of no length", (data) => { data.lays = { abc: { placements: [], density: 1 } }; }, "the kept lay abc has no length"],
    ["a lay found in no known way", (data) => { data.lays = { abc: { placements: [], length: 1, density: 1, origin: { by: "luck" } } }; }, 'the way of finding of the origin of the kept lay abc must be "quick" or "search" or "hand", not "luck"'],
    ["a search of less than no time", (data) => { data.lays = { abc: { placements: [], length: 1, density: 1, origin: { by: "search", seconds: -1 } } }; }, "the seconds of the origin of the kept lay abc must be at least 0, not -1"],
  ])("%s", (_, change, sentence) => {
    expect(reasonFor(change)).toBe(`this book is damaged: ${sentence}`);
  }); // biome-ignore format: a table

  test("two pages of one title, in any case", () => {
    expect(reasonFor((data) => (data.pages[1].title = "MEASURE"))).toBe(
      'this book has two pages called "MEASURE"',
    );
  });

  test.each([
    ["Draught!B3", 'the name hem points at "Draught!B3", which is not in this book'],
    ["B3", 'the name hem points at "B3", which is not in this book'],
    ["", 'the name hem points at "", which is not in this book'],
    ["Draft!B99999", 'the name hem points at "Draft!B99999", which is not in this book'],
    ["Draft!ZZ1", 'the name hem points at "Draft!ZZ1", which is not in this book'],
  ])("a name that points at %j", (address, reason) => {
    expect(reasonFor((data) => (data.names = { hem: address }))).toBe(reason);
  });

  test.each(["__proto__", "constructor", "prototype", "waist2", "A1", "true", "", "hip over pad"])(
    "the cell name %j, which can't be used in a formula",
    (name) => {
      const text = JSON.stringify({ ...sound, names: "here" }).replace(
        '"here"',
        `{${JSON.stringify(name)}:"Draft!B3"}`,
      );
      expect(reasonOf(text)).toMatch(/^this book has a cell name that can't be used: .+/);
      expect(({} as Record<string, unknown>).B3).toBeUndefined();
    },
  );

  test("two names that differ in nothing but case", () => {
    expect(reasonFor((data) => (data.names = { hem: "Draft!B3", Hem: "Draft!B4" }))).toBe(
      "this book has two cells named Hem",
    );
  });
});

test("keys that mean something to the language do no harm anywhere in the file", () => {
  const key = '"__proto__":{"polluted":"yes"}';
  const text = JSON.stringify(sound)
    .replace('{"ellwand"', `{${key},"ellwand"`)
    .replaceAll('"notes":{}', `"notes":{"__proto__":"a note","constructor":"b"}`)
    .replace(
      '"lays":{}',
      `"lays":{${key.replace('{"polluted":"yes"}', '{"placements":[],"length":1,"density":1}')}}`,
    );
  const reading = readBook(text);
  expect("book" in reading).toBe(true);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  expect(({} as Record<string, unknown>).placements).toBeUndefined();
});

test("a script in a cell, a title or a note is text and stays text", () => {
  const script = "<script>alert(1)</script>";
  const data = structuredClone(sound);
  data.title = script;
  data.pages[0].rows = [[script, `=${script}`, "<img src=x onerror=alert(1)>"]];
  data.pages[0].notes = { A1: script };
  const reading = readBook(JSON.stringify(data));
  if ("reason" in reading) throw new Error(reading.reason);
  expect(reading.book.title).toBe(script);
  expect(reading.book.pages[0]!.rows[0]![0]).toBe(script);
});

test("settings of cells and hidden rows are spelt one way, and two settings of one cell are refused", () => {
  const data = structuredClone(sound);
  data.pages[0].cells = { $b$3: { decimals: 2 } };
  data.pages[0].hidden = ["9:8", "2:2", "1:1", "10:10"];
  const reading = readBook(JSON.stringify(data));
  expect("book" in reading && reading.book.pages[0]).toMatchObject({
    cells: { B3: { decimals: 2 } },
    hidden: ["1:2", "8:10"],
  });
  data.pages[0].cells.B3 = { decimals: 3 };
  expect(reasonOf(JSON.stringify(data))).toBe(
    'the page "Measure" has two settings for the cell B3, spelt "$b$3" and "B3"; take one of them out of the file',
  );
});

test("what a book may leave out is filled in, and what a hand wrote otherwise is spelt one way", () => {
  const { title, unit, mark, pages } = structuredClone(sound);
  for (const page of pages) delete page.notes;
  pages[1].rows = [["a", "b", "c", "=1", "beyond the columns"]];
  const reading = readBook(
    `\uFEFF${JSON.stringify({ ellwand: 1, title, unit, mark, pages, names: { hem: "draft!$b$3" } })}`,
  );
  if ("reason" in reading) throw new Error(reading.reason);
  const { book } = reading;
  expect([book.about, book.trials, book.lays, book.pages[0]!.notes]).toEqual(["", [], {}, {}]);
  expect(book.names).toEqual({ hem: "Draft!B3" });
  expect(book.pages[1]!.columns).toHaveLength(5);
});

test("no change to a book's file makes the reader throw, and every refusal is one line", () => {
  const short = JSON.stringify(sound);
  fc.assert(
    fc.property(
      fc.nat(short.length - 1),
      fc.nat(30),
      fc.oneof(fc.string({ unit: "binary", maxLength: 12 }), fc.json()),
      (at, cut, put) => {
        const reading = readBook(short.slice(0, at) + put + short.slice(at + cut));
        if ("reason" in reading) expect(reading.reason).toMatch(/^th[^\n\r]{10,300}$/);
      },
    ),
    { seed: 20_260_509, numRuns: often(2000) },
  );
});
