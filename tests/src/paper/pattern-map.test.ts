import { beforeAll, expect, test } from "vitest";
import { mapsOf } from "../../../src/app/print/page-map.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bandsIn, moveToBand } from "../../../src/paper/bands.ts";
import { printed } from "../../../src/paper/documents.ts";
import type { DrawnSheet, Mark } from "../../../src/paper/marks.ts";
import { MARGIN, OVERLAP } from "../../../src/paper/paper.ts";
import { bookOf } from "../engine/whatif-books.ts";

const textsOf = ({ marks }: DrawnSheet) =>
  marks.filter((mark): mark is Mark & { is: "text" } => mark.is === "text");

/** Curtains of the village hall's stage and a narrow ribbon beside them, each of ten metres or more. */
const TALL = bookOf({
  ...Object.fromEntries([1, 2, 3, 4].map((i) => [`curtain_${i}`, `=RECTANGLE(${30 + i}; 400)`])),
  ribbon: "=RECTANGLE(1/2; 500)",
});

let sheets: readonly DrawnSheet[] = [];
beforeAll(async () => {
  const done = await printed(new Engine(TALL, layDesk), {
    what: "pattern",
    paper: "a4",
    day: new Date(2026, 4, 20),
  });
  if ("reason" in done) throw new Error(done.reason);
  sheets = done.drawn;
});

test("a pattern of more than a hundred sheets has its map on a sheet of its own, with a name that can be read for each sheet", () => {
  const tiles = sheets.flatMap(({ tile }) => tile ?? []);
  expect(tiles.length).toBeGreaterThan(100);
  const [front, map] = sheets;
  expect(textsOf(front!).map(({ text }) => text)).toContain("The map is on the next sheet.");
  expect(sheets.length).toBe(tiles.length + 2);
  const texts = textsOf(map!);
  const names = texts.map(({ text }) => text);
  for (const { name } of tiles) expect(names).toContain(name);
  for (const { size } of texts) expect(size).toBeGreaterThanOrEqual(1.4);
  // The ribbon is a line on the map, too narrow for its name.
  expect(names.join(" ")).toContain("curtain");
  expect(names.join(" ")).not.toContain("ribbon");
});

test("nothing is written beyond the border of a sheet before the others", () => {
  for (const sheet of sheets.slice(0, 2))
    for (const { text, x, y, wide, size } of textsOf(sheet)) {
      expect(x, text).toBeGreaterThanOrEqual(MARGIN - 0.01);
      expect(x + wide, text).toBeLessThanOrEqual(sheet.width - MARGIN + 0.01);
      expect(y - size, text).toBeGreaterThanOrEqual(0);
      expect(y, text).toBeLessThanOrEqual(sheet.height);
    }
});

test("on the screen the map stands in bands side by side: no sheet on another, each as far down its band as in the drawing", () => {
  const [map, ...others] = mapsOf(sheets);
  expect(others).toEqual([]);
  const { tiles, bands, width, height } = map!;
  expect(bands.length).toBeGreaterThan(1);
  expect(height / width).toBeGreaterThan(1);
  expect(height / width).toBeLessThan(4);
  expect(new Set(tiles.map(({ left, top }) => `${Math.round(left)} ${Math.round(top)}`)).size).toBe(
    tiles.length,
  );
  for (const tile of tiles) {
    const band = bands.findLast(({ left }) => left <= tile.left + 0.01)!;
    expect(tile.top + band.from).toBeCloseTo(tile.row * (tile.height - OVERLAP), 6);
    expect(tile.top + tile.height).toBeLessThanOrEqual(band.height + 1e-6);
    expect(tile.left + tile.width).toBeLessThanOrEqual(band.left + band.width + 1e-6);
  }
});

test("the number of bands is the one that shows the sheets largest, and every row is in one", () => {
  for (const [columns, rows, width, height] of [
    [1, 1, 100, 100],
    [4, 3, 100, 150],
    [4, 40, 190, 277],
    [6, 90, 190, 277],
    [1, 7, 60, 20],
  ] as const) {
    const tiling = { columns, rows, wide: 190, tall: 277 };
    const bands = bandsIn(tiling, { width, height });
    const across = columns * 180 + 10;
    // Worked again from what a count of bands needs, for every count.
    const parts = Array.from({ length: rows }, (_, i) => {
      const deep = Math.ceil(rows / (i + 1));
      return Math.min(width / (i * (across + 57) + across), height / (deep * 267 + 10));
    });
    expect(bands.part).toBeCloseTo(Math.max(...parts), 9);
    expect(bands.count).toBe(Math.ceil(rows / bands.rows));
    for (let row = 0; row < rows; row += 1) {
      const [x, y] = moveToBand(bands, tiling, row);
      expect(x % bands.step).toBeCloseTo(0, 9);
      expect(row * 267 + y).toBeGreaterThanOrEqual(0);
      expect((row * 267 + y + 277) * bands.part).toBeLessThanOrEqual(height + 1e-9);
    }
  }
});
