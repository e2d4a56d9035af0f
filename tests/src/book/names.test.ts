import { expect, test } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import { moveBlock } from "../../../src/book/move.ts";
import {
  blockAddress,
  everyName,
  findBlock,
  lookUp,
  nameMeant,
  namesMeant,
  nameText,
  writtenOut,
} from "../../../src/book/names.ts";
import { nameBlock } from "../../../src/book/naming.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";

const COLUMN = { heading: "", kind: "any", width: 100 } as const;
const page = (title: string, rows: string[][], names?: Page["names"]): Page => ({
  title,
  stage: "Cut",
  columns: [COLUMN, COLUMN, COLUMN],
  rows,
  notes: {},
  ...(names && { names }),
});

const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    page("Cut", [["piece", "how many"], ["front", "2"], ["back", "1"], ["cuff", "4"], ["", "=SUM(how_many)"]]),
    page("Miller", [["waist", "27"], ["hem", "=waist*3"]], { waist: "Miller!B1", hem: "Miller!B2" }),
    page("Big widow", [["waist", "34"], ["hem", "=waist*3"]], { waist: "'Big widow'!B1" }),
    page("Trimmings", [["binding", "=hem+2"], ["both", "=Miller!waist+'Big widow'!waist"]]),
  ],
  names: { how_many: "Cut!B2:B4", cut_list: "Cut!A:B" },
}; // biome-ignore format: tables

const formula = (book: Book, title: string, row: number, column = 1) =>
  book.pages.find((one) => one.title === title)?.rows[row]?.[column];

test("the address of a list is read and written one way", () => {
  for (const [given, written] of [
    ["Cut!b2:$B$4", "Cut!B2:B4"],
    ["cut!B4:A2", "Cut!A2:B4"],
    ["'Big widow'!A1", "'Big widow'!A1"],
    ["Cut!C:A", "Cut!A:C"],
    ["Cut!$2:3", "Cut!2:3"],
  ] as const)
    expect(blockAddress(BOOK, findBlock(BOOK, given)!), given).toBe(written);
  for (const none of ["Cut!B2:B", "Sleeve!A:B", "B2:B4", "Cut!B0:B3", "Cut!:", "", "Cut!2:B"])
    expect(findBlock(BOOK, none), none).toBeNull();
});

test("a name means that of its own page, then the book's, then that of the only page that has it", () => {
  expect(nameMeant(BOOK, "WAIST", 1)?.address).toBe("Miller!B1");
  expect(nameMeant(BOOK, "waist", 2)?.address).toBe("'Big widow'!B1");
  expect(nameMeant(BOOK, "hem", 3)?.address).toBe("Miller!B2");
  expect(namesMeant(BOOK, "waist", 3).map(({ address }) => address)).toEqual(["Miller!B1", "'Big widow'!B1"]);
  expect(nameMeant(BOOK, "'Big widow'!waist", 1)?.address).toBe("'Big widow'!B1");
  const also = { ...BOOK, names: { ...BOOK.names, waist: "Cut!B2" } };
  expect(nameMeant(also, "waist", 3)?.address).toBe("Cut!B2");
  expect(nameMeant(also, "waist", 1)?.address).toBe("Miller!B1");
  // From a page with a name of its own, the book's is written by its address.
  const texts = (at: number | null) => everyName(also).map((one) => nameText(also, one, at));
  expect(texts(1)).toEqual(["how_many", "cut_list", "Cut!B2", "waist", "hem", "'Big widow'!waist"]);
  expect(texts(3)).toEqual(["how_many", "cut_list", "waist", "Miller!waist", "hem", "'Big widow'!waist"]);
});

test("a list is no single cell, and its name is written out for the engine where a formula uses it", () => {
  expect(lookUp(BOOK, "how_many")).toBeNull();
  expect(lookUp(BOOK, "Miller!waist")).toEqual({ page: 1, row: 0, column: 1 });
  expect(writtenOut(BOOK, '=SUM(how_many)&"how_many"', 0)).toBe('=SUM(Cut!$B$2:$B$4)&"how_many"');
  expect(writtenOut(BOOK, "=COUNTA(cut_list)+waist", 2)).toBe("=COUNTA(Cut!$A:$B)+'Big widow'!$B$1");
  expect(writtenOut(BOOK, "=waist", 3)).toBe("=waist");
});

test("a row put in within a list makes it longer, one before or after it does not", () => {
  const at = (row: number) => edit.insertRows(BOOK, 0, row, 1).names;
  expect(at(2)).toEqual({ how_many: "Cut!B2:B5", cut_list: "Cut!A:B" });
  expect(at(1).how_many).toBe("Cut!B3:B5");
  expect(at(4).how_many).toBe("Cut!B2:B4");
  expect(edit.removeRows(BOOK, 0, 3, 2).names.how_many).toBe("Cut!B2:B3");
  expect(edit.removeRows(BOOK, 0, 1, 3).names.how_many).toBeUndefined();
  expect(edit.insertColumns(BOOK, 0, 1, 1).names).toEqual({ how_many: "Cut!C2:C4", cut_list: "Cut!A:C" });
  const tall = { ...BOOK, names: { all: "Cut!A2:B19999", last: "Cut!C19999" } };
  expect(edit.insertRows(tall, 0, 5, 10).names).toEqual({ all: "Cut!A2:B20000" });
});

