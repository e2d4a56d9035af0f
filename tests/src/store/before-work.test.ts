import { expect, it } from "vitest";
import { type Book, blankBook, typedAt } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { typeCells } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const A1 = { page: 0, row: 0, column: 0 };
const typed = (book: Book): string => typedAt(book, 0, 0, 0);

it("what was typed is handed over before the engine works on it; a refusal and a preview are not", () => {
  const store = new Store(blankBook("The squire's cloak", "in", "1/8"), layDesk);
  const seen: [string, string][] = [];
  store.beforeWork = (next) => seen.push([typed(next), typed(store.engine.book)]);
  store.run(typeCells([{ ...A1, typed: "russet" }]));
  store.run(typeCells([{ ...A1, typed: "green" }]));
  store.run({ label: "refused", edit: () => ({ refusal: "no" }) });
  store.try(store.book);
  store.undo();
  store.redo();
  expect(seen).toEqual([
    ["russet", ""],
    ["green", "russet"],
    ["russet", "green"],
    ["green", "russet"],
  ]);
});
