import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readGarment } from "../../../src/book/garment.ts";

const folder = new URL("../../../templates/garments/", import.meta.url);
const files = readdirSync(folder);
const textOf = (file: string): string => readFileSync(new URL(file, folder), "utf8");
const sample = JSON.parse(textOf("gored-skirt.json"));

const reasonFor = (change: (data: typeof sample) => void): string => {
  const data = structuredClone(sample);
  change(data);
  const reading = readGarment(JSON.stringify(data));
  return "reason" in reading ? reading.reason : "no reason: it was read";
};

describe("a garment's file", () => {
  test.each(files)("%s is read, and asks first who it is for", (file) => {
    const reading = readGarment(textOf(file));
    if ("reason" in reading) throw new Error(reading.reason);
    expect(reading.garment.questions[0]!.name).toBe("wearer");
    expect(reading.garment.tells.length).toBeGreaterThan(0);
  });

  test("gives round figures on both tapes", () => {
    const reading = readGarment(JSON.stringify(sample));
    if ("reason" in reading) throw new Error(reading.reason);
    const { books } = reading.garment;
    expect([books.in.pages[0]!.rows[3]![1], books.cm.pages[0]!.rows[3]![1]]).toEqual(["27", "68"]);
    expect([books.in.unit, books.cm.unit]).toEqual(["in", "cm"]);
  });

  test("that is damaged is refused in a sentence", () => {
    expect(readGarment("{")).toEqual({ reason: "this is not a garment to begin with: the text is not JSON" });
    expect(readGarment("[]")).toHaveProperty("reason", expect.stringContaining("ellwandGarment"));
    expect(reasonFor((data) => (data.ellwandGarment = 2))).toBe("this garment's version must be 1, not 2");
    expect(reasonFor((data) => delete data.title)).toMatch(/^this garment is damaged: .* has no title$/);
    expect(reasonFor((data) => (data.questions[2].name = "waste"))).toBe(
      'the question "waste" names no cell of the book',
    );
    expect(reasonFor((data) => data.questions.push(data.questions[2]))).toBe(
      "the cell waist is asked for twice",
    );
    expect(reasonFor((data) => (data.questions[2].kind = "choice"))).toMatch(/must have two or more choices/);
    expect(reasonFor((data) => (data.tells = ["nothing"]))).toBe(
      'the cell "nothing" is to be shown and is not in the book',
    );
    expect(reasonFor((data) => (data.book.names.waist = "Nowhere!B4"))).toMatch(/Nowhere/);
  });
});
