import fc from "fast-check";
import { expect, test } from "vitest";
import type { Decimal } from "../../../functions/decimal.ts";
import type { Kind } from "../../../functions/define.ts";
import type { TapeMark } from "../../../functions/fractions.ts";
import type { Unit } from "../../../functions/units.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { checks } from "../../../src/engine/checks.ts";
import { understand } from "../../../src/engine/content.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { explain } from "../../../src/engine/explain.ts";
import { exact, show } from "../../../src/engine/show.ts";
import { showDecimal } from "../../../src/engine/show-decimal.ts";
import { figureFor, figureText, typedFor, variedCellAt } from "../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeDecimal } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";
import { bookOf } from "./whatif-books.ts";

const seed = 20_260_603;
const decimals = fc.constantFrom<Decimal>("point", "comma");
const units = fc.constantFrom<Unit>("in", "cm");
const marks = fc.constantFrom<TapeMark>("1/2", "1/4", "1/8", "1/16", "1/32", "1 cm", "5 mm", "1 mm");

test("a figure that is shown and typed again is the figure shown, with either mark, in every unit and mark of the tape", () => {
  const kinds = fc.constantFrom<Kind>("length", "figure", "share", "count", "money");
  const value = fc.integer({ min: -20_000_000, max: 20_000_000 }).map((n) => n / 10_000);
  fc.assert(
    fc.property(value, kinds, units, marks, decimals, (figure, kind, unit, mark, decimal) => {
      const rule = { unit, mark, decimal };
      const text = show(figure, kind, rule);
      const content = understand(text, kind === "length" ? "length" : "any", unit, decimal);
      expect(content, text).toHaveProperty("value");
      const read = (content as { value: number }).value;
      expect(typeof read, text).toBe("number");
      expect(show(read, kind, rule)).toBe(text);
      if (kind === "figure") expect(read).toBeCloseTo(figure, 4);
      if (decimal === "comma") expect(`${text} ${exact(figure, kind, rule)}`).not.toContain(".");
    }),
    { seed, numRuns: 500 },
  );
});

/** Inputs of each kind, one that would read otherwise with a comma, and formulas of both ways to part arguments. */
const CELLS = {
  hip: "70.5 cm",
  waist: "28.125",
  ease: ".5",
  share: "12.5%",
  price: "1,250.50",
  width: "1.125 m",
  seam: "5/8",
  made: "=EASE(hip;hip+waist)",
  most: "=MAX(3,4)",
  ratio: "=waist*1.125+CM(2,5)",
  girth: "=GIRTH_OVER(90; 0,3)",
};

const values = (book: Book) => {
  const engine = new Engine(book, layDesk);
  const found = Object.keys(CELLS).map((_, row) => engine.value({ page: 0, row, column: 1 }));
  engine.destroy();
  return found;
};

test("showing the other mark moves no answer, there and back, and undo brings back what was typed", () => {
  for (const unit of ["in", "cm"] as const) {
    const book = bookOf(CELLS, unit);
    const before = values(book);
    expect(before.every((value) => typeof value === "number")).toBe(true);
    const comma = showDecimal(book, "comma");
    expect(comma.decimal).toBe("comma");
    expect(values(comma)).toEqual(before);
    expect(comma.pages[0]!.rows.map(([, typed]) => typed)).toEqual([
      "70,5 cm", "28,125", "0,5", "12,5%", "1250,50", "1,125 m", "5/8", "=EASE(hip;hip+waist)", "=MAX(3;4)",
      "=waist*1.125+CM(2,5)", "=GIRTH_OVER(90; 0,3)",
    ]); // biome-ignore format: a list
    const back = showDecimal(comma, "point");
    expect(values(back)).toEqual(before);
    expect(back).not.toHaveProperty("decimal");
    const store = new Store(book, layDesk);
    store.run(changeDecimal("comma"));
    store.undo();
    expect(store.book).toEqual(book);
  }
});

test("in a book of decimal commas 1.125 is asked about, and no unit moves an answer", () => {
  const comma = showDecimal(bookOf(CELLS, "cm"), "comma");
  const odd = {
    ...comma,
    pages: [{ ...comma.pages[0]!, rows: comma.pages[0]!.rows.with(1, ["waist", "28.125"]) }],
  };
  const engine = new Engine(odd, layDesk);
  expect(checks(engine).map(({ name, sentence }) => [name, sentence])).toContainEqual([
    "waist",
    "28.125 has two readings: 28,125 with the point as its decimal mark, or 28125; type the one that is meant",
  ]);
  engine.destroy();
  const inches = convertBook(comma, "in");
  const again = values(convertBook(inches, "cm"));
  values(comma).forEach((value, i) => {
    expect(again[i]).toBeCloseTo(value as number, 6);
  });
});

