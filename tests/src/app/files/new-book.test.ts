import { expect, test } from "vitest";
import { decimalOf, withLocalDecimal } from "../../../../src/app/files/new-book.ts";
import { blankBook } from "../../../../src/book/shape.ts";

test("the decimal mark of a language is a comma where it is written so", () => {
  expect(["de-AT", "fr", "it-IT", "sv", "pl"].map(decimalOf)).toEqual(Array(5).fill("comma"));
  expect(["en-GB", "en-US", "ja", "de-CH", "no language", ""].map(decimalOf)).toEqual(Array(6).fill("point"));
});

test("a new metric book shows the decimal comma of its reader's language, and an inch book keeps its fractions", () => {
  const decimal = (unit: "in" | "cm" | "mm", language: string) =>
    withLocalDecimal(blankBook("Withy Green", unit, unit === "in" ? "1/8" : "1 mm"), language).decimal;
  expect(decimal("cm", "de")).toBe("comma");
  expect(decimal("mm", "fr-FR")).toBe("comma");
  expect(decimal("in", "de")).toBeUndefined();
  expect(decimal("cm", "en-GB")).toBeUndefined();
});
