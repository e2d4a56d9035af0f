import { describe, expect, it } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { Finder, stem } from "../../../../src/app/shell/find.ts";

const finder = new Finder(catalogue.values());
const first = (question: string, count = 3) =>
  finder
    .find(question)
    .slice(0, count)
    .map(({ name }) => name);

describe("the search for a function", () => {
  // The questions are ours, in the words of people who sew; the answers are what each is for.
  it.each([
    ["how much to cut for a ruffle", "GATHER_WIDTH"],
    ["how many eyelets down the back", "EYELET_COUNT"],
    ["how many yards of cloth do I need", "YARDAGE"],
    ["how long a lace for the corset", "LACE_LENGTH"],
    ["box pleats", "PLEAT_ALLOWANCE"],
    ["seam allowance round a piece", "WITH_ALLOWANCE"],
    ["sleeve cap ease", "CAP_EASE"],
    ["length of bias binding", "BINDING_LENGTH"],
  ])("“%s” finds %s among the first five", (question, name) => {
    expect(first(question, 5)).toContain(name);
  });

  it("a name, whole or begun, comes first, in any case", () => {
    expect(first("yardage", 1)).toEqual(["YARDAGE"]);
    expect(first("seam_gir", 1)).toEqual(["SEAM_GIRTH"]);
  });

  it("without a question all functions are there, by name", () => {
    expect(finder.find("").map(({ name }) => name)).toEqual([...catalogue.keys()]);
  });

  it("every function is found by its own summary", () => {
    for (const { name, summary } of catalogue.values()) expect(first(summary, 5)).toContain(name);
  });

  it("words that have nothing to do with sewing find nothing", () => {
    expect(finder.find("zeppelin")).toEqual([]);
  });
});

describe("endings of words", () => {
  it.each([
    ["gathering", "gathered"],
    ["pleats", "pleat"],
    ["hemming", "hem"],
    ["sleeves", "sleeve"],
    ["taking", "take"],
  ])("%s and %s are the same word", (a, b) => {
    expect(stem(a)).toBe(stem(b));
  });
});
