import { readdirSync, readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { speak } from "../../../functions/speech.ts";
import { cellAddress } from "../../../src/book/address.ts";
import { isFormula } from "../../../src/book/formula.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { near } from "../../../src/exchange/agreement.ts";
import { writeOds } from "../../../src/exchange/write-ods.ts";
import { writeXlsx } from "../../../src/exchange/write-xlsx.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { understood } from "./foreign-files.ts";

const WRITERS = { xlsx: writeXlsx, ods: writeOds };

const ready = (name: string): Book => {
  const reading = readBook(readFileSync(`templates/${name}`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};
// Writing and reading the book of the whole cast takes many seconds: only WHOLE=1 does it.
const FILES = readdirSync("templates").filter(
  (name) => name.endsWith(".json") && (process.env.WHOLE || name !== "whole-cast.json"),
);
const CASES = [...FILES.map((name) => [name, "xlsx"] as const), [FILES[0]!, "ods"] as const];

/** The headings of the sheet of workings in another language. */
const WORKINGS = {
  Cell: "Zelle",
  Call: "Aufruf",
  How: "Wie",
  "Formula of": "Formel von",
  "As typed in Ellwand": "Wie getippt",
  "Lengths are in {}.": ["Längen in ", 0, "."],
};

test.each(CASES)("%s, written as .%s and read again, has the same values, and every formula as it was typed", async (name, ending) => {
  const engine = new Engine(ready(name), layDesk);
  // One file is written where the page is in another language.
  if (ending === "ods") speak({ tag: "de", direction: "ltr", phrases: WORKINGS });
  const { bytes } = await WRITERS[ending](engine);
  speak(null);
  expect(strFromU8(unzipSync(bytes)["content.xml"] ?? new Uint8Array()).includes("Längen in centimetres.")).toBe(ending === "ods");
  const { book, all } = await understood(bytes);
  const again = new Engine(book, layDesk);
  expect(book.pages.map(({ title, stage }) => [title, stage])).toEqual(engine.book.pages.map(({ title, stage }) => [title, stage]));
  expect([book.unit, book.mark, book.title, book.about]).toEqual([engine.book.unit, engine.book.mark, engine.book.title, engine.book.about.trim()]);
  expect(book.names).toEqual(engine.book.names);
  let formulas = 0;
  engine.book.pages.forEach((page, index) => {
    const back = book.pages[index]!;
    expect(back.columns.map(({ heading, kind }) => [heading, kind])).toEqual(page.columns.map(({ heading, kind }) => [heading.trim(), kind]));
    expect([back.notes, back.hidden]).toEqual([page.notes, page.hidden]);
    page.rows.forEach((row, r) => {
      for (const [c, typed] of row.entries()) {
        const place = { page: index, row: r, column: c };
        const where = `${page.title} ${cellAddress(r, c)} ${typed}`;
        expect(near(again.value(place), engine.value(place)), where).toBe(true);
        if (!isFormula(typed) && typeof engine.value(place) !== "number") continue;
        if (isFormula(typed)) formulas += 1;
        expect(back.rows[r]![c], where).toBe(typed);
      }
    });
  });
  expect(all).toContain(`${formulas} formulas of Ellwand come back as they were typed.`);
}); // biome-ignore format: long lines

test.each(["xlsx", "ods"] as const)("figures come back from .%s as they were typed, unless another program changed them", async (ending) => {
  const typed = { price: "18.00", waist: "26 1/2", hip: "100 cm", share: "12.50%", many: "007", plain: "3", sum: "=waist*2" };
  const engine = new Engine(bookOf(typed), layDesk);
  const { bytes } = await WRITERS[ending](engine);
  const figures = async (file: Uint8Array) => (await understood(file)).book.pages[0]!.rows.map((row) => row[1]);
  expect(await figures(bytes)).toEqual(Object.values(typed));
  const file = XLSX.read(bytes, { cellStyles: true });
  const sheet = file.Sheets[file.SheetNames[0]!]!;
  expect(sheet.B2.v).toBe(18);
  sheet.B2 = { t: "n", v: 19.5 };
  const changed = new Uint8Array(XLSX.write(file, { type: "array", bookType: ending }));
  expect((await figures(changed))[0]).toBe("19.5");
}); // biome-ignore format: long lines

test.each(["xlsx", "ods"] as const)("choices, hidden rows, notes, widths and names come back from .%s", async (ending) => {
  const start = bookOf({ style: "box", cloth: "linen, fine", long: "30", wide: "=long*2", kept: "wool" });
  const [page] = start.pages;
  const many = Array.from({ length: 60 }, (_, i) => `colour ${i}`).join("; ");
  const cells = { B1: { choices: "box; knife" }, B2: { choices: "linen, fine; wool" }, B3: { choices: many, decimals: 2 }, B4: { choices: "=B1:B2" }, B5: { choices: "=styles" } };
  const book = { ...start, names: { ...start.names, styles: "Draft!B1:B2" }, pages: [{ ...page!, cells, hidden: ["2:3"], notes: { A1: "of <linen> & wool\n  twice", C9: "below" } }] };
  const { bytes } = await WRITERS[ending](new Engine(book, layDesk));
  const [back] = (await understood(bytes)).book.pages;
  expect([back!.hidden, back!.notes, back!.columns.map(({ width }) => Math.round(width / 10))]).toEqual([["2:3"], book.pages[0]!.notes, [20, 12]]);
  expect(Object.entries(back!.cells!).map(([address, { choices }]) => [address, choices])).toEqual([
    ["B1", "box; knife"],
    ["B2", "linen, fine; wool"],
    ["B3", many],
    ["B4", "=B1:B2"],
    ["B5", "=styles"],
  ]);
}); // biome-ignore format: long lines

test.each(["xlsx", "ods"] as const)("hostile texts and titles never break a file of .%s", async (ending) => {
  const start = bookOf({ apron: "a\u000bb\ud800c\u0000\ufffe", long: "]]><&'\"", half: "_x0041_", out: "=1+1" });
  const pages = [{ ...start.pages[0]!, title: `<&"> ${"é".repeat(60)}`, notes: { B1: "\u0001note\ud800" } }];
  const book = { ...start, title: "<&\u0002>", pages, names: {} };
  const { bytes } = await WRITERS[ending](new Engine(book, layDesk));
  const back = (await understood(bytes)).book;
  expect(back.pages[0]!.title).toBe(pages[0]!.title);
  expect(back.pages[0]!.rows.map((row) => row[1])).toEqual(["abc", "]]><&'\"", "_x0041_", "=1+1"]);
  expect(back.pages[0]!.notes).toEqual({ B1: "note" });
}); // biome-ignore format: long lines

describe("a file of Ellwand's own that another program changed", () => {
  const cells = { waist: "27", hip: "40", gap: "=SPREAD_PER_GAP(waist/2;hip/2;5)", double: "=gap*2", plain: "=waist+1" };
  const changed = async (change: (sheet: XLSX.WorkSheet, file: XLSX.WorkBook) => void) => {
    const { bytes } = await writeXlsx(new Engine(bookOf(cells), layDesk));
    const file = XLSX.read(bytes, { cellFormula: true, cellNF: true });
    change(file.Sheets.Draft!, file);
    return understood(new Uint8Array(XLSX.write(file, { type: "array", bookType: "xlsx" })));
  };
  const formulas = (book: Book) => book.pages[0]!.rows.map((row) => row[1]);

  test("keeps a changed measurement, and the formulas that rest on it are Ellwand's again", async () => {
    const { book } = await changed((sheet) => {
      sheet.B2!.v = 28;
    });
    expect(formulas(book)).toEqual(["28", "40", cells.gap, cells.double, cells.plain]);
  });

  test("keeps what was typed over a formula", async () => {
    const { book, all } = await changed((sheet) => {
      sheet.B6 = { t: "n", v: 31, f: "B2+4" };
      sheet.B5 = { t: "n", v: 9 };
    });
    expect(formulas(book)).toEqual(["27", "40", cells.gap, "9", "=B1+4"]);
    expect(all).toContain("1 formula of Ellwand comes back as it was typed.");
  });

  test("falls back to the plain formulas and the workings where rows were moved", async () => {
    const { book, all } = await changed((sheet, file) => {
      sheet.A7 = sheet.A6!;
      sheet.B7 = { ...sheet.B6! };
      sheet.B6 = { ...sheet.B4! };
      sheet["!ref"] = "A1:B7";
      file.Sheets.Workings!.A5!.v = "Draft!B9";
    });
    expect(book.pages.map(({ title }) => title)).toEqual(["Draft", "Workings"]);
    expect(formulas(book)[2]).toMatch(/^=Workings!\$D\$\d+$/);
    expect(all).not.toContain("of Ellwand come");
  });

  test("falls back where only an argument of a call was moved: the call as typed would name another cell", async () => {
    const { book } = await changed((_, file) => {
      const line = Object.entries(file.Sheets.Workings!).find(([, cell]) => String(cell.f).includes("B2") || String(cell.f).includes("waist"));
      line![1].f = "'Draft'!B3/2";
    });
    expect(book.pages.map(({ title }) => title)).toEqual(["Draft", "Workings"]);
  });
}); // biome-ignore format: long lines

test("a book with decimal commas that is read again as a book of its own has them still", async () => {
  const book: Book = { ...bookOf({ waist: "70,5", ease: "2,5", band: "=waist+ease" }), unit: "cm", mark: "1 mm", decimal: "comma" };
  const { bytes } = await writeXlsx(new Engine(book, layDesk));
  const own = (await understood(bytes, {}, "band.xlsx", null)).book;
  expect([own.decimal, own.pages[0]!.rows[0]![1]]).toEqual(["comma", "70,5"]);
  // Put into a book with points, its figures are typed as that book has them.
  const added = (await understood(bytes, {}, "band.xlsx", "point")).book;
  expect([added.decimal, added.pages[0]!.rows[0]![1]]).toEqual([undefined, "70.5"]);
}); // biome-ignore format: in pairs
