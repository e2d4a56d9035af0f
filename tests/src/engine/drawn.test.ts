import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { lookUp } from "../../../src/book/names.ts";
import { readBook } from "../../../src/book/read.ts";
import { subjectOf } from "../../../src/engine/drawn.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

test("what was drawn before stays drawn, but not when something else came to stand in its cell", () => {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  const at = (name: string) => lookUp(reading.book, name)!;
  const label = { page: 0, row: 3, column: 0 };
  expect(subjectOf(engine, at("skirt_piece"), null)).toEqual(at("skirt_piece"));
  expect(subjectOf(engine, label, at("skirt_flat"))).toEqual(at("skirt_flat"));
  // A blank cell and a page that is gone: the book's largest piece is drawn.
  const largest = subjectOf(engine, label, null);
  expect(largest).toEqual(at("skirt_cut"));
  expect(subjectOf(engine, label, { page: 4, row: 34, column: 1 })).toEqual(largest);
  expect(subjectOf(engine, label, { page: 9, row: 0, column: 0 })).toEqual(largest);
  engine.destroy();
});
