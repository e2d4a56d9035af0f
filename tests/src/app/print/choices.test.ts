import { expect, test } from "vitest";
import {
  CHOSEN_CELL,
  type Choices,
  EVERY_PIECE,
  firstChoices,
  ROLL,
  requestOf,
  THIS_PAGE,
} from "../../../../src/app/print/choices.ts";

const SCREEN = { page: "Cut", cell: "Cut!B1" };
const first = firstChoices("in", "Cut!B1", {});
const asked = (change: Partial<Choices>) => requestOf({ ...first, ...change }, "in", SCREEN);

test("a book in inches is printed on Letter, one in centimetres or millimetres on A4", () => {
  expect(first.paper).toBe("letter");
  expect(firstChoices("cm", "Cut!B1", {}).paper).toBe("a4");
  expect(firstChoices("mm", "Cut!B1", {}).paper).toBe("a4");
});

test("the width of a roll without a unit is in the book's unit, and a decimal comma is a point", () => {
  expect(asked({ paper: ROLL, roll: "36" }).paper).toBe("roll=36 in");
  expect(asked({ paper: ROLL, roll: "91,4 cm" }).paper).toBe("roll=91.4 cm");
  expect(asked({ paper: ROLL, roll: ' 36" ' }).paper).toBe('roll=36"');
});

test("a document is asked only for what it takes", () => {
  const all = { blank: true, large: true, scale: "1/4", of: THIS_PAGE };
  expect(asked({ ...all, what: "pattern" })).toEqual({
    what: "pattern",
    large: true,
    paper: "letter",
    scale: "1/4",
    page: "Cut",
  });
  expect(asked({ ...all, what: "chart" })).toEqual({
    what: "chart",
    paper: "letter",
    page: "Cut",
    blank: true,
    large: true,
  });
  expect(asked({ what: "working", of: CHOSEN_CELL })).toEqual({
    what: "working",
    paper: "letter",
    cells: ["Cut!B1"],
  });
  expect(asked({ what: "working", cells: " hem ; depth;" }).cells).toEqual(["hem", "depth"]);
});

test("the chosen cell is a piece of the pattern, or a lay at the scale that fits the paper", () => {
  expect(asked({ what: "pattern", of: EVERY_PIECE })).toMatchObject({ everyPiece: true });
  expect(asked({ what: "pattern" })).not.toHaveProperty("everyPiece");
  expect(asked({ what: "pattern", of: CHOSEN_CELL }).pieces).toEqual(["Cut!B1"]);
  expect(asked({ what: "lay", of: CHOSEN_CELL })).toEqual({
    what: "lay",
    paper: "letter",
    cells: ["Cut!B1"],
  });
  expect(asked({ what: "lay", layScale: "1/10" }).scale).toBe("1/10");
});

test("opened for a cell, the dialog begins with what that cell holds", () => {
  const lay = firstChoices("in", "Cut!B8", { what: "lay", place: { page: 3, row: 7, column: 1 } });
  expect([lay.what, lay.of]).toEqual(["lay", CHOSEN_CELL]);
});
