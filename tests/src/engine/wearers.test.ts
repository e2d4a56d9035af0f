import { expect, test } from "vitest";
import { findPlace, type Place } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import type { Book } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { choicesAt } from "../../../src/engine/choices.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { bodyAt } from "../../../src/engine/drawn-body.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { estimateText } from "../../../src/engine/estimates.ts";
import { pieceNotes } from "../../../src/engine/piece-notes.ts";
import { sensitivity } from "../../../src/engine/sensitivity.ts";
import { finish } from "../../../src/engine/sweep.ts";
import { wearerCell } from "../../../src/engine/wearer-cell.ts";
import { pageCsv } from "../../../src/exchange/page-csv.ts";
import { quickLay } from "../../../src/lay/quick.ts";
import { copyPage } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";
import { castBook } from "./cast.ts";

const at = (book: Book, address: string) => findPlace(book, address)!;
const typed = (book: Book, ...cells: readonly (readonly [string, string])[]) =>
  edit.type(
    book,
    cells.map(([address, text]) => ({ ...at(book, address), typed: text })),
  );
const listed = (engine: Engine) =>
  checks(engine).map(({ address, sentence, at: cells }) => [
    address,
    sentence,
    cells.map((one) => engine.address(one)).join(" "),
  ]);

test("a cast of three has no problems, and every skirt follows its wearer's figures", () => {
  const book = castBook(3, 4);
  const engine = new Engine(book, quickLay);
  expect(checks(engine)).toEqual([]);
  const waist = (row: number) => engine.value(at(book, `Skirts!B${row}`));
  expect([1, 2, 3, 4].map(waist)).toEqual([27, 27.5, 28, 27]);
  engine.become(typed(book, ["Measure!G4", "31"]));
  expect([1, 2, 3, 4].map(waist)).toEqual([27, 31, 28, 27]);
  expect(engine.view(at(book, "Skirts!D2")).kind).toBe("piece");
  engine.destroy();
});

test("a doubtful figure is a problem of its row's verdict, which leads to the figure; the figure itself is marked", () => {
  const book = castBook(3, 4);
  const wrong = typed(book, ["Measure!G1", "74"], ["Measure!D4", "2026-01-01"]);
  const engine = new Engine(wrong, quickLay);
  expect(listed(engine)).toEqual([
    ["Measure!A1", expect.stringMatching(/^doubtful: role 1 over shift: waist girth of 74 in is .* centimetres may have been written where inches were meant.*measure again/), "Measure!G1"],
    ["Measure!A4", "too old: the figures of role 2 over shift, stays and petticoat were taken 139 days ago, 90 are allowed: measure again before cutting", "Measure!D4"],
  ]);
  expect(engine.saidOf(at(book, "Measure!G1")).map(({ by }) => engine.address(by))).toEqual(["Measure!A1"]);
  expect(engine.saidOf(at(book, "Measure!H1"))).toEqual([]);
  engine.become(book);
  expect(engine.saidOf(at(book, "Measure!G1"))).toEqual([]);
  engine.destroy();
}); // biome-ignore format: sentences

test("a figure that was never taken is listed once and leads to the blank cell of the chart; every garment that needs it says so", () => {
  const book = typed(castBook(2, 3), ["Measure!G2", ""]);
  const engine = new Engine(book, quickLay);
  const sentence = "the waist girth of role 1 over shift, stays and petticoat was never taken, only of role 1 over shift";
  expect(listed(engine)).toEqual([["Skirts!B1", sentence, "Measure!G2"]]);
  // The outline of its own skirt, and the waist and the outline of the other one.
  expect(checks(engine)[0]!.waiting).toBe(3);
  expect(engine.view(at(book, "Skirts!B3")).problem?.sentence).toBe(sentence);
  expect(engine.view(at(book, "Skirts!D1")).problem?.from).toEqual(at(book, "Skirts!B1"));
  // Once for the marked cell, however many formulas say it.
  expect(engine.saidOf(at(book, "Measure!G2"))).toHaveLength(1);
  engine.destroy();
}); // biome-ignore format: sentences

test("bare figures in a chart are lengths: in centimetres every garment stays the same", () => {
  const book = castBook(2, 2);
  const other = convertBook(book, "cm");
  expect(other.pages[0]!.rows[0]!.slice(0, 5)).toEqual([
    "=WEARER_CHECK(figures; B1; C1; DATE(2026;5;20))",
    "role 1",
    "shift",
    "2026-05-01",
    "162.56",
  ]);
  const [inches, metric] = [new Engine(book, quickLay), new Engine(other, quickLay)];
  expect(checks(metric)).toEqual([]);
  for (const address of ["Skirts!B1", "Skirts!C2"])
    expect(metric.value(at(other, address))).toBeCloseTo(
      (inches.value(at(book, address)) as number) * 2.54,
      9,
    );
});

