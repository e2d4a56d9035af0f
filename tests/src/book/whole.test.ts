/** What a file says beside what this version knows: it is read, edited and written again with nothing lost. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findPlace } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import { nameCell } from "../../../src/book/naming.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { withTrial } from "../../../src/engine/trials.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeMark, retitle } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";
import { often } from "../../often.ts";
import { book } from "./books.ts";

const opened = (text: string): Book => {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};
const reasonOf = (text: string): string => {
  const reading = readBook(text);
  return "reason" in reading ? reading.reason : "no reason: it was read";
};

type Group = Record<string, unknown>;

/** The same data is the same text, in whatever order its fields stand. "__proto__" is a key like others. */
const inOrder = (data: unknown): string =>
  JSON.stringify(data, (_, value) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

/** The groups of a book's file that have fields: the book, pages, columns, settings of cells, trials, lays, placements, origins. */
function groups(data: {
  pages: { columns: Group[]; cells?: Record<string, Group> }[];
  trials: Group[];
  lays: Group;
}): Group[] {
  const lays = Object.values(data.lays) as { placements: Group[]; origin?: Group }[];
  const placed = lays.flatMap(({ placements, origin }) => [...placements, ...(origin ? [origin] : [])]);
  const pages = data.pages.flatMap((page) => [
    page as unknown as Group,
    ...page.columns,
    ...Object.values(page.cells ?? {}),
  ]);
  return [data as unknown as Group, ...pages, ...data.trials, ...(lays as unknown as Group[]), ...placed];
}

/** Sets a field even where the key has a meaning of its own. */
const put = (group: object, key: string, value: unknown): void => {
  Object.defineProperty(group, key, { value, enumerable: true, configurable: true, writable: true });
};

const hostile = fc.constantFrom(
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "valueOf",
);
const future = fc.oneof(hostile, fc.constantFrom("other", "7", "colour", "given by", "", "länge")); // biome-ignore format: short
const value = fc.oneof(
  fc.string(),
  fc.integer(),
  fc.constant(null),
  fc.tuple(hostile, fc.string()).map(([key, text]) => [Object.fromEntries([[key, { [key]: text }]])]),
);
const additions = fc.array(fc.tuple(fc.nat(), future, value), { minLength: 1, maxLength: 8 });
const texts = fc.array(fc.tuple(hostile, fc.string()), { maxLength: 3 });

/** The file of a book with fields of a newer version put in, and hostile keys among its notes, trials' cells and lays. */
const file = fc.tuple(book, additions, texts).map(([one, list, more]) => {
  const data = JSON.parse(writeBook(one));
  const all = groups(data);
  for (const [at, key, what] of list) put(all[at % all.length]!, key, what);
  more.forEach(([key, text], i) => {
    put(data.pages[i % data.pages.length].notes, key, text);
    if (data.trials[0]) put(data.trials[0].cells, key, text);
    put(data.lays, key, { placements: [], length: 3, density: 0.5 });
  });
  return data;
});

describe("fields that this version does not know", () => {
  test("are read and written again, wherever they stand, and the text stays the same from then on", () => {
    fc.assert(
      fc.property(file, (data) => {
        const text = writeBook(opened(JSON.stringify(data)));
        expect(inOrder(JSON.parse(text))).toBe(inOrder(data));
        expect(writeBook(opened(text))).toBe(text);
      }),
      { seed: 20_261_128, numRuns: often(300) },
    );
    expect(({} as Group).polluted).toBeUndefined();
  });

  test("stay through every kind of edit, undo and redo", () => {
    const store = new Store(opened(JSON.stringify(marked())), layDesk);
    const edits: ((one: Book) => Book)[] = [
      (one) => edit.type(one, [{ page: 0, row: 9, column: 0, typed: "more" }]),
      (one) => edit.insertRows(edit.insertColumns(one, 0, 1, 1), 0, 0, 2),
      (one) => edit.removeRows(edit.removeColumns(one, 0, 1, 1), 0, 0, 2),
      (one) => edit.renamePage(one, 0, "Figures"),
      (one) => nameCell(one, { page: 0, row: 0, column: 0 }, "first"),
      (one) => edit.noteCell(one, 0, "B3", "mind"),
      (one) => edit.changeColumn(one, 0, 0, { width: 90, heading: "Which" }),
      (one) => edit.addPage(one, { ...one.pages[0]!, title: "Copy" }, 0),
      (one) => edit.removePage(one, 0),
      (one) => convertBook(one, "cm"),
      (one) => withTrial(one, one.trials[0]!),
    ];
    for (const [i, change] of edits.entries()) store.run({ label: String(i), edit: change });
    store.run(retitle("Withy Green, again"));
    store.run(changeMark("5 mm"));
    store.keepLay("abcdabcdabcdabcd", { placements: [], length: 1, density: 1 });
    const inside = () => [...new Set(writeBook(opened(writeBook(store.book))).match(/kept \w+/g))].sort();
    const all = ["book", "column", "lay", "note", "origin", "page", "placement", "trial"].map(
      (one) => `kept ${one}`,
    );
    expect(inside()).toEqual(all);
    for (const _ of edits) store.undo();
    expect(inside()).toEqual(all);
    for (const _ of edits) store.redo();
    expect(inside()).toEqual(all);
  });

  test("are refused when they are too deep to be written again", () => {
    const deep = `${"[".repeat(200_000)}${"]".repeat(200_000)}`;
    const text = writeBook(blankBook("Withy Green", "in", "1/8"));
    expect(reasonOf(text.replace('"about"', `"future": ${deep}, "about"`))).toBe(
      "this book is damaged: the book's future must have at most 100 groups and lists within one another",
    );
  });
});

/** A book's data with a field of its own in each kind of group. */
function marked() {
  const data = JSON.parse(writeBook(blankBook("Withy Green", "in", "1/8")));
  data.trials = [{ title: "deeper", cells: { "Measure!B1": "7" } }];
  const placement = { piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 };
  data.lays = {
    "0123456789abcdef": { placements: [placement], length: 1, density: 1, origin: { by: "hand" } },
  };
  const [lay] = Object.values(data.lays) as [{ origin: Group }];
  const [page] = data.pages;
  const fields = {
    book: data,
    page,
    column: page.columns[0],
    trial: data.trials[0],
    lay,
    origin: lay.origin,
    placement,
  };
  for (const [name, group] of Object.entries(fields)) put(group, "__proto__", `kept ${name}`);
  put(page.notes, "__proto__", "kept note");
  return data;
}

describe("keys with a meaning of their own", () => {
  test("are looked at as closely as others", () => {
    const data = JSON.parse(writeBook(blankBook("Withy Green", "in", "1/8")));
    put(data.pages[0].notes, "__proto__", 3);
    expect(reasonOf(JSON.stringify(data))).toBe(
      'this book is damaged: the notes at __proto__ of the page "Measure" must be a text, not 3',
    );
    put(data.pages[0].notes, "__proto__", "a note");
    put(data.lays, "constructor", { placements: [], density: 1 });
    expect(reasonOf(JSON.stringify(data))).toBe(
      "this book is damaged: the kept lay constructor has no length",
    );
  });
});

describe("two spellings of one cell", () => {
  const sound = () => JSON.parse(writeBook(blankBook("Withy Green", "in", "1/8")));

  test("in one trial are refused by name when they type different texts", () => {
    const data = sound();
    data.trials = [{ title: "deeper", cells: { "Measure!B3": "1", "measure!$B$3": "2" } }];
    expect(reasonOf(JSON.stringify(data))).toBe(
      'trial 1, "deeper", types two texts into the cell Measure!B3, spelt "Measure!B3" and "measure!$B$3"; take one of them out of the file',
    );
    data.trials[0].cells["measure!$B$3"] = "1";
    const one = opened(JSON.stringify(data));
    expect(one.trials[0]!.cells).toEqual({ "Measure!B3": "1" });
    expect(findPlace(one, "Measure!B3")).toEqual({ page: 0, row: 2, column: 1 });
  });

  test("for one note are refused by name, and a note stands at the cell however it is spelt", () => {
    const data = sound();
    data.pages[0].notes = { b3: "here", $C$1: "there" };
    expect(opened(JSON.stringify(data)).pages[0]!.notes).toEqual({ B3: "here", C1: "there" });
    data.pages[0].notes.B3 = "and here";
    expect(reasonOf(JSON.stringify(data))).toBe(
      'the page "Measure" has two notes for the cell B3, spelt "b3" and "B3"; take one of them out of the file',
    );
  });
});
