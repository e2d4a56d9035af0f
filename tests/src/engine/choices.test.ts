import { expect, test } from "vitest";
import { removeColumns } from "../../../src/book/edit.ts";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { choicesAt, choicesFault } from "../../../src/engine/choices.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { setCells } from "../../../src/store/changing-cells.ts";
import { changeColumn } from "../../../src/store/commands.ts";

const rows = [
  ["pleat", "box", "miller's daughter"],
  ["fold", "knive", "widow"],
  ["count", "3", ""],
  ["rounded", "up", "squire's lady"],
];
const blank = blankBook("Withy Green", "in", "1/8");
const page = (more: Partial<Page>): Book => ({
  ...blank,
  pages: [{ ...blank.pages[1]!, rows, ...more }],
});
const at = (row: number, column = 1) => ({ page: 0, row, column });
const listed = (book: Book) =>
  checks(new Engine(book, layDesk)).map(({ address, is, sentence }) => [address, is, sentence]);
const list = (book: Book, row: number) => {
  const engine = new Engine(book, layDesk);
  return choicesAt(book, at(row), (place) => engine.view(place).shown);
};

test("a cell is chosen from its own list, from a block of cells, or from its column's list", () => {
  const columns = blank.pages[1]!.columns.with(1, {
    heading: "",
    kind: "any",
    width: 90,
    choices: "yes, no",
  });
  const book = page({ columns, cells: { B1: { choices: "box; knife ;" }, B2: { choices: "=C1:C4" } } });
  expect(list(book, 0)).toEqual({ list: ["box", "knife"], by: "cell" });
  expect(list(book, 1)?.list.slice(0, 2)).toEqual(["miller's daughter", "widow"]);
  expect(list(book, 2)).toEqual({ list: ["yes", "no"], by: "column" });
  expect(list(page({}), 2)).toBeNull();
});

test("a function that takes one of a few words offers them at the cell it is given", () => {
  const words = page({
    rows: [
      ["boning", "flat", "=1+CHANNEL_WIDTH(1/2;1/16;1/16;B1)"],
      ["other", "B1"],
    ],
  });
  expect(list(words, 0)).toEqual({ list: ["flat", "round"], by: { function: "CHANNEL_WIDTH" } });
  expect(list(words, 1)).toBeNull();
});

test("a value that is not among the choices is kept, counts, and is a problem with the nearest choice", () => {
  const book = page({
    cells: { B1: { choices: "Box; knife" }, B2: { choices: "box; knife" }, B3: { choices: "1; 2" } },
  });
  const engine = new Engine(book, layDesk);
  expect(engine.view(at(0)).problem).toBeNull();
  expect(engine.view(at(1))).toMatchObject({ shown: "knive", value: "knive" });
  expect(listed(book)).toEqual(
    [
      ["Draft!B2", "unchosen", '"knive" is not among the choices box, knife; is "knife" meant?'],
      ["Draft!B3", "unchosen", '"3" is not among the choices 1, 2'],
    ].map((one) => expect.arrayContaining(one)),
  );
});

test("layers among the choices may stand in any order, and are told apart where they are listed", () => {
  const sets = [["", "stays, shift", "shift"], ["", "shift, petticoat", "shift, stays"]];
  const book = page({ rows: sets, cells: { B1: { choices: "=C1:C2" }, B2: { choices: "=C1:C2" } } });
  expect(listed(book).map(([, , sentence]) => sentence)).toEqual([
    expect.stringMatching(/^"shift, petticoat" is not among the choices "shift", "shift, stays"/),
  ]);
}); // biome-ignore format: rows

test("choices that say nothing or name no cells are refused, and choices in cells follow their cells", () => {
  const book = page({});
  expect(choicesFault(book, 0, " ; ")).toMatch(/^a list of choices needs at least one choice/);
  expect(choicesFault(book, 0, "=Nowhere!A1")).toMatch(/^=Nowhere!A1 names no cells/);
  const block = { page: 0, top: 0, left: 1, bottom: 1, right: 1 };
  expect(setCells(block, { choices: "=1+1" }).edit(book)).toHaveProperty("refusal");
  expect(changeColumn(0, 1, { choices: ";" }).edit(book)).toHaveProperty("refusal");
  const set = setCells(block, { choices: "=C1:C3" }).edit(book) as Book;
  expect(removeColumns(set, 0, 0, 1).pages[0]!.cells).toEqual({
    A1: { choices: "=B1:B3" },
    A2: { choices: "=B1:B3" },
  });
  expect((setCells(block, { choices: undefined }).edit(set) as Book).pages[0]!.cells).toBeUndefined();
});
