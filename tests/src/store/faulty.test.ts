import { describe, expect, test } from "vitest";
import { type Book, blankBook, typedAt } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { typeCells } from "../../../src/store/commands.ts";
import { NOT_TAKEN, Store } from "../../../src/store/store.ts";

const A1 = { page: 0, row: 0, column: 0 };
const typed = (book: Book): string => typedAt(book, 0, 0, 0);

/** An engine that takes no book in which A1 says "bad". */
class Faulty extends Engine {
  override become(next: Book): void {
    if (typed(next) === "bad") throw new Error("out of order");
    super.become(next);
  }

  override open(next: Book): void {
    if (typed(next) === "bad") throw new Error("out of order");
    super.open(next);
  }
}

function open() {
  const book = blankBook("The miller's apron", "in", "1/8");
  const store = new Store(book, layDesk, (one) => new Faulty(one, layDesk));
  let told = 0;
  store.subscribe(() => {
    told += 1;
  });
  store.run(typeCells([{ ...A1, typed: "good" }]));
  return { store, told: () => told };
}

const bad = (book: Book): Book => ({
  ...book,
  pages: book.pages.map((page, i) => (i === 0 ? { ...page, rows: [["bad"]] } : page)),
});

describe("a book that the engine can't take is not kept:", () => {
  test.each<[string, (store: Store) => string | null]>([
    ["typed", (store) => store.run(typeCells([{ ...A1, typed: "bad" }]))],
    ["tried", (store) => store.try(bad(store.book))],
    ["opened", (store) => store.open(bad(store.book))],
    [
      "made by a command that throws",
      (store) =>
        store.run({
          label: "fail",
          edit: () => {
            throw new Error("out of order");
          },
        }),
    ],
  ])("%s", (_, act) => {
    const { store, told } = open();
    const [book, revision, before] = [store.book, store.revision, told()];
    const written: string[] = [];
    store.beforeWork = (one) => written.push(typed(one));
    expect(act(store)).toBe(NOT_TAKEN);
    expect(store.book).toBe(book);
    expect(store.shown).toBe(book);
    expect(store.engine.book).toBe(book);
    expect([store.revision, told()]).toEqual([revision, before]);
    expect(store.undoable).toBe("type in A1");
    expect(written.at(-1) ?? "good").toBe("good");
    expect(store.run(typeCells([{ ...A1, typed: "better" }]))).toBeNull();
    expect(store.engine.view(A1).shown).toBe("better");
  });

  test("undone and redone", () => {
    const { store } = open();
    const engine = store.engine as Faulty;
    const become = engine.become.bind(engine);
    engine.become = () => {
      throw new Error("out of order");
    };
    expect(store.undo()).toBe(NOT_TAKEN);
    expect([typed(store.book), store.undoable, store.redoable]).toEqual(["good", "type in A1", undefined]);
    engine.become = become;
    expect(store.undo()).toBeNull();
    expect(typed(store.book)).toBe("");
    engine.become = () => {
      throw new Error("out of order");
    };
    expect(store.redo()).toBe(NOT_TAKEN);
    expect([typed(store.book), store.redoable]).toEqual(["", "type in A1"]);
  });

  test("a writer that throws keeps no one from typing", () => {
    const { store } = open();
    store.beforeWork = () => {
      throw new Error("the disk is full");
    };
    expect(store.run(typeCells([{ ...A1, typed: "better" }]))).toBeNull();
    expect(typed(store.book)).toBe("better");
  });
});
