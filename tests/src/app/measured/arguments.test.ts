import { expect, test } from "vitest";
import { catalogue } from "../../../../functions/catalogue.ts";
import { argumentDrawing, SHOWN_BY } from "../../../../src/app/measured/arguments.ts";
import { drawingOf } from "../../../../src/app/measured/drawings.ts";

const shown = Object.values(SHOWN_BY).flatMap((list) => list.split(" "));

test("every argument that has a drawing is one that its function takes, and stands once", () => {
  const unknown = shown.filter((one) => {
    const [name, argument] = one.split(".") as [string, string];
    return catalogue.get(name)?.takes[argument] === undefined;
  });
  expect(unknown).toEqual([]);
  expect(new Set(shown).size).toBe(shown.length);
});

test("every drawing that arguments are shown by is drawn", () => {
  expect(Object.keys(SHOWN_BY).filter((name) => drawingOf(name) === null)).toEqual([]);
});

test("two thirds of the functions that take lengths have a drawing of at least one of them", () => {
  const withLengths = [...catalogue.values()].filter(
    ({ family, takes }) => family !== "tape" && Object.values(takes).some(({ kind }) => kind === "length"),
  );
  const drawn = withLengths.filter(({ name, takes }) =>
    Object.keys(takes).some((argument) => argumentDrawing(name, argument) !== null),
  );
  expect(drawn.length / withLengths.length).toBeGreaterThan(2 / 3);
});

test("one name is drawn as what it means in each function, or not at all", () => {
  expect(argumentDrawing("PLEAT_COUNT", "depth")).toBe(drawingOf("fold_depth"));
  expect(argumentDrawing("HEM_TURN", "depth")).toBe(drawingOf("hem_depth"));
  expect(argumentDrawing("SHRUNK", "share")).toBeNull();
  expect(argumentDrawing("IF", "test")).toBeNull();
});
