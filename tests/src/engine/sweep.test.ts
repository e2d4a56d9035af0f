import Papa from "papaparse";
import { expect, test } from "vitest";
import { Engine } from "../../../src/engine/engine.ts";
import { settingsOf, stepsOf, sweep, sweepCsv, watchAt } from "../../../src/engine/sweep.ts";
import { isProblem, variedCellAt } from "../../../src/engine/varied-cell.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { afresh, cell, questionEngineOf, variedCell, watch } from "./ask.ts";
import { bookOf, laidPeplum, panelSkirt } from "./whatif-books.ts";

const told = (reading: object) =>
  "value" in reading ? reading.value : (reading as { sentence: string }).sentence;

test("every row of a sweep is what the whole book gives when the figure is typed there", () => {
  const book = panelSkirt();
  const watched = ["panels", "cut", "cloth", "buy", "verdict"];
  const engine = questionEngineOf(book, ["depth"], watched);
  const steps = stepsOf(book, variedCell(book, "depth"), { from: 20, to: 80, step: 1.125 }) as number[];
  for (const { figures, readings } of sweep(
    engine,
    steps.map((one) => [one]),
  )) {
    expect(readings.map(told)).toEqual(watched.map((name) => afresh(book, { depth: figures[0]! }, name)));
  }
});

test("two cells vary together, the second turning fastest, and laid cloth follows both", () => {
  const book = laidPeplum();
  const engine = questionEngineOf(book, ["depth", "hip"], ["cloth", "hem_edge"]);
  const rows = [
    ...sweep(
      engine,
      settingsOf([
        [8, 9.5],
        [38, 40, 43],
      ]) as number[][],
    ),
  ];
  expect(rows.map(({ figures }) => figures)).toEqual([
    [8, 38],
    [8, 40],
    [8, 43],
    [9.5, 38],
    [9.5, 40],
    [9.5, 43],
  ]);
  for (const { figures, readings } of rows) {
    const typed = { depth: figures[0]!, hip: figures[1]! };
    expect(readings.map(told)).toEqual([afresh(book, typed, "cloth"), afresh(book, typed, "hem_edge")]);
  }
});

test("a sweep leaves the open book, its engine and its figures alone", () => {
  const book = panelSkirt();
  const open = new Engine(book, layDesk);
  const before = JSON.stringify(book);
  const cloth = open.value(cell(book, "cloth"));
  Object.freeze(book.pages[0]!.rows);
  const rows = [...sweep(questionEngineOf(book, ["depth"], ["cloth"]), [[10], [20], [70]])];
  expect(rows).toHaveLength(3);
  expect(JSON.stringify(book)).toBe(before);
  expect(open.book).toBe(book);
  expect(open.value(cell(book, "cloth"))).toBe(cloth);
});

test("a setting that can't be worked keeps its sentence and the others their figures", () => {
  const book = bookOf({ waist: "28 in", hem: "40 in", gaps: "5", spread: "=SPREAD_PER_GAP(waist;hem;gaps)" });
  const rows = [...sweep(questionEngineOf(book, ["hem"], ["spread"]), [[26], [28], [34]])];
  expect(told(rows[0]!.readings[0]!)).toMatch(/^hem must be at least as long as top, not 26/);
  expect(told(rows[1]!.readings[0]!)).toBe(0);
  expect(told(rows[2]!.readings[0]!)).toBeCloseTo(6 / 5, 12);
});

test("a cell that waits for another says which one is wrong", () => {
  const book = bookOf({
    waist: "28 in",
    hem: "40 in",
    spread: "=SPREAD_PER_GAP(waist;hem;5)",
    twice: "=2*spread",
  });
  const [row] = [...sweep(questionEngineOf(book, ["hem"], ["twice"]), [[20]])];
  expect(told(row!.readings[0]!)).toMatch(/^spread \(Draft!B3\): hem must be at least/);
});

test("a range that makes no sense is refused in one sentence that says how to mend it", () => {
  const book = panelSkirt();
  const refusal = (name: string, from: number, to: number, step: number) => {
    const steps = stepsOf(book, variedCell(book, name), { from, to, step });
    return isProblem(steps) ? steps.problem : steps.length;
  };
  expect(refusal("depth", 14, 8, 0.5)).toBe("from must be at most to: depth can't go from 14 up to 8");
  expect(refusal("depth", 8, 14, 0)).toBe("the step of depth must be more than 0; give one such as 1/8");
  expect(refusal("depth", 8, 14, -1)).toBe("the step of depth must be more than 0, not -1");
  expect(refusal("depth", 0, 1, 1e-6)).toMatch(/^that makes 1,000,001 steps and the most is 20,000; /);
  expect(refusal("depth", 8, 8, 0.5)).toBe(1);
  expect(refusal("depth", 8, 14, 0.1)).toBe(61);
});

test("a counted cell takes whole steps only", () => {
  const book = bookOf({ sections: "5", spread: "=SPREAD_PER_GAP(28;40;sections)" });
  expect(variedCell(book, "sections")).toMatchObject({ whole: true, step: 1, kind: "count" });
  expect(stepsOf(book, variedCell(book, "sections"), { from: 3, to: 6, step: 0.5 })).toEqual({
    problem: "sections is counted: from and step must be whole numbers, not 3 and 0.5",
  });
});

test("a formula, a text and a blank text cell can't be varied, a text and a piece can't be watched", () => {
  const book = laidPeplum();
  const skirt = panelSkirt();
  const vary = (name: string) => (variedCellAt(skirt, cell(skirt, name)) as { problem: string }).problem;
  expect(vary("cut")).toBe(
    "cut is worked out by =depth+hem+IN(1/2); vary a cell with a typed number instead",
  );
  expect(vary("note")).toBe("note holds for the harvest scene; vary a cell with a typed number instead");
  expect((variedCellAt(skirt, { page: 0, row: 40, column: 0 }) as { problem: string }).problem).toMatch(
    /^Draft!A41 /,
  );
  expect(() => watch(skirt, "note")).toThrow(
    'note is a text ("for the harvest scene"); watch a cell that holds a number',
  );
  expect(() => watch(book, "panel")).toThrow(/^panel is a piece; watch one of its measures/);
  expect(watchAt(new Engine(skirt, layDesk), { page: 0, row: 40, column: 1 })).toEqual({
    problem: "Draft!B41 is blank; watch a cell that holds a number",
  });
});

test("the table for other programs reads back figure for figure, sentences and all", () => {
  const book = bookOf({ waist: "28 in", hem: "40 in", spread: "=SPREAD_PER_GAP(waist;hem;5)" });
  const engine = questionEngineOf(book, ["hem"], ["spread"]);
  const rows = [...sweep(engine, [[20], [31.5]])];
  const { data } = Papa.parse<string[]>(sweepCsv(engine, [watch(book, "spread")], rows), {
    skipEmptyLines: true,
  });
  expect(data[0]).toEqual(["hem", "spread", "check"]);
  expect(data[1]!.slice(0, 2)).toEqual(["20", ""]);
  expect(data[1]![2]).toMatch(/^hem must be at least as long as top/);
  expect(data[2]).toEqual(["31.5", "0.7", ""]);
});
