/** Documents in a made-up language from left to right, in which English that is not the maker's stands out. */

import { readFileSync } from "node:fs";
import { afterAll, expect, test, vi } from "vitest";
import { BONING, CORDS, FLAME, HOOPS, LACING } from "../../../functions/cautions.ts";
import type { PaperRequest } from "../../../src/paper/kinds.ts";
import { isForPaper } from "../../../src/paper/paper-language.ts";
import { inLetters, madeUpLanguage, ownTexts, untranslated } from "../setup/made-up.ts";

const CYRILLIC = inLetters("абвгдежзийклмнопрстуфхцчшщ");

// Other files of tests share the modules of this one, and their constants are in English.
afterAll(() => vi.resetModules());

test("nothing that the program says on paper stays English in another language", async () => {
  // Constants with sentences are made as their modules are loaded, so the language is taken up before them.
  vi.resetModules();
  const { speak } = await import("../../../functions/speech.ts");
  const language = madeUpLanguage("en-XA", CYRILLIC);
  speak(language);
  const { USUAL_LIMITS } = await import("../../../src/engine/guards.ts");
  vi.spyOn(USUAL_LIMITS, "clock").mockReturnValue(0);
  const { readBook } = await import("../../../src/book/read.ts");
  const { Engine } = await import("../../../src/engine/engine.ts");
  const { layDesk } = await import("../../../src/lay/desk.ts");
  const { printed } = await import("../../../src/paper/documents.ts");
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  const print = (request: Omit<PaperRequest, "paper" | "day"> & { paper?: string }) =>
    printed(engine, { paper: "a4", day: new Date(2026, 4, 20), ...request });

  const texts: string[] = [];
  // The working of a call is in the words of its sewing function, so that of a cell without one is printed.
  for (const request of [
    { what: "all", scale: "1/8", cells: ["Draft!B8"] },
    { what: "chart", blank: true },
    { what: "log", blank: true },
    { what: "pattern", paper: "roll=36in", pieces: ["cuff"] },
  ] as const) {
    const made = await print(request);
    if ("reason" in made) throw new Error(made.reason);
    // A sentence may go on in the next line.
    for (const { marks } of made.drawn)
      texts.push(marks.flatMap((mark) => (mark.is === "text" ? [mark.text] : [])).join(" "));
    texts.push(made.paper, made.says, ...made.sentences, ...made.notes);
  }
  for (const request of [
    { what: "chart", paper: "да" },
    { what: "chart", paper: "roll=9in" },
    { what: "chart", page: "да" },
    { what: "chart", page: "Draft" },
    { what: "pattern", scale: "7" },
    { what: "pattern", pieces: ["да"] },
    { what: "pattern", page: "Measure" },
    { what: "lay", scale: "2" },
    { what: "lay", cells: ["Draft!B8"] },
    { what: "strip", cells: ["Draft!B8"] },
    { what: "working" },
    { what: "working", cells: ["да"] },
    { what: "shopping", page: "Draft" },
  ] as const) {
    const made = await print(request);
    expect(made, JSON.stringify(request)).toHaveProperty("reason");
    if ("reason" in made) texts.push(made.reason);
  }
  const own = ownTexts();
  // Names of papers and scales in refusals are what is typed.
  for (const word of ["letter", "roll=36in", "roll=9in", "RECTANGLE(10; 20)"]) own.add(word);
  // The cautions are in the words of the sewing functions.
  for (const caution of [LACING, BONING, CORDS, FLAME, HOOPS]) own.add(caution);
  expect(untranslated(texts, own)).toEqual([]);
  expect(texts.join(" ")).toContain(CYRILLIC("An arrow on a piece points to its lower end."));
});

test("documents are in English where the typeface can't set the reader's language", () => {
  const saying = (words: string) => ({
    tag: "en-XA",
    direction: "ltr" as const,
    phrases: { a: words, b: [words, 0] },
  });
  expect(isForPaper(saying("Größe: ¾ Łokieć, ½ m"))).toBe(true);
  expect(isForPaper(saying(CYRILLIC("a sentence")))).toBe(true);
  expect(isForPaper(saying("裁ち図"))).toBe(false);
  expect(isForPaper(saying("कपड़ा"))).toBe(false);
  expect(isForPaper({ ...saying(""), direction: "rtl" })).toBe(false);
});
