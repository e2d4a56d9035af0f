/** The shelf of books in the browser, read and written beside the page. */
import type { Page } from "playwright-core";
import { blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";

/** The texts of one cell of the first page in every book on the shelf. */
export const onShelf = (page: Page, row: number): Promise<string[]> =>
  page.evaluate(
    (at) =>
      new Promise<string[]>((done, failed) => {
        const request = indexedDB.open("ellwand");
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const tx = request.result.transaction(["leaves", "parts"]);
          const leaves = tx.objectStore("leaves").getAll();
          const parts = tx.objectStore("parts").getAll();
          tx.onerror = () => failed(tx.error);
          tx.oncomplete = () => {
            request.result.close();
            const partOf = (book: string, wanted: number) =>
              parts.result.find(({ id, number }) => id === book && number === wanted).text;
            const texts = leaves.result.map(({ id, text }) =>
              typeof text === "string" ? text : text.map((number: number) => partOf(id, number)).join(""),
            );
            // What could not be put together stands there as it was written down: it is no book.
            done(texts.map((text) => JSON.parse(text).pages?.[0].rows[at]?.[0] ?? ""));
          };
        };
      }),
    row,
  );

/** Puts a book of 60,000 cells on the shelf as the one to be opened first. */
export async function shelveLarge(page: Page): Promise<void> {
  const blank = blankBook("A large book", "in", "1/8");
  const rows = Array.from({ length: 20_000 }, (_, row) =>
    row < 30 ? [] : [`cell ${row}`, "16 1/2", "a note"],
  );
  const text = writeBook({
    ...blank,
    pages: blank.pages.map((one, i) => (i === 0 ? { ...one, rows } : one)),
  });
  await page.evaluate(
    (leaf) =>
      new Promise<void>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const tx = request.result.transaction(["spines", "leaves"], "readwrite");
          const now = Date.now();
          tx.objectStore("spines").put({
            id: "large",
            title: "A large book",
            opened: now,
            changed: now,
            revision: 1,
            place: { page: 0, row: 20, column: 0 },
          });
          tx.objectStore("leaves").put({ id: "large", text: leaf, before: leaf });
          tx.oncomplete = () => {
            request.result.close();
            done();
          };
        };
      }),
    text,
  );
}
