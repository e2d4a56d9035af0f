import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { explain } from "../../../functions/run.ts";
import { lookUp } from "../../../src/book/names.ts";
import { readBook } from "../../../src/book/read.ts";
import { drawnAt } from "../../../src/engine/drawn.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { pictureOf } from "../../../src/engine/picture.ts";
import { pieceNotes, withNotes } from "../../../src/engine/piece-notes.ts";
import { layDesk } from "../../../src/lay/desk.ts";

function peplum(): Engine {
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return new Engine(reading.book, layDesk);
}

test("a piece of the cut list says how many to cut, of what cloth, for whom and of which day", () => {
  const engine = peplum();
  const place = lookUp(engine.book, "skirt_cut")!;
  const notes = pieceNotes(engine, place, "skirt_cut");
  expect(notes).toEqual(["skirt half", "cut 2, mirrored in pairs", "wool", "miller's daughter, 2026-05-20"]);
  const outline = withNotes(drawnAt(engine, place)!.shapes, notes).find(({ kind }) => kind === "outline");
  expect(outline).toMatchObject({ label: notes.join("\n") });
});

test("a piece that no cut list has says its name, its wearer and the day, and not how many", () => {
  const engine = peplum();
  const place = lookUp(engine.book, "skirt_flat")!;
  expect(pieceNotes(engine, place, "skirt_flat")).toEqual(["skirt_flat", "miller's daughter, 2026-05-20"]);
});

test("a page's own wearer and day come before the book's", () => {
  const { book } = peplum();
  const pages = book.pages.map((page) =>
    page.title === "Draft"
      ? {
          ...page,
          rows: [...page.rows, ["wearer", "the widow"]],
          names: { wearer: `Draft!B${page.rows.length + 1}` },
        }
      : page,
  );
  const engine = new Engine({ ...book, pages }, layDesk);
  const notes = pieceNotes(engine, lookUp(engine.book, "skirt_flat")!, "skirt_flat");
  expect(notes).toEqual(["skirt_flat", "the widow, 2026-05-20"]);
});

test("a piece with allowances is cut along its outline, and the legend says so; one without has no cut line", () => {
  const engine = peplum();
  const roles = (name: string) =>
    pictureOf(drawnAt(engine, lookUp(engine.book, name)!)!.shapes, engine.book).roles;
  expect(roles("skirt_cut")).toContain("cut");
  expect(roles("skirt_cut")).toContain("seam");
  expect(roles("skirt_flat")).not.toContain("cut");
});

test("an edge on the fold has a bracket within the piece, its two arrows pointing at the edge", () => {
  const piece = "M 0 0 L 10 0 L 10 20 L 0 20 Z";
  const args = [piece, 1, 2, "3", "4"];
  const { shapes } = explain(catalogue.get("WITH_ALLOWANCE")!, args, { unit: "in" });
  const bracket = shapes.find((shape) => shape.kind === "edge" && shape.label === "place on the fold");
  const { lines } = pictureOf([bracket!], { unit: "in", mark: "1/8" });
  expect(lines[0]!.arrows).toHaveLength(2);
  for (const { at, to } of lines[0]!.arrows) {
    expect(at[0]).toBeGreaterThan(0);
    expect(at[0]).toBeLessThan(0.5);
    expect(to[0]).toBeLessThan(0);
    expect(to[1]).toBeCloseTo(0, 9);
  }
});
