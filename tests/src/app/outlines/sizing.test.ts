import { expect, test } from "vitest";
import { factorOf, knownThings, type Sizing } from "../../../../src/app/outlines/sizing.ts";
import { type Choice, takenOf, turnOf } from "../../../../src/app/outlines/use-outlines.ts";
import { foundIn, svg } from "../../exchange/outlines/drawings.ts";

const found = foundIn(
  svg('<rect id="front" width="20" height="30"/><rect id="cuff" x="40" width="10" height="5"/>', ""),
);
const sizing = (what: string, typed: string): Sizing => ({ by: "known", what, typed });

test("a drawing is sized by the edge, the extent or the unit that the maker knows", () => {
  expect(knownThings(found, ["front", "cuff"]).map(({ words }) => words)).toEqual([
    "front: edge 1", "front: edge 2", "front: edge 3", "front: edge 4",
    "cuff: edge 1", "cuff: edge 2", "cuff: edge 3", "cuff: edge 4",
    "all pieces together, across", "all pieces together, down", "one unit of the drawing",
  ]); // biome-ignore format: a list
  expect(factorOf(found, sizing("0/1", "60 cm"), "cm", "point")).toEqual({ factor: 2 });
  expect(factorOf(found, sizing("1/0", "7,5"), "cm", "comma")).toEqual({ factor: 0.75 });
  expect(factorOf(found, sizing("width", "25 in"), "in", "point")).toEqual({ factor: 0.5 });
  expect(factorOf(found, sizing("unit", "1 mm"), "cm", "point")).toEqual({ factor: 0.1 });
});

test("as long as the size is not known, what is wanted is said in a sentence", () => {
  expect(factorOf(found, { by: "file", what: "0/0", typed: "" }, "cm", "point")).toEqual({
    wanted: "The file does not say how large it is. Give one length that you know.",
  });
  expect(factorOf(found, sizing("0/0", " "), "cm", "point")).toEqual({
    wanted: "Type the true length of what you know, such as 40 cm.",
  });
  for (const typed of ["wide", "0", "-3 cm"])
    expect(factorOf(found, sizing("0/0", typed), "cm", "point")).toEqual({
      wanted: `The true length must be a length above 0, such as 40 cm, not “${typed}”.`,
    });
  expect(factorOf(found, sizing("0/0", "wide"), "in", "point")).toEqual({
    wanted: "The true length must be a length above 0, such as 16 in, not “wide”.",
  });
});

test("what is taken has its name made safe and its turn in degrees", () => {
  const choice = (change: Partial<Choice>): Choice => ({ take: true, name: "front", turn: "0", ...change });
  const taken = takenOf(found, [choice({ name: "=SUM(A1)", turn: "90°" }), choice({ take: false })], 2);
  expect(taken.map(({ name, said }) => [name, said])).toEqual([["SUM(A1)", ["Turned by 90°."]]]);
  expect(() => takenOf(found, [choice({ turn: "left" }), choice({})], 1)).toThrow(
    "the turn of “front” must be degrees from -360 to 360, not “left”",
  );
  expect(() => takenOf(found, [choice({ take: false }), choice({ take: false })], 1)).toThrow(
    "tick at least one",
  );
  expect(["12,5", "−90", "361", "x", ""].map(turnOf)).toEqual([12.5, -90, null, null, 0]);
});
