import { beforeAll, expect, test } from "vitest";
import { flattenPiece } from "../../../functions/pieces/piece.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { piecesOf } from "../../../src/engine/pieces.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { newDocument } from "../../../src/paper/document.ts";
import { printed } from "../../../src/paper/documents.ts";
import type { Printed } from "../../../src/paper/kinds.ts";
import { type Paper, readPaper } from "../../../src/paper/paper.ts";
import { type PatternSheet, patternSheet } from "../../../src/paper/pattern-sheet.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { darkRuns, type Raster, withPdf } from "./poppler.ts";

type Point = readonly [x: number, y: number];

const DPI = 254;
/** Pixels to a millimetre. */
const PER_MM = DPI / 25.4;
/** What a maker can measure on paper. */
const NEAR = 0.1;
const MARGIN = 10;

const BOOK = bookOf({ apron: "=RECTANGLE(10; 13)", cape: "=CIRCLE_PANEL(12; 10; 1/2)" });
let pattern: Printed;
let sheet: PatternSheet;
let text: string;
/** The first sheet, then the tiles. */
let pages: Raster[];

beforeAll(async () => {
  const engine = new Engine(BOOK, layDesk);
  const day = new Date(2026, 4, 20);
  const done = await printed(engine, { what: "pattern", paper: "a4", day });
  if ("reason" in done) throw new Error(done.reason);
  pattern = done;
  const found = patternSheet(BOOK, piecesOf(engine).found, readPaper("a4") as Paper, 1, {
    letters: await newDocument("", day),
  });
  if ("reason" in found) throw new Error(found.reason);
  sheet = found;
  withPdf(pattern.bytes, (pdf) => {
    text = pdf.text();
    pages = Array.from({ length: pattern.sheets }, (_, i) => pdf.page(i + 1, DPI));
  });
});

test("the words can be taken out of the PDF again", () => {
  for (const words of [
    "The widow's skirts",
    "10 cm each way",
    "apron",
    "cape",
    "straight grain",
    "page 3 of",
    "2026-05-20",
  ])
    expect(text).toContain(words);
});

test("the test squares measure 10 cm and 4 in each way on the page as it is rasterised", () => {
  const [first] = pages;
  const [left, top] = [MARGIN, 45 + MARGIN];
  for (const [side, below] of [
    [100, 0],
    [101.6, 103],
  ] as const) {
    for (const axis of [0, 1] as const) {
      // Through the square, off its words; its sides are the runs where it begins and ends.
      const across = (axis === 0 ? top + below : left) + 20;
      const begin = axis === 0 ? left : top + below;
      const runs = darkRuns(first!, axis, Math.round(across * PER_MM)).map(({ middle }) => middle / PER_MM);
      const near = (place: number) => runs.filter((run) => Math.abs(run - place) < 1);
      const [from, to] = [near(begin), near(begin + side)];
      expect([from.length, to.length]).toEqual([1, 1]);
      expect(Math.abs(to[0]! - from[0]! - side)).toBeLessThan(NEAR);
    }
  }
});

/** Where a line of chords crosses a straight line across the paper, and how squarely. */
function crossings(points: readonly Point[], axis: 0 | 1, at: number): number[] {
  const other = (1 - axis) as 0 | 1;
  return points.flatMap((a, i) => {
    const b = points[(i + 1) % points.length]!;
    if (a[other] <= at === b[other] <= at) return [];
    const share = (at - a[other]) / (b[other] - a[other]);
    const slant = Math.abs(b[axis] - a[axis]) / Math.abs(b[other] - a[other]);
    return slant > 1 ? [] : [a[axis] + share * (b[axis] - a[axis])];
  });
}

test("cut lines stand within a tenth of a millimetre of the pieces on every sheet, up to its borders", () => {
  const outlines = sheet.pieces.map(({ piece }) => flattenPiece(piece, 0.002));
  let looked = 0;
  sheet.tiles.forEach(({ window }, i) => {
    const page = pages[i + 1]!;
    for (const axis of [0, 1] as const) {
      const [low, high] = axis === 0 ? [window.low, window.high] : [window.left, window.right];
      const [least, most] = axis === 0 ? [window.left, window.right] : [window.low, window.high];
      for (let step = 1; step < 12; step += 1) {
        const pixel = Math.round((MARGIN + (step * (high - low)) / 12) * PER_MM);
        const at = (pixel + 0.5) / PER_MM - MARGIN + low;
        const runs = darkRuns(page, axis, pixel).filter(({ wide }) => wide > 0.7 * PER_MM);
        const drawn = runs.map(({ middle }) => middle / PER_MM - MARGIN + least);
        for (const place of outlines.flatMap((points) => crossings(points, axis, at))) {
          if (place < least + 1 || place > most - 1) continue;
          const nearest = Math.min(...drawn.map((one) => Math.abs(one - place)));
          expect([sheet.tiles[i]!.name, axis, at, nearest < NEAR]).toEqual([
            sheet.tiles[i]!.name,
            axis,
            at,
            true,
          ]);
          looked += 1;
        }
      }
    }
  });
  expect(looked).toBeGreaterThan(60);
});

