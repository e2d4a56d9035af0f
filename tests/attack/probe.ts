/** What must hold of an engine with any texts in its cells. */
import { fullAddress, type Place } from "../../src/book/address.ts";
import { type } from "../../src/book/edit.ts";
import { isFormula } from "../../src/book/formula.ts";
import { type Book, blankBook, type ColumnKind } from "../../src/book/shape.ts";
import { checks } from "../../src/engine/checks.ts";
import { convertBook } from "../../src/engine/convert.ts";
import { drawnAt } from "../../src/engine/drawn.ts";
import { Engine } from "../../src/engine/engine.ts";
import { chain } from "../../src/engine/explain.ts";
import type { TimeLimits } from "../../src/engine/guards.ts";
import { pictureOf } from "../../src/engine/picture.ts";
import { piecesOf } from "../../src/engine/pieces.ts";
import { exact, shownWithDecimals } from "../../src/engine/show.ts";
import { layDesk } from "../../src/lay/desk.ts";

/** Less time than a reader gets, so that what is not stopped in time stands out. */
export const SHORT: TimeLimits = { cell: 300, work: 1000, clock: () => performance.now() };

/** The control cells, B1 and B2, work whatever stands in the others: B2 is twice B1. */
const CONTROL: readonly Place[] = [
  { page: 0, row: 0, column: 1 },
  { page: 0, row: 1, column: 1 },
];

/** A book with these texts from D1 downwards in columns of a kind, beside the control cells. */
export function bookWith(texts: readonly string[], kind: ColumnKind = "any", unit: "in" | "cm" = "in"): Book {
  const blank = blankBook("The squire's cloak", unit, unit === "in" ? "1/8" : "1 mm");
  const column = { heading: "", kind: "any" as const, width: 100 };
  const pages = blank.pages.map((page, i) =>
    i === 0 ? { ...page, columns: [column, column, column, { ...column, kind }, column] } : page,
  );
  const typings = texts.map((typed, row) => ({ page: 0, row, column: 3, typed }));
  return type({ ...blank, pages, names: { hem: "Measure!$B$1".replaceAll("$", "") } }, [
    ...typings,
    { ...CONTROL[0]!, typed: "5" },
    { ...CONTROL[1]!, typed: "=B1*2" },
    { page: 0, row: 2, column: 1, typed: "a text" },
    { page: 0, row: 4, column: 1, typed: "2026-05-04" },
  ]);
}

/** Figures that a cell must never show, unless they were typed. */
const NO_FIGURE = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object/;

/** What is wrong with a cell, or null. */
function cellFault(engine: Engine, place: Place): string | null {
  const view = engine.view(place);
  const where = fullAddress(engine.book, place);
  const { shown, problem, typed } = view;
  const told = [
    shown,
    shownWithDecimals(shown, view.value, view.kind, engine.book),
    exact(view.value, view.kind, engine.book),
  ];
  for (const one of told)
    if (NO_FIGURE.test(one) && typeof view.value !== "string" && !NO_FIGURE.test(typed))
      return `${where} shows ${one}`;
  if (typeof view.value === "number" && !Number.isFinite(view.value))
    return `${where} has the value ${view.value}`;
  if (
    problem &&
    (problem.sentence.length < 5 || problem.sentence.length > 400 || /[\n\r]/.test(problem.sentence))
  )
    return `${where} says ${JSON.stringify(problem.sentence)}`;
  return null;
}

/** Looks at everything that a page shows of a book; what is wrong in a sentence, or null. */
export function engineFault(engine: Engine, deep = true): string | null {
  for (const [index, page] of engine.book.pages.entries())
    for (const [row, cells] of page.rows.entries())
      for (const [column, typed] of cells.entries()) {
        const place = { page: index, row, column };
        const fault = cellFault(engine, place);
        if (fault) return fault;
        if (!deep || !isFormula(typed)) continue;
        engine.evaluate(typed, index);
        engine.unreadable(typed, index);
        for (const one of chain(engine, place, 5))
          if (one.shown === undefined) return `${one.address} shows nothing`;
        const drawn = drawnAt(engine, place);
        if (drawn) pictureOf(drawn.shapes, engine.book);
      }
  if (!deep) return null;
  piecesOf(engine);
  const told = checks(engine).find(({ sentence }) => /[\n\r]/.test(sentence));
  return told ? `the list of problems says ${JSON.stringify(told.sentence)}` : null;
}

/** The control cells after B1 is changed to a figure. */
export function controlFault(engine: Engine, figure: number): string | null {
  engine.become(type(engine.book, [{ ...CONTROL[0]!, typed: String(figure) }]));
  const value = engine.value(CONTROL[1]!);
  return value === 2 * figure ? null : `B2 must be ${2 * figure}, twice B1, and is ${value}`;
}

/** A book built, looked at, changed, measured in the other unit: whatever stands in it. */
export function bookFault(book: Book): string | null {
  const engine = new Engine(book, layDesk, SHORT);
  try {
    return engineFault(engine) ?? controlFault(engine, 7) ?? unitFault(engine);
  } finally {
    engine.destroy();
  }
}

function unitFault(engine: Engine): string | null {
  engine.become(convertBook(engine.book, engine.book.unit === "in" ? "cm" : "in"));
  return engineFault(engine, false);
}
