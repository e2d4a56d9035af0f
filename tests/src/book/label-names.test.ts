import { expect, test } from "vitest";
import { labelsIn } from "../../../src/book/label-names.ts";
import { nameFault } from "../../../src/book/names.ts";
import { type Book, blankBook, MOST_ROWS } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { nameAll, offeredNames } from "../../../src/store/names-from-labels.ts";
import { Store } from "../../../src/store/store.ts";

const column = { heading: "", kind: "any", width: 100 } as const;
const LABELS = [
  "Waist girth:",
  "waist girth",
  "Hip, over the pad",
  "AB1",
  "1st pleat",
  "true",
  "ease",
  "- - -",
  "",
  "hem",
  "depth below the seam, measured at the centre back",
  "Länge",
];
const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    { title: "Measure", stage: "Measure", columns: [column, column], rows: LABELS.map((label, i) => [label, String(20 + i)]), notes: {} },
    { title: "Cut", stage: "Cut", columns: [column, column, column], rows: [["Piece", "How many", "Cloth"], ["front", "2", "wool"], ["back", "1", "wool"], ["", "=SUM(B2:B3)"]], notes: {} },
  ],
  names: { hip_over_the_pad: "Cut!B2", the_hem: "Measure!B10" },
}; // biome-ignore format: pages
const BLOCK = { page: 0, top: 0, left: 0, bottom: LABELS.length - 1, right: 1 };

test("labels become names, and what was changed or left out is said", () => {
  const { by, names, left } = offeredNames(BOOK, BLOCK, null);
  expect(by).toBe("rows");
  expect(names.map(({ name, changed }) => [name, changed])).toEqual([
    ["waist_girth", null],
    ["waist_girth_2", "waist_girth is the name of Measure!B1"],
    ["hip_over_the_pad_2", "hip_over_the_pad is the name of Cut!B2"],
    ["ab_1", '"ab1" reads like a cell\'s address'],
    ["_1st_pleat", "a name begins with a letter or _"],
    ["true_figure", "TRUE is a function"],
    ["ease_figure", "EASE is a function"],
    ["depth_below_the_seam_measured_at_the", "the label is long"],
    ["länge", null],
  ]);
  expect(left).toEqual([
    { label: "- - -", why: "it has no letters" },
    { label: "hem", why: "Measure!B10 has the name the_hem" },
  ]);
  for (const { name } of names) expect(nameFault(name)).toBeNull();
  // On a page, what the book calls so is free.
  expect(offeredNames(BOOK, BLOCK, 0).names[2]!.name).toBe("hip_over_the_pad");
});

test("a block gets one name: of the heading in or above it, of its column's heading, or of its page", () => {
  const name = (page: number, top: number, left: number, bottom: number, right: number, book = BOOK) => {
    const block = { page, top, left, bottom, right };
    const [one] = offeredNames(book, block, null, "block").names;
    return [one?.name, one?.block.top, one?.block.bottom];
  };
  expect(name(1, 0, 1, 2, 1)).toEqual(["how_many", 1, 2]);
  expect(name(1, 1, 1, 3, 1)).toEqual(["how_many", 1, 3]);
  // A column of words may have no heading in it: all of it is the list.
  expect(name(1, 0, 0, 2, 0)).toEqual(["cut", 0, 2]);
  expect(name(1, 0, 0, 3, 2)).toEqual(["cut", 0, 3]);
  expect(name(1, 0, 1, MOST_ROWS - 1, 1)).toEqual(["cut", 0, MOST_ROWS - 1]);
  const headed = { ...column, heading: "Layers" };
  const layered = {
    ...BOOK,
    pages: [BOOK.pages[0]!, { ...BOOK.pages[1]!, columns: [column, headed, column] }],
  };
  expect(name(1, 0, 1, MOST_ROWS - 1, 1, layered)).toEqual(["layers", 0, MOST_ROWS - 1]);
  expect(labelsIn(BOOK, { page: 1, top: 1, left: 1, bottom: 2, right: 1 })).toBe("block");
});

test("headings name the columns below them", () => {
  const block = { page: 1, top: 0, left: 0, bottom: 2, right: 2 };
  const { by, names } = offeredNames(BOOK, block, null);
  expect(by).toBe("headings");
  expect(names.map(({ name, block: { top, bottom, left } }) => [name, top, bottom, left])).toEqual([
    ["piece", 1, 2, 0],
    ["how_many", 1, 2, 1],
    ["cloth", 1, 2, 2],
  ]);
});

test("all names of a block are one step; one that can't be given refuses them all", () => {
  const store = new Store(BOOK, layDesk);
  const headings = { page: 1, top: 0, left: 0, bottom: 2, right: 2 };
  const giveOffered = () => store.run(nameAll(offered, null));
  const offered = offeredNames(store.book, headings, null).names;
  expect(giveOffered()).toBeNull();
  expect(store.book.names.how_many).toBe("Cut!B2:B3");
  expect(giveOffered()).toBe("Cut!A2:A3 has the name piece already");
  expect(offeredNames(store.book, headings, null).left[0]!.why).toBe("Cut!A2:A3 has the name piece");
  expect(offeredNames(store.book, { ...headings, top: 8, bottom: 9 }, null).names).toEqual([]);
  const cell = (row: number) => ({ page: 0, top: row, left: 1, bottom: row, right: 1 });
  const give = (first: string, second: string) =>
    store.run(
      nameAll(
        [
          { block: cell(0), name: first },
          { block: cell(1), name: second },
        ],
        0,
      ),
    );
  expect(give("waist", "Waist")).toBe("Waist is given twice; choose another name for one");
  expect(give("waist", "B2")).toMatch(/^"B2" reads like/);
  expect(give("waist", "hip")).toBeNull();
  expect(store.book.pages[0]!.names).toEqual({ waist: "Measure!B1", hip: "Measure!B2" });
  store.undo();
  store.undo();
  expect(store.book).toEqual(BOOK);
  store.engine.destroy();
});
