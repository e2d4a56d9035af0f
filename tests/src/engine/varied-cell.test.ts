import fc from "fast-check";
import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { figureFor, figureText, typedFor } from "../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { cell, variedCell } from "./ask.ts";
import { bookOf } from "./whatif-books.ts";

const mixed = () =>
  bookOf({
    depth: "9 1/2",
    hip: "102 cm",
    easing: "1.25",
    shrink: "5%",
    fitting: "2026-05-04",
    pleats: "6",
    half: "=depth/2+hip",
  });

test("a figure is read as it may be typed in the cell, and not as another kind of thing", () => {
  const book = mixed();
  expect(figureFor(book, variedCell(book, "depth"), "8 1/2")).toBe(8.5);
  expect(figureFor(book, variedCell(book, "depth"), "1 yd 9 in")).toBe(45);
  expect(figureFor(book, variedCell(book, "hip"), "254 mm")).toBe(10);
  expect(figureFor(book, variedCell(book, "shrink"), "7.5%")).toBe(0.075);
  expect(figureFor(book, variedCell(book, "easing"), "8 in")).toBeNull();
  expect(figureFor(book, variedCell(book, "depth"), "deep")).toBeNull();
  expect(figureFor(book, variedCell(book, "depth"), "2026-05-04")).toBeNull();
});

test("the step of a cell is the tape's mark, a whole one, or the last place that was typed", () => {
  const book = mixed();
  expect(variedCell(book, "depth").step).toBe(0.125);
  expect(variedCell(book, "hip").step).toBe(0.125);
  expect(variedCell(book, "easing").step).toBeCloseTo(0.01, 12);
  expect(variedCell(book, "shrink").step).toBeCloseTo(0.01, 12);
  expect(variedCell(book, "fitting")).toMatchObject({ step: 1, whole: true });
});

test("a figure typed into the cell is read by the book as that very figure, whatever was typed there before", () => {
  const book = mixed();
  fc.assert(
    fc.property(
      fc.constantFrom("depth", "hip", "easing", "shrink"),
      fc.integer({ min: 1, max: 4000 }),
      (name, n) => {
        const one = variedCell(book, name);
        const figure = n * one.step;
        const typed = typedFor(book, one, figure);
        const engine = new Engine(type(book, [{ ...one.place, typed }]), layDesk);
        expect(engine.value(cell(book, name))).toBeCloseTo(figure, 9);
        expect(variedCell(engine.book, name).kind).toBe(one.kind);
        engine.destroy();
      },
    ),
    { seed: 5, numRuns: 60 },
  );
});

test("lengths are told on the tape when they fall on a mark, else in decimals", () => {
  const book = mixed();
  expect(figureText(book, "length", 8.625)).toBe("8 5/8");
  expect(figureText(book, "length", 8.6)).toBe("8.6");
  expect(typedFor(book, variedCell(book, "depth"), 9.75)).toBe("9 3/4");
  expect(typedFor(book, variedCell(book, "depth"), 10)).toBe("10 in");
  expect(typedFor(book, variedCell(book, "fitting"), variedCell(book, "fitting").now! + 3)).toBe(
    "2026-05-07",
  );
});
