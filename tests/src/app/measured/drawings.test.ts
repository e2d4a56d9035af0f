import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawingOf } from "../../../../src/app/measured/drawings.ts";
import { readGarment } from "../../../../src/book/garment.ts";

const folder = new URL("../../../../templates/garments/", import.meta.url);

test.each(readdirSync(folder))("every figure that %s asks for has a drawing of what is meant", (file) => {
  const reading = readGarment(readFileSync(new URL(file, folder), "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const without = reading.garment.questions
    .filter(({ kind }) => kind !== "text" && kind !== "date")
    .filter(({ name, drawing }) => drawingOf(drawing ?? name) === null);
  expect(without.map(({ name }) => name)).toEqual([]);
});

test("a name that means nothing has no drawing", () => {
  expect(drawingOf("nothing")).toBeNull();
  expect(drawingOf("constructor")).toBeNull();
  expect(drawingOf("upper_arm_girth")).toBe(drawingOf("arm"));
});
