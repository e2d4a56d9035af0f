import { expect, test } from "vitest";
import { fullAddress } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import { findCells, replacedIn, usersOfPage, type Wanted } from "../../../src/book/find.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { replaceTexts } from "../../../src/store/changing-cells.ts";
import { Store } from "../../../src/store/store.ts";

const at = (page: number, row: number, column: number) => ({ page, row, column });
const book = edit.type(blankBook("Withy Green", "in", "1/8"), [
  { ...at(0, 0, 0), typed: "waist girth" },
  { ...at(0, 0, 1), typed: "27" },
  { ...at(1, 3, 0), typed: "hem" },
  { ...at(1, 3, 1), typed: "=Measure!B1*2+SUM(Measure!B1;1)" },
  { ...at(1, 4, 0), typed: "Waist" },
  { ...at(3, 0, 0), typed: "=Draft!B4" },
]);
const wanted = (text: string, more: Partial<Wanted> = {}): Wanted => ({
  text,
  exactCase: false,
  wholeCell: false,
  page: null,
  within: "all",
  ...more,
});
const found = (one: Wanted) => findCells(book, one).map(({ place }) => fullAddress(book, place));

test("a text is found in texts and formulas, page by page, as it is asked for", () => {
  expect(found(wanted("WAIST"))).toEqual(["Measure!A1", "Draft!A5"]);
  expect(found(wanted("Waist", { exactCase: true }))).toEqual(["Draft!A5"]);
  expect(found(wanted("waist", { wholeCell: true }))).toEqual(["Draft!A5"]);
  expect(found(wanted("b1"))).toEqual(["Draft!B4"]);
  expect(found(wanted("b", { within: "formulas", page: 3 }))).toEqual(["Cut!A1"]);
  expect(found(wanted("e", { within: "texts", page: 1 }))).toEqual(["Draft!A4"]);
  expect(found(wanted("*2+"))).toEqual(["Draft!B4"]);
  expect(found(wanted(""))).toEqual([]);
});

test("what replaces a text stands as it was typed, everywhere it is found in a cell", () => {
  expect(replacedIn("waist and Waist", wanted("waist"), "$& hip")).toBe("$& hip and $& hip");
  expect(replacedIn(" Waist ", wanted("waist", { wholeCell: true }), "hip")).toBe("hip");
});

test("everything found is replaced in one step, and nothing where a formula could not be read any more", () => {
  const store = new Store(book, layDesk);
  const fault = (typed: string, page: number) => store.engine.unreadable(typed, page);
  const places = findCells(book, wanted("measure!b1")).map(({ place }) => place);
  expect(store.run(replaceTexts(places, wanted("measure!b1"), "10", fault))).toBeNull();
  expect(store.engine.value(at(3, 0, 0))).toBe(31);
  store.undo();
  expect(store.book.pages).toEqual(book.pages);
  expect(store.run(replaceTexts(places, wanted("(measure"), "((", fault))).toMatch(
    /^nothing was replaced: Draft!B4 would be =Measure!B1\*2\+SUM\(\(!B1;1\), which can't be read \(.+\)$/,
  );
});

test("the cells of other pages that use a page are known before it is deleted", () => {
  expect(usersOfPage(book, 1).map((place) => fullAddress(book, place))).toEqual(["Cut!A1"]);
  expect(usersOfPage(book, 3)).toEqual([]);
  // By a name of one of its cells as well, in whatever case.
  const named = edit.type({ ...book, names: { waist: "Draft!B1" } }, [{ ...at(3, 4, 4), typed: "=WAIST*2" }]);
  expect(usersOfPage(named, 1).map((place) => fullAddress(named, place))).toEqual(["Cut!A1", "Cut!E5"]);
});
