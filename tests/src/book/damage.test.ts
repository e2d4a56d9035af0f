import { afterAll, expect, test, vi } from "vitest";
import { inLetters, madeUpLanguage } from "../setup/made-up.ts";

afterAll(() => vi.resetModules());

const CYRILLIC = "абцдефгхижклмнопярстувшьыз";

test("why a book is damaged is said in the reader's language, all but the words of the file", async () => {
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  speak(madeUpLanguage("en-XA", inLetters(CYRILLIC)));
  const { readBook } = await import("../../../src/book/read.ts");
  const { blankBook } = await import("../../../src/book/shape.ts");
  const { writeBook } = await import("../../../src/book/write.ts");
  const changes: readonly ((data: ReturnType<typeof JSON.parse>) => void)[] = [
    (data) => delete data.mark,
    (data) => { data.mark = ""; },
    (data) => { data.pages = {}; },
    (data) => { data.pages = []; },
    (data) => { data.pages[1] = 3; },
    (data) => { data.pages[1].stage = "Sew"; },
    (data) => { data.pages[1].rows = [["a"], ["b", 7]]; },
    (data) => { data.pages[1].rows = [["a"], "b"]; },
    (data) => { data.pages[1].columns[1].width = 1; },
    (data) => { data.pages[1].frozen = 9; },
    (data) => { data.pages[0].hidden = ["2:4", "five"]; },
    (data) => { data.pages[0].cells = { B3: { decimals: 7 } }; },
    (data) => { data.trials = [{ title: "deeper" }]; },
    (data) => { data.lays = { abc: { placements: [], length: 1, density: 1, origin: { by: "luck" } } }; },
    (data) => { data.names = { hem: 3 }; },
  ]; // biome-ignore format: a list
  const sound = writeBook(blankBook("Withy Green", "in", "1/8"));
  for (const change of changes) {
    const data = JSON.parse(sound);
    change(data);
    const read = readBook(JSON.stringify(data));
    const reason = "reason" in read ? read.reason : "";
    expect(reason).toMatch(/\p{Script=Cyrillic}/u);
    // Texts in quotes, addresses, keys and choices are the file's.
    const rest = reason
      .replace(/"[^"]*"/g, "")
      .replace(
        /\b(?:[A-Z]+\d*|abc|pages|rows|columns|width|cells|trials|stage|origin|hem|title|names)\b/g,
        "",
      );
    expect(rest, reason).not.toMatch(/[a-z]{2}/);
  }
});
