import { expect, test } from "vitest";
import { fileNames } from "../../../src/command/file-names.ts";

test("two titles never share a file, not even where capitals are not told apart", () => {
  expect(fileNames(["cuff", "Cuff", "cuff"], ".svg")).toEqual(["cuff.svg", "Cuff-2.svg", "cuff-3.svg"]);
});

test("a title without letters, one that Windows keeps to itself and a long one still make a name", () => {
  expect(fileNames(["***", "AUX", "x".repeat(300)], ".svg")).toEqual([
    "piece.svg",
    "piece-AUX.svg",
    `${"x".repeat(60)}.svg`,
  ]);
});
