import fc from "fast-check";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { applied, difference } from "../../../../src/app/files/changes.ts";
import {
  broughtForward,
  dropWritten,
  Journal,
  writtenIds,
  writtenOf,
} from "../../../../src/app/files/journal.ts";
import * as edit from "../../../../src/book/edit.ts";
import { nameCell } from "../../../../src/book/naming.ts";
import { type Book, blankBook, typedAt } from "../../../../src/book/shape.ts";
import { writeBook } from "../../../../src/book/write.ts";
import { often } from "../../../often.ts";

/** A store of texts such as a browser has, with room for so many letters. */
function storage(room: number) {
  const texts: Record<string, string> = {};
  const methods = {
    getItem: (key: string) => texts[key] ?? null,
    setItem: (key: string, text: string) => {
      const others = Object.entries(texts).filter(([one]) => one !== key);
      const sum = others.reduce((all, [one, value]) => all + one.length + value.length, 0);
      if (sum + key.length + text.length > room) throw new DOMException("full", "QuotaExceededError");
      texts[key] = text;
    },
    removeItem: (key: string) => delete texts[key],
  };
  return new Proxy(texts, { get: (_, name) => methods[name as keyof typeof methods] });
}

let room = 5_000_000;
beforeEach(() => {
  vi.stubGlobal("window", { localStorage: storage(room), sessionStorage: storage(room) });
});
afterEach(() => {
  vi.unstubAllGlobals();
  room = 5_000_000;
});

const type = (book: Book, row: number, typed: string): Book =>
  edit.type(book, [{ page: 0, row, column: 0, typed }]);
const small = blankBook("The squire's cloak", "in", "1/8");
const large: Book = {
  ...small,
  pages: small.pages.map((page, i) =>
    i > 0
      ? page
      : { ...page, rows: Array.from({ length: 20_000 }, (_, row) => [`cell ${row}`, "16 1/2", ""]) },
  ),
};

it("a change is found and put back between any two states of plain data", () => {
  const plain = fc.jsonValue({ maxDepth: 4 });
  fc.assert(
    fc.property(plain, plain, (old, next) => {
      const change = difference(old, next);
      expect(change === null ? old : applied(old, JSON.parse(JSON.stringify(change)))).toEqual(next);
    }),
    { seed: 11, numRuns: often(500) },
  );
});

it.each([
  ["small", small],
  ["large", large],
])(
  "a %s book is brought forward from what was written down, with rows put in, taken out and blank ones",
  (_size, book) => {
    const journal = new Journal("tab");
    journal.begin("id", book, 7);
    let now = book;
    const steps: ((book: Book) => Book)[] = [
      (one) => type(one, 3, "russet"),
      (one) => edit.insertRows(one, 0, 1, 2),
      (one) => type(one, 60, "far below"),
      (one) => type(one, 60, ""),
      (one) => edit.removeRows(one, 0, 2, 3),
      (one) => edit.insertColumns(one, 0, 1, 1),
      (one) => ({ ...one, title: "The miller's cloak" }),
      (one) => nameCell(one, { page: 0, row: 1, column: 0 }, "hip"),
    ];
    for (const step of steps) {
      now = step(now);
      expect(journal.write(now)).toBe(true);
    }
    expect(writtenIds()).toEqual(["id"]);
    const [written] = writtenOf("id");
    expect(written!.tab).toBe("tab");
    expect(writeBook(broughtForward(book, written!.entries, 0)!)).toBe(writeBook(now));
  },
);

it("a typed cell of a book of 60,000 cells is written down in few letters", () => {
  const journal = new Journal("tab");
  journal.begin("id", large, 7);
  journal.write(type(large, 19_000, "russet"));
  expect(JSON.stringify(writtenOf("id")).length).toBeLessThan(400);
});

it("what the shelf has kept is dropped; what came after goes on from it", () => {
  for (const book of [small, large]) {
    const journal = new Journal("tab");
    journal.begin("id", book, 7);
    const first = type(book, 1, "one");
    const second = type(first, 2, "two");
    journal.write(first);
    const { step } = journal;
    journal.write(second);
    journal.kept(first, step, 8, second);
    const [written] = writtenOf("id");
    expect(writeBook(broughtForward(first, written!.entries, step)!)).toBe(writeBook(second));
    journal.kept(second, journal.step, 9, second);
    expect(writtenOf("id")).toEqual([]);
  }
});

it("a step for which there was no room is in the next one that finds room", () => {
  vi.stubGlobal("window", { localStorage: storage(2_000), sessionStorage: storage(0) });
  const journal = new Journal("tab");
  journal.begin("id", large, 7);
  const first = type(large, 1, "x".repeat(3_000));
  expect(journal.write(first)).toBe(false);
  const second = type(type(first, 1, "short"), 2, "two");
  expect(journal.write(second)).toBe(true);
  const [written] = writtenOf("id");
  const book = broughtForward(large, written!.entries, written!.entries[0]!.from)!;
  expect([1, 2].map((row) => typedAt(book, 0, row, 0))).toEqual(["short", "two"]);
});

it("two tabs write down under keys of their own; damaged lines and steps that do not fit give nothing", () => {
  for (const tab of ["one", "two"]) {
    const journal = new Journal(tab);
    journal.begin("id", large, 7);
    journal.write(type(large, 1, tab));
    journal.write(type(large, 1, `${tab} again`));
  }
  expect(writtenOf("id").map(({ tab }) => tab)).toEqual(["one", "two"]);
  dropWritten("id", "one");
  const [two] = writtenOf("id");
  expect(broughtForward(large, two!.entries.slice(1), 0)).toBeNull();
  expect(broughtForward(small, two!.entries, 0)).toBeNull();
  window.localStorage.setItem("ellwand.journal.id.three.1", '{"revision":7,"from":0,"st');
  window.localStorage.setItem("ellwand.journal.id.four.1", '{"revision":7}');
  expect(writtenOf("id").map(({ tab }) => tab)).toEqual(["two"]);
});

it("with no store at all nothing is thrown and writing says that it did not succeed", () => {
  vi.stubGlobal("window", {
    get localStorage() {
      throw new DOMException("no", "SecurityError");
    },
  });
  const journal = new Journal("tab");
  journal.begin("id", small, 0);
  expect(journal.write(type(small, 1, "one"))).toBe(false);
  expect([writtenIds(), writtenOf("id")]).toEqual([[], []]);
});

it("what is written goes on from the step that the shelf names, after an undo and after another book", () => {
  const journal = new Journal("tab");
  journal.begin("id", large, 7);
  const kept = type(large, 3, "russet");
  journal.write(kept);
  journal.kept(kept, journal.step, 8, kept);
  const by = { tab: "tab", step: journal.step };
  // Typed and undone before it was saved: the shelf holds this very state already, and names the step before.
  journal.write(type(kept, 3, "scarlet"));
  journal.write(kept);
  journal.kept(kept, by.step, 8, kept);
  const next = type(kept, 4, "green");
  journal.write(next);
  const left = () => writtenOf("id")[0]!.entries.filter(({ step }) => step > by.step);
  const forward = () => {
    const book = broughtForward(kept, left(), by.step);
    return book && writeBook(book);
  };
  expect(forward()).toBe(writeBook(next));
  dropWritten("id", "tab");
  // Another book was open meanwhile, and steps were done in it.
  journal.begin("other", small, 1);
  journal.write(type(small, 1, "grey"));
  journal.begin("id", kept, 8, by);
  journal.write(next);
  expect(forward()).toBe(writeBook(next));
});
