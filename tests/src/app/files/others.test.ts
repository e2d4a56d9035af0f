import { expect, test } from "vitest";
import type { Keeper } from "../../../../src/app/files/keeper.ts";
import { goOnAsVersion } from "../../../../src/app/files/others.ts";
import type { BookRecord } from "../../../../src/app/files/shelf.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { writeBook } from "../../../../src/book/write.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { layDesk } from "../../../../src/lay/desk.ts";

const BOOK = blankBook("Gown", "in", "1/8");
const NEXT = { book: { ...BOOK, title: "Gown, version 2" }, number: 2 };
const RECORD = { id: "gown", title: "Gown" } as BookRecord;

/** A keeper of one open book, with the titles on its shelf. */
function keeper(refusal: string | null, changed = false) {
  const shelf = new Map([["gown", "Gown"]]);
  let book = BOOK;
  const held = {
    get book() {
      return book;
    },
    state: { id: "gown" },
    flush: async () => {},
    store: {
      get book() {
        return book;
      },
      engine: new Engine(BOOK, layDesk),
      run({ edit }: { edit: () => typeof BOOK }) {
        if (refusal === null) book = edit();
        return refusal;
      },
    },
    bookcase: {
      kept: async () => ({ record: RECORD, text: writeBook(BOOK) }),
      async put(title: string) {
        shelf.set("copy", title);
        if (changed) book = { ...BOOK, title: "Gown, typed in meanwhile" };
        return "copy";
      },
      async deletePermanently(id: string) {
        shelf.delete(id);
      },
    },
  };
  return { shelf, held, keeper: held as unknown as Keeper };
}

test("the next version takes the place of the open book, which stays on the shelf as it was", async () => {
  const { shelf, held, keeper: one } = keeper(null);
  expect(await goOnAsVersion(one, RECORD, BOOK, NEXT)).toBeNull();
  expect(held.book.title).toBe("Gown, version 2");
  expect([...shelf.values()]).toEqual(["Gown", "Gown"]);
});

test("a next version that is refused leaves no copy behind", async () => {
  const { shelf, held, keeper: one } = keeper("the engine can't take it");
  expect(await goOnAsVersion(one, RECORD, BOOK, NEXT)).toBe("the engine can't take it");
  expect(held.book).toBe(BOOK);
  expect([...shelf.keys()]).toEqual(["gown"]);
});

test("what is typed while the copy is made is not lost: the next version is refused, and no copy stays", async () => {
  const { shelf, held, keeper: one } = keeper(null, true);
  expect(await goOnAsVersion(one, RECORD, BOOK, NEXT)).toMatch(/changed in the meantime: try it once more/);
  expect(held.book.title).toBe("Gown, typed in meanwhile");
  expect([...shelf.keys()]).toEqual(["gown"]);
});
