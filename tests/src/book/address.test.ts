import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import {
  cellAddress,
  columnLetters,
  columnNumber,
  findPlace,
  fullAddress,
  pageReference,
} from "../../../src/book/address.ts";
import { lookUp, nameFault, nameOf } from "../../../src/book/names.ts";
import { blankBook } from "../../../src/book/shape.ts";

const book = {
  ...blankBook("Withy Green", "in", "1/8"),
  names: { hem: "Draft!B3", Hip: "Measure!A1", hem_again: "Draft!B3" },
};

test("columns are lettered as in every grid: Z is followed by AA, ZZ by AAA", () => {
  expect([0, 25, 26, 701, 702].map(columnLetters)).toEqual(["A", "Z", "AA", "ZZ", "AAA"]);
  fc.assert(
    fc.property(fc.nat(18_277), (column) => columnNumber(columnLetters(column)) === column),
    { seed: 1 },
  );
});

test("an address is found again, quotes in the page's title or not", () => {
  const titles = ["Draft", "Over skirt", "The widow's", "2nd fitting", "Größe", "A1", "a;b"];
  const pages = titles.map((title) => ({ ...book.pages[0]!, title }));
  fc.assert(
    fc.property(fc.nat(titles.length - 1), fc.nat(19_999), fc.nat(199), (page, row, column) => {
      const place = { page, row, column };
      expect(findPlace({ ...book, pages }, fullAddress({ ...book, pages }, place))).toEqual(place);
      // HyperFormula, as the reader of formulas, takes the same spelling for the same cell.
      const hf = HyperFormula.buildEmpty({ licenseKey: "gpl-v3" });
      for (const title of titles) hf.addSheet(title);
      const address = `${pageReference(titles[page]!)}!${cellAddress(row, column)}`;
      expect(hf.simpleCellAddressFromString(address, 0)).toEqual({ sheet: page, row, col: column });
      hf.destroy();
    }),
    { seed: 2, numRuns: 60 },
  );
});

test("what is no address, or on no page, is nowhere", () => {
  for (const text of [
    "",
    "B3",
    "Draft!",
    "Draft!B0",
    "Draft!3",
    "Draught!B3",
    "Draft!B3:B4",
    "Draft!B3 ",
    "__proto__",
  ]) {
    expect(findPlace(book, text.trim() === text ? text : "x"), text).toBeNull();
  }
});

test("a cell is looked up by its name in any case, its address, or its address on a page", () => {
  expect(lookUp(book, "HEM")).toEqual({ page: 1, row: 2, column: 1 });
  expect(lookUp(book, "draft!$b$3")).toEqual({ page: 1, row: 2, column: 1 });
  expect(lookUp(book, "B3", 1)).toEqual({ page: 1, row: 2, column: 1 });
  expect(lookUp(book, "toString")).toBeNull();
  expect(nameOf(book, { page: 1, row: 2, column: 1 })).toBe("hem");
});

test("every name that is let through can be given to the engine, and is read back as that name", () => {
  const words = fc.oneof(
    fc.stringMatching(/^[A-Za-zÀ-ʯ_][A-Za-zÀ-ʯ0-9_]{0,8}$/),
    fc.constantFrom(
      "hem2",
      "waist2",
      "abcdefgh12",
      "rc",
      "r",
      "c",
      "R1C1",
      "R1C1x",
      "true",
      "in",
      "cm",
      "pi",
      "e",
      "_1",
      "hem_2",
    ),
  );
  const hf = HyperFormula.buildFromArray([[7]], { licenseKey: "gpl-v3" });
  let let_through = 0;
  fc.assert(
    fc.property(words, (name) => {
      if (nameFault(name)) return;
      let_through += 1;
      hf.addNamedExpression(name, "=Sheet1!$A$1");
      expect(hf.calculateFormula(`=${name}*2`, 0)).toBe(14);
      hf.removeNamedExpression(name);
    }),
    { seed: 3, numRuns: 500 },
  );
  expect(let_through).toBeGreaterThan(200);
});

test("a name that would be read as something else is refused with a better one", () => {
  expect(nameFault("waist2")).toBe(
    '"waist2" reads like a cell\'s address; write it otherwise, such as waist_2',
  );
  expect(nameFault("R1C1")).toMatch(/meaning of its own/);
  expect(nameFault("__proto__")).toMatch(/meaning of its own/);
  expect(nameFault("hip over pad")).toMatch(/letters, digits and _ only/);
  expect(nameFault("2hem")).toMatch(/begins with a letter/);
  expect(nameFault("x".repeat(61))).toBe("a name has at most 60 letters, not 61");
  for (const name of ["hip_over_pad", "Größe", "waist_2", "_", "in"]) expect(nameFault(name)).toBeNull();
});