test("a list that is moved as a whole keeps its name, also on another page", () => {
  const block = { page: 0, top: 1, left: 1, bottom: 3, right: 1 };
  expect(moveBlock(BOOK, block, { page: 3, row: 5, column: 2 }).names.how_many).toBe("Trimmings!C6:C8");
  const waist = { page: 1, top: 0, left: 1, bottom: 0, right: 1 };
  const moved = moveBlock(BOOK, waist, { page: 3, row: 8, column: 0 });
  expect(moved.pages[1]!.names).toEqual({ waist: "Trimmings!A9", hem: "Miller!B2" });
});

test("a page that gets another title is followed in Page!name, and one that is deleted is said to be gone", () => {
  const renamed = edit.renamePage(BOOK, 2, "Widow");
  expect(formula(renamed, "Trimmings", 1)).toBe("=Miller!waist+Widow!waist");
  expect(renamed.pages[2]!.names).toEqual({ waist: "Widow!B1" });
  expect(formula(edit.removePage(BOOK, 2), "Trimmings", 1)).toBe("=Miller!waist+#REF!");
});

test("a name given, changed or taken away never makes a formula mean other cells", () => {
  const cell = (at: number, row: number) => ({ page: at, top: row, left: 1, bottom: row, right: 1 });
  // The only hem is the Miller's until the widow gets one.
  const two = nameBlock(BOOK, cell(2, 1), "hem", 2);
  expect(formula(two, "Trimmings", 0)).toBe("=Miller!hem+2");
  // A name of the book would come before it.
  const books = nameBlock(BOOK, cell(3, 5), "hem", null);
  expect(formula(books, "Trimmings", 0)).toBe("=Miller!hem+2");
  // A page's own name would hide the book's.
  const own = nameBlock(BOOK, cell(0, 0), "how_many", 0);
  expect(formula(own, "Cut", 4)).toBe("=SUM(Cut!B2:B4)");
  // Renamed, formulas follow, with its page where they name it.
  const girth = nameBlock(BOOK, cell(1, 0), "girth", 1);
  expect([formula(girth, "Miller", 1), formula(girth, "Trimmings", 1)]).toEqual([
    "=girth*3",
    "=Miller!girth+'Big widow'!waist",
  ]);
  expect(formula(girth, "Big widow", 1)).toBe("=waist*3");
  // From the page to the book: whoever used it plainly still does.
  const freed = nameBlock(BOOK, cell(1, 0), "waist", null);
  expect([freed.names.waist, freed.pages[1]!.names]).toEqual(["Miller!B1", { hem: "Miller!B2" }]);
  expect([formula(freed, "Miller", 1), formula(freed, "Trimmings", 1)]).toEqual([
    "=waist*3",
    "=waist+'Big widow'!waist",
  ]);
  // Taken away, it is missed.
  const gone = nameBlock(BOOK, cell(1, 0), "", null);
  expect(gone.pages[1]!.names).toEqual({ hem: "Miller!B2" });
  expect(formula(gone, "Trimmings", 1)).toBe("=Miller!waist+'Big widow'!waist");
});

test("names of lists and of pages are in the file, and come back spelt one way", () => {
  const text = writeBook(BOOK);
  expect(text).toContain('"how_many": "Cut!B2:B4"');
  expect(readBook(text)).toEqual({ book: BOOK });
  const read = (change: (data: Record<string, unknown> & { pages: Record<string, unknown>[] }) => void) => {
    const data = JSON.parse(text);
    change(data);
    const reading = readBook(JSON.stringify(data));
    return "reason" in reading ? reading.reason : reading.book;
  };
  expect(
    read((data) => {
      data.names = { cut_list: "cut!$b:a" };
    }),
  ).toMatchObject({ names: { cut_list: "Cut!A:B" } });
  const own = (names: unknown) =>
    read((data) => {
      data.pages[1]!.names = names;
    });
  expect(own({ hem: "Miller!B2:C99999" })).toBe(
    'the name hem points at "Miller!B2:C99999", which is not in this book',
  );
  expect(own({ hem: "Miller!B2", HEM: "Miller!B3" })).toBe('the page "Miller" has two cells named HEM');
  expect(own({ B2: "Miller!B2" })).toMatch(
    /^the page "Miller" has a cell name that can't be used: "B2" reads/,
  );
  expect(own({ hem: 3 })).toBe(
    'this book is damaged: the names at hem of the page "Miller" must be a text, not 3',
  );
  expect(own({})).not.toHaveProperty("pages.1.names");
});