test("the sides of a rectangle, glued together from two sheets each, are as long as the piece's", () => {
  const at = sheet.pieces.findIndex(({ title }) => title === "apron");
  const corners = sheet.pieces[at]!.piece.edges.map(([first]) => first!.from);
  const ends = (axis: 0 | 1): [number, number] => {
    const all = corners.map((point) => point[axis]);
    return [Math.min(...all), Math.max(...all)];
  };
  const lengths = ([0, 1] as const).map((axis) => {
    const other = (1 - axis) as 0 | 1;
    const [from, to] = ends(other);
    // A line through the piece, off its middle, where the words are.
    const across = from + 0.2 * (to - from);
    const found = ends(axis).map((place) => {
      const seen = sheet.tiles.findIndex(({ window: { left, right, low, high } }) => {
        const [x, y] = axis === 0 ? [place, across] : [across, place];
        return x > left + 1 && x < right - 1 && y > low + 1 && y < high - 1;
      });
      const { window } = sheet.tiles[seen]!;
      const [alongStart, acrossStart] = axis === 0 ? [window.left, window.low] : [window.low, window.left];
      const runs = darkRuns(pages[seen + 1]!, axis, Math.round((across - acrossStart + MARGIN) * PER_MM));
      const near = runs.filter(
        ({ middle, wide }) =>
          wide > 0.7 * PER_MM && Math.abs(middle / PER_MM - MARGIN + alongStart - place) < 1,
      );
      return { sheet: seen, place: near[0]!.middle / PER_MM - MARGIN + alongStart };
    });
    expect(found[0]!.sheet).not.toBe(found[1]!.sheet);
    return found[1]!.place - found[0]!.place;
  });
  const [short, long] = lengths.sort((a, b) => a - b);
  expect(Math.abs(short! - 254)).toBeLessThan(NEAR);
  expect(Math.abs(long! - 13 * 25.4)).toBeLessThan(NEAR);
});

test("hostile and long names of books, wearers, pages and pieces make sound PDFs, and what has no form is said", async () => {
  const names = [
    `)>> endobj <script>"&\\'`,
    `../../${"Žď½⅜ß".repeat(80)}`,
    "שרוול ארוך",
    "\u0007\u202egnp.exe",
    "🧵 漢",
    "W".repeat(400),
  ];
  const base = bookOf(Object.fromEntries(names.map((name, i) => [name, `=RECTANGLE(${3 + i}; 9)`])));
  const [page] = base.pages;
  const stages = ["Measure", "Fit", "Cut", "Trimmings"] as const;
  const title = names.join(" ");
  const book = {
    ...base,
    title,
    names: { wearer: "Draft!A5" },
    pages: [
      { ...page!, title: "Draft" },
      ...stages.map((stage, i) => ({
        ...{ ...page!, stage, title: names[i]!.slice(0, 80) },
        columns: names.slice(0, 2).map((heading) => ({ heading, kind: "any" as const, width: 90 })),
        rows: [
          ...page!.rows.slice(0, 3),
          ["eyelets", "=EYELET_MARK(1;9;4;1)"],
          ["lay", "=YARDAGE(B1:B3;A9:A9;45)"],
        ],
      })),
    ],
  };
  const engine = new Engine(book, layDesk);
  for (const what of ["all", "pattern"] as const) {
    const done = await printed(engine, {
      what,
      paper: "letter",
      scale: "1/4",
      cells: ["Draft!B1"],
      day: new Date(),
    });
    if ("reason" in done) throw new Error(done.reason);
    const said = done.sentences.join();
    for (const sign of ["🧵", "漢", "U+0007"]) expect(said).toContain(sign);
    withPdf(done.bytes, (pdf) => {
      const words = pdf.text();
      for (const whole of ["endobj <script>", "Žď½⅜ß", "□", "gnp.exe", "WWWW"])
        expect(words).toContain(whole);
      // poppler puts the words of a line that is read from right to left in their order, with marks of direction about them.
      expect(words.replace(/\p{Cf}/gu, "")).toMatch(/שרוול ארוך/);
      expect(words).not.toContain("\u0007");
      expect(words.match(/page \d+ of \d+/g)).toHaveLength(done.sheets);
    });
  }
});
