import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changedSince } from "../../../../../src/app/files/versions/changed-since.ts";
import { pack, unpack } from "../../../../../src/app/files/versions/packing.ts";
import { type Step, watchSteps } from "../../../../../src/app/files/versions/watch.ts";
import { readBook } from "../../../../../src/book/read.ts";
import { type Book, blankBook } from "../../../../../src/book/shape.ts";
import { writeBook } from "../../../../../src/book/write.ts";
import {
  insertRows,
  noteCell,
  removePage,
  renamePage,
  typeCells,
} from "../../../../../src/store/commands.ts";
import { Store } from "../../../../../src/store/store.ts";

const noLay = () => ({ refusal: "no lay is asked for here" });
const typed = fc.oneof(
  fc.constantFrom("", "16 1/2", "=B1+1", "=SUM(A1:A9)", "tab\tand\nline", "\u{feff}mark", "½ “Größe”"),
  fc.string({ unit: "binary", maxLength: 12 }),
);
const step = fc.oneof(
  fc
    .record({ page: fc.nat(2), row: fc.nat(6), column: fc.nat(3), typed })
    .map((typing) => typeCells([typing])),
  fc.nat(4).map((at) => insertRows(0, at, 1)),
  fc.nat(3).map((page) => removePage(page)),
  fc.constantFrom("Sleeves", "Draft", "Über").map((title) => renamePage(0, title)),
  fc.string({ maxLength: 9 }).map((note) => noteCell(0, "B3", note)),
);

describe("a version", () => {
  it("is packed and unpacked letter for letter", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "binary" }), async (text) => {
        expect(await unpack(await pack(text))).toBe(text);
      }),
      { numRuns: 40 },
    );
  });

  it("that is brought back is its text exactly, and one undo gives back the present", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 8 }), fc.nat(), async (commands, which) => {
        const store = new Store(blankBook("Withy Green", "in", "1/8"), noLay);
        const versions = [writeBook(store.book)];
        for (const command of commands) {
          store.run(command);
          versions.push(writeBook(store.book));
        }
        const present = writeBook(store.book);
        const text = versions[which % versions.length]!;
        const reading = readBook(await unpack(await pack(text)));
        if ("reason" in reading) throw new Error(reading.reason);
        expect(store.run({ label: "bring back", edit: () => reading.book })).toBeNull();
        expect(writeBook(store.book)).toBe(text);
        store.undo();
        expect(writeBook(store.book)).toBe(present);
      }),
      { numRuns: 30 },
    );
  });

  it("is described by what has changed since", () => {
    const book = blankBook("Withy Green", "in", "1/8");
    const next = [
      typeCells([
        { page: 0, row: 0, column: 0, typed: "Waist" },
        { page: 0, row: 0, column: 1, typed: "28" },
      ]),
      noteCell(0, "B1", "over the stays"),
    ].reduce((one, command) => command.edit(one) as Book, book);
    expect(changedSince(book, next)).toBe("2 cells, 1 note");
    expect(changedSince(next, next)).toBe("nothing");
    // A row that is put in above moves the others; they are not changed.
    expect(changedSince(next, insertRows(0, 0, 1).edit(next) as Book)).toBe("nothing");
  });
});

it("only steps that go on from the book that was there are seen: no undo, no other book", () => {
  const book = blankBook("Withy Green", "in", "1/8");
  const store = new Store(book, noLay);
  const seen: Pick<Step, "before" | "label">[] = [];
  watchSteps(
    store,
    () => "b",
    () => {},
    (one) => seen.push(one),
  );
  const type = (text: string) => store.run(typeCells([{ page: 0, row: 0, column: 0, typed: text }]));
  type("a");
  const after = store.book;
  type("b");
  store.undo();
  store.open(book, [{ book: after, label: "of another book" }]);
  type("c");
  expect(seen.map(({ label }) => label)).toEqual(["type in A1", "type in A1", "type in A1"]);
  expect(seen.map(({ before }) => before)).toEqual([book, after, book]);
});
