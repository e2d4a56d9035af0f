import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { Journal, writtenIds } from "../../../../src/app/files/journal.ts";
import type { BookRecord } from "../../../../src/app/files/shelf.ts";
import { unkeptOf } from "../../../../src/app/files/unkept.ts";
import * as edit from "../../../../src/book/edit.ts";
import { type Book, blankBook, type FoundLay } from "../../../../src/book/shape.ts";
import { writeBook } from "../../../../src/book/write.ts";

/** A store of texts such as a browser has. */
function storage() {
  const texts: Record<string, string> = {};
  const methods = {
    getItem: (key: string) => texts[key] ?? null,
    setItem(key: string, text: string) {
      texts[key] = text;
    },
    removeItem: (key: string) => delete texts[key],
  };
  return new Proxy(texts, { get: (_, name) => methods[name as keyof typeof methods] });
}

beforeEach(() => {
  vi.stubGlobal("window", { localStorage: storage(), sessionStorage: storage() });
  vi.stubGlobal("navigator", { locks: { query: async () => ({ held: [] }) } });
});
afterEach(() => vi.unstubAllGlobals());

const type = (book: Book, typed: string): Book => edit.type(book, [{ page: 0, row: 0, column: 0, typed }]);
const book = blankBook("The squire's cloak", "in", "1/8");
const lay: FoundLay = { placements: [], length: 9, density: 0.8, origin: { by: "quick" } };
const withLay = (one: Book, origin: NonNullable<FoundLay["origin"]>): Book => ({
  ...one,
  lays: { abc: { ...lay, origin } },
});

/** What a tab leaves that went from the book in revision 7 to `states`, when the shelf has `kept` in revision 8 by another tab. */
async function left(states: readonly Book[], kept: Book) {
  const journal = new Journal("gone");
  journal.begin("id", book, 7);
  for (const state of states) journal.write(state);
  const record = { id: "id", revision: 8, by: { tab: "another", step: 3 } } as unknown as BookRecord;
  return (await unkeptOf({ record, text: writeBook(kept) })).map(({ fits, book: one }) => ({
    fits,
    title: one?.title,
  }));
}

it("a tab that had only found lays leaves no copy of a book that another tab has changed since", async () => {
  const quick = withLay(book, { by: "quick" });
  expect(
    await left([quick, withLay(quick, { by: "search", seconds: 2, proved: false })], type(book, "46")),
  ).toEqual([]);
  expect(writtenIds()).toEqual([]);
});

it("a step back to what the shelf had is work: the shelf may have taken the step before", async () => {
  const journal = new Journal("gone");
  journal.begin("id", book, 7);
  const typed = type(book, "46");
  journal.write(typed);
  const { step } = journal;
  // The shelf takes the step, and the tab is gone before it hears of that.
  journal.write({ ...book });
  const record = { id: "id", revision: 8, by: { tab: "gone", step } } as unknown as BookRecord;
  const [undone] = await unkeptOf({ record, text: writeBook(typed) });
  expect(undone?.fits).toBe(true);
  expect(writeBook(undone!.book!)).toBe(writeBook(book));
});

it("work that a closed tab had not put on the shelf is a copy of its own when another tab has changed the book", async () => {
  const one = { fits: false, title: "The squire's cloak" };
  expect(await left([type(book, "47")], type(book, "46"))).toEqual([one]);
  window.localStorage.removeItem("ellwand.journal.id.gone.1");
  expect(await left([withLay(type(book, "47"), { by: "quick" })], type(book, "46"))).toEqual([one]);
  window.localStorage.removeItem("ellwand.journal.id.gone.1");
  expect(await left([withLay(book, { by: "hand" })], type(book, "46"))).toEqual([one]);
});