test("a girth worked out from another is an estimate, and so is what rests on it, and nothing else of the chart", () => {
  const book = typed(
    castBook(2, 2),
    ["Measure!G2", "=GIRTH_OVER(G1; 1/16; 2)"],
    ["Skirts!H1", "=B1+1"],
    ["Skirts!H2", "=B2+1"],
    ["Skirts!I1", '=IF(C1>0; C1; B1)'],
    ["Skirts!I2", "=SUM(B1:B2)"],
  );
  const engine = new Engine(book, quickLay);
  const text = (address: string) => estimateText(engine, at(book, address));
  expect(text("Measure!G2")).toBe(
    "estimated: the girth over 2 layers, worked out from the 29 in beneath; measure over everything worn when you can",
  );
  const rests = "rests on an estimate: role 1, Waist girth (Measure!G2)";
  expect(["B1", "D1", "H1", "I2"].map((cell) => text(`Skirts!${cell}`))).toEqual([rests, rests, rests, rests]);
  // The other wearer's figure comes from the same chart, and IF passes the estimate over.
  expect(["B2", "C1", "D2", "H2", "I1"].map((cell) => text(`Skirts!${cell}`))).toEqual(["", "", "", "", ""]);
  expect(engine.restsOn(at(book, "Skirts!B1")).map((one) => engine.address(one))).toEqual(["Measure!G2", "Skirts!A1"]);
  expect(pageCsv(engine, 1, "shown").split("\n")[1]).toMatch(/^role 1,29 3\/4 \(estimated\),40,piece/);
  // Measured at last, nothing is an estimate any more.
  engine.become(typed(book, ["Measure!G2", "29 1/2"]));
  expect([text("Measure!G2"), text("Skirts!D1")]).toEqual(["", ""]);
  engine.destroy();
}); // biome-ignore format: sentences

test("lines still to be filled in a table of garments are no problem, and a figure that is missing in a filled one is", () => {
  const line = (row: number, wearer: string, length: string) =>
    [
      [`Skirts!A${row}`, wearer],
      [`Skirts!H${row}`, length],
      [`Skirts!I${row}`, `=IF(A${row}="";"";MEASURE_OF(figures;A${row};"waist girth";"shift")+H${row}/6)`],
    ] as const;
  const book = typed(
    castBook(2, 2),
    ...line(1, "role 1", "36"),
    ...line(2, "role 2", ""),
    ...line(3, "", ""),
  );
  const engine = new Engine(book, quickLay);
  expect(listed(engine)).toEqual([
    ["Skirts!H2", expect.stringMatching(/^this is empty, and role 2 \(Skirts!I2\) counts it as 0/), ""],
  ]);
  engine.destroy();
});

test("a piece in a table of garments says whose it is", () => {
  const book = { ...castBook(3, 4), names: { ...castBook(3, 4).names, wearer: "Measure!B1" } };
  const engine = new Engine(book, quickLay);
  expect(pieceNotes(engine, at(book, "Skirts!D2"), "gore")).toEqual([
    "role 2, skirt",
    "cut 6",
    "wool",
    "role 2",
  ]);
  engine.destroy();
});

test("a page's wearer is the cell of that name, else the one cell its formulas give for it", () => {
  const base = castBook(3, 4);
  expect(wearerCell(base, 1)).toBeNull();
  const page = (rows: string[][], names = {}) => ({ ...base.pages[1]!, title: "Draft", rows, names });
  const taken = '=MEASURE_OF(figures; B1; "waist girth"; B2)';
  const book = {
    ...base,
    pages: [
      ...base.pages,
      page([
        ["for", "role 1"],
        ["over", "shift"],
        ["waist", taken],
      ]),
    ],
  };
  expect(wearerCell(book, 2)).toEqual({ page: 2, row: 0, column: 1 });
  const shared = { ...book, names: { ...book.names, wearer: "Measure!B1" } };
  expect(wearerCell(shared, 2)).toEqual({ page: 0, row: 0, column: 1 });
  // In one act: the copy is the other wearer's, and one step back takes all of it away.
  const store = new Store(book, quickLay);
  expect(store.run(copyPage(2, "Draft, role 3", { row: 0, column: 1, typed: "role 3" }))).toBeNull();
  const waist = (on: number) => store.engine.value({ page: on, row: 2, column: 1 });
  expect([waist(2), waist(3)]).toEqual([29, 30]);
  store.undo();
  expect(store.book.pages).toHaveLength(3);
});

test("a garment of a chart's wearer is drawn as worn with that wearer's figures, in whichever row they stand", () => {
  const book = castBook(3, 4);
  const engine = new Engine(book, quickLay);
  const { known, unsure } = bodyAt(engine, at(book, "Skirts!D2"));
  expect(unsure).toEqual({});
  expect(known).toEqual({
    waist: { length: 27.5, from: "Measure!G4" },
    hip: { length: 40.5, from: "Measure!H4" },
    stature: { length: 64.25, from: "Measure!E3" },
    bust: { length: 36.5, from: "Measure!F3" },
  });
  engine.become(typed(book, ["Skirts!D2", "=GORE(B1/6; C2/6+6; 40)"]));
  expect(bodyAt(engine, at(book, "Skirts!D2"))).toMatchObject({
    known: {},
    unsure: { bust: "the bust girth is not used, as the garment rests on figures of role 1 and role 2" },
  });
  engine.destroy();
});

test("a draft's wearer is chosen from the chart, each name once", () => {
  const base = castBook(3, 4);
  const pages = base.pages.with(1, { ...base.pages[1]!, cells: { A1: { choices: "=Measure!B1:B6" } } });
  const book = { ...base, pages };
  const engine = new Engine(book, quickLay);
  const shown = (place: Place) => engine.view(place).shown;
  expect(choicesAt(book, at(book, "Skirts!A1"), shown)).toEqual({
    list: ["role 1", "role 2", "role 3"],
    by: "cell",
  });
  engine.destroy();
});

test("what matters to a garment are its wearer's figures, not those of the whole chart", () => {
  const book = typed(castBook(3, 4), ["Skirts!H2", "=B2*2+C2"]);
  const watched = { place: at(book, "Skirts!H2"), label: "sum", kind: "length" as const };
  // A quarter of an inch too long counts twice in the waist, once in the hip.
  const effects = finish(sensitivity(book, quickLay, watched));
  expect(effects.map(({ measurement, longer }) => [measurement.label, longer])).toEqual([
    ["Measure!G4", 0.5],
    ["Measure!H4", 0.25],
  ]);
});
