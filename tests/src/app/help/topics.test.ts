import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { entryOf } from "../../../../src/app/help/entries.ts";
import { CHAPTERS } from "../../../../src/app/help/topics/all.ts";
import { type Book, blankBook } from "../../../../src/book/shape.ts";
import { Engine } from "../../../../src/engine/engine.ts";

const topics = CHAPTERS.flatMap((chapter) => chapter.topics);

/** All that the page is made of, but the help itself. */
const page = ["src/app", "src/book"]
  .flatMap((top) =>
    readdirSync(top, { recursive: true, encoding: "utf8" })
      .filter((file) => /\.tsx?$/.test(file) && !file.startsWith("help/topics"))
      .map((file) => readFileSync(`${top}/${file}`, "utf8")),
  )
  .join("\n")
  .replace(/\s+/g, " ");

const texts = (name: string) => {
  const { summary, says } = topics.find((one) => one.name === name)!;
  return [summary, ...says].join("\n");
};
const marks = (name: string, pattern: RegExp) =>
  [...texts(name).matchAll(pattern)].map(([, inner]) => inner!);

const names = { waist: "Measure!B1", hip: "Measure!B2" };
const rows = [
  ["Waist", "28"],
  ["Hip", "40"],
  ["Bust", "36"],
  ["Neck", "14"],
];
const blank = blankBook("Withy Green", "in", "1/8");
const book: Book = { ...blank, names, pages: [{ ...blank.pages[0]!, rows }, ...blank.pages.slice(1)] };
const engine = new Engine(book, () => ({ refusal: "no lay is asked for here" }));

describe("the topics of the help", () => {
  it.each(topics)("$name names only labels that stand on the page", ({ name }) => {
    const labels = marks(name, /(?<![\w=`])\*([^*`\s][^*`]*)\*/g);
    expect(labels.filter((label) => !page.includes(label))).toEqual([]);
  });

  it.each(topics)("$name shows only formulas that can be read and functions that there are", ({ name }) => {
    const code = marks(name, /`([^`]+)`/g);
    const formulas = code.filter((one) => /^=[\w(]/.test(one));
    expect(formulas.filter((one) => engine.unreadable(one) !== null)).toEqual([]);
    expect(code.filter((one) => /^[A-Z]+_[A-Z_]+$/.test(one) && !catalogue.has(one))).toEqual([]);
  });

  it.each(topics)("$name leads on to what there is", ({ see = [] }) => {
    expect(see.filter((name) => !entryOf(name))).toEqual([]);
  });

  it("Print says which pieces a pattern has when nothing else is chosen", () => {
    expect(texts("Print")).toMatch(/The pattern has the pieces of the cut lists, \*all pieces to cut\*/);
  });

  it("no name stands twice", () => {
    expect(new Set(topics.map(({ name }) => name)).size).toBe(topics.length);
  });
});