test("the mark is kept with the book, and a book without it shows points", () => {
  const comma = showDecimal(bookOf(CELLS), "comma");
  expect(writeBook(comma)).toContain('"decimal": "comma"');
  expect(readBook(writeBook(comma))).toEqual({ book: comma });
  const plain = bookOf(CELLS);
  expect(writeBook(plain)).not.toContain("decimal");
  expect(readBook(writeBook(plain).replace('"mark"', '"decimal": "point",\n  "mark"'))).toEqual({
    book: plain,
  });
  expect(readBook(writeBook(comma).replace('"decimal": "comma"', '"decimal": "dot"'))).toHaveProperty(
    "reason",
  );
});

test("refusals, verdicts, workings and what-if figures have the comma too", () => {
  const cells = {
    waist: "70,5",
    least: "=WITH_EASE(-1,5; 2)",
    sum: "=WITH_EASE(waist; 2,5)",
    verdict: '=MEASURE_CHECK("waist girth"; 31,4; {"hip girth"}; {102.5}; "female")',
  };
  const book = showDecimal(bookOf(cells, "cm"), "comma");
  const engine = new Engine(book, layDesk);
  const at = (row: number) => engine.view({ page: 0, row, column: 1 });
  expect(at(1).problem?.sentence).toContain("-1,5");
  expect(at(2).shown).toBe("73");
  expect(at(3).problem?.sentence).toContain("31,4 cm");
  for (const row of [1, 3]) expect(at(row).problem?.sentence).not.toMatch(/\d\.\d/);
  const [call] = explain(engine, { page: 0, row: 2, column: 1 }).calls;
  expect(call!.given.map(({ shown }) => shown)).toContain("70,5");
  expect(call!.steps.map(({ filled }) => filled).join(" ")).not.toMatch(/\d\.\d/);
  const cell = variedCellAt(book, { page: 0, row: 0, column: 1 });
  if ("problem" in cell) throw new Error(cell.problem);
  expect([cell.now, figureText(book, cell.kind, 71.25), figureFor(book, cell, "71,25")]).toEqual([
    70.5,
    "71,25",
    71.25,
  ]);
  expect(typedFor(book, cell, 71.125)).toBe("71,125");
  engine.destroy();
});

test("a formula parted by ; takes decimal commas for what they are", () => {
  const engine = new Engine(bookOf({ hip: "70,5" }, "cm"), layDesk);
  const answer = (formula: string) => {
    const found = engine.evaluate(formula);
    return "problem" in found ? found.problem : found.value;
  };
  for (const [comma, point] of [
    ["=GIRTH_OVER(90; 0,3)", "=GIRTH_OVER(90; 0.3)"],
    ["=WITH_EASE(96; 2,5)", "=WITH_EASE(96; 2.5)"],
    ["=EASE(hip; 1,5 m)", "=EASE(hip; 150)"],
    ['=TAPE("27,5 in.")', "=27.5*2.54"],
    ["=2,54*2", "=5.08"],
  ] as const)
    expect(answer(comma), comma).toBeCloseTo(answer(point) as number, 12);
  // 90 cm and a layer of 3 mm all round: 2π × 0.3 more. 96 cm and 2.5 cm of ease.
  expect(answer("=GIRTH_OVER(90; 0,3)")).toBeCloseTo(90 + 2 * Math.PI * 0.3, 9);
  expect(answer("=WITH_EASE(96; 2,5)")).toBe(98.5);
  expect(answer("=MAX(1,2)")).toBe(2);
  expect(answer('=TAPE("1,234")')).toBe(
    "text is unclear: 1,234 has two readings: 1.234 with the comma as its decimal mark, or 1234; type the one that is meant",
  );
  expect(answer("=IF(hip>40; MAX(1,2); 3)")).toMatch(/^1,2 has two readings in this formula/);
  engine.destroy();
});

test("a change of unit leaves no comma unclear and no length behind, whichever sign parts the arguments", () => {
  const cells = {
    hip: "98 cm",
    rounded: "=MAX(2,3)+ROUND(hip/2,1)/hip",
    read: '=TAPE("1,234")+hip',
  };
  const book = { ...bookOf(cells, "cm"), decimal: "comma" as const };
  const at = (of: Book, row: number) => {
    const engine = new Engine(of, layDesk);
    const value = engine.value({ page: 0, row, column: 1 });
    engine.destroy();
    return value as number;
  };
  const point = { ...bookOf(cells, "cm") };
  expect(at(convertBook(point, "in"), 1)).toBeCloseTo(at(point, 1), 9);
  expect(at(convertBook(book, "in"), 2) * 2.54).toBeCloseTo(at(book, 2), 9);
});

test("a day whose order the decimal comma had settled stays that day with points", () => {
  const days = { taken: "4.5.2026", due: "25.12.2026", ease: "3,5" };
  const book: Book = { ...bookOf(days, "cm"), decimal: "comma" };
  const typed = (of: Book) => of.pages[0]!.rows.map((row) => row[1]);
  expect(typed(showDecimal(book, "point"))).toEqual(["2026-05-04", "25.12.2026", "3.5"]);
});
