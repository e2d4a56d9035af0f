import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { asSentence, doubtsOn } from "../../../../src/app/print/doubts.ts";
import { mapsOf, tileBeside } from "../../../../src/app/print/page-map.ts";
import { pictureOfSheet } from "../../../../src/app/print/sheet-picture.ts";
import { readBook } from "../../../../src/book/read.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { printed } from "../../../../src/paper/documents.ts";
import type { PaperRequest } from "../../../../src/paper/kinds.ts";

const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
if ("reason" in reading) throw new Error(reading.reason);
const engine = new Engine(reading.book, layDesk);

async function drawn(request: Pick<PaperRequest, "what"> & Partial<PaperRequest>) {
  const done = await printed(engine, { paper: "a4", day: new Date(2026, 4, 20), ...request });
  if ("reason" in done) throw new Error(done.reason);
  return done.drawn;
}

const QUICK = /^a length from a quick lay/;

test("a cut list with a quick lay, the lay and the working of its length say that a search may find a shorter one", async () => {
  expect(doubtsOn(await drawn({ what: "cut-list" }))).toEqual([expect.stringMatching(QUICK)]);
  expect(doubtsOn(await drawn({ what: "lay" }))).toEqual([expect.stringMatching(QUICK)]);
  expect(doubtsOn(await drawn({ what: "working", cells: ["cloth_length_a"] }))).toEqual([
    expect.stringMatching(QUICK),
  ]);
  expect(doubtsOn(await drawn({ what: "log" }))).toEqual([]);
  // The lay on the wider cloth is proved.
  expect(doubtsOn(await drawn({ what: "lay", cells: ["cloth_length_b"] }))).toEqual([]);
});

test("a doubt stands in the dialog as a sentence, with a capital and a full stop, and nothing else of it altered", () => {
  expect(asSentence("strip 1: rests on an estimate: worn (Draft!B1)")).toBe(
    "Strip 1: rests on an estimate: worn (Draft!B1).",
  );
  expect(asSentence("“hem” gives no places along an edge.")).toBe("“hem” gives no places along an edge.");
});

test("everything has a map for the pattern and one for the marking strip, each with its own sheets", async () => {
  const sheets = await drawn({ what: "all" });
  const maps = mapsOf(sheets);
  expect(maps).toHaveLength(2);
  const [pattern, strip] = maps;
  expect(pattern!.tiles.map(({ sheet }) => sheets[sheet]!.tile!.name)).toEqual(
    pattern!.tiles.map(({ name }) => name),
  );
  expect(pattern!.tiles.at(-1)!.sheet).toBeLessThan(strip!.tiles[0]!.sheet);
  expect(strip!.tiles.map(({ name }) => name)).toEqual(["A1", "B1"]);
  // Below A1 is A2, above it nothing.
  const [first] = pattern!.tiles;
  const below = pattern!.tiles.find(({ name }) => name === "A2")!;
  expect(tileBeside(pattern!, first!.sheet, 1)).toBe(below.sheet);
  expect(tileBeside(pattern!, below.sheet, -1)).toBe(first!.sheet);
  expect(tileBeside(pattern!, first!.sheet, -1)).toBeNull();
  // The lines of the map are in the window of the map.
  const places = pattern!.outlines.match(/-?\d+(\.\d+)?/g)!.map(Number);
  expect(Math.min(...places)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...places)).toBeLessThanOrEqual(Math.max(pattern!.width, pattern!.height));
});

test("the picture of a sheet has every word of it, and what is cut off at its border stays in a window", async () => {
  const [, sheet] = await drawn({ what: "pattern" });
  const picture = pictureOfSheet(sheet!);
  const kinds = (parts: typeof picture.parts): string[] =>
    parts.flatMap((part) =>
      part.is === "window" ? kinds(part.parts) : part.is === "text" ? [part.text] : [],
    );
  expect(kinds(picture.parts)).toEqual(
    sheet!.marks.flatMap((mark) => (mark.is === "text" ? [mark.text] : [])),
  );
  expect(picture.parts.filter(({ is }) => is === "window")).toHaveLength(1);
});
