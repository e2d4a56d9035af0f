import { expect, test } from "vitest";
import { blockAround } from "../../../src/book/block-around.ts";
import { block, bookOf, place } from "./typed-books.ts";

test("the block around a cell ends where everything beside it is blank", () => {
  const one = bookOf({ A1: "list", B2: "1", C3: "2", C5: "apart", E2: "apart" });
  expect(blockAround(one, place("B2"))).toEqual(block("A1", "C3"));
});
