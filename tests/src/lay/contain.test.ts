import { describe, expect, it, vi } from "vitest";
import { questionHash } from "../../../functions/cutting/lay-question.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { containedLay } from "../../../src/lay/contain.ts";
import { keepChecked, toKeep } from "../../../src/lay/desk.ts";
import { quickLay } from "../../../src/lay/quick.ts";
import { Search } from "../../../src/lay/search.ts";
import { garmentList } from "./garments.ts";

/** A desk that has never been asked anything. */
async function newDesk() {
  vi.resetModules();
  const { layDesk } = await import("../../../src/lay/desk.ts");
  return (question: LayQuestion, found = {}) => layDesk(question, found) as Lay;
}

/** A gore along the selvedge, `length` long, 5 wide at the waist and 15 at the hem. */
const gore = (length: number): Point[] => [
  [0, 5],
  [length, 0],
  [length, 15],
  [0, 10],
];

const skirt = (length: number, more: Partial<LayQuestion> = {}): LayQuestion => ({
  pieces: [
    { name: "gore", outline: gore(length), quantity: 6, turns: [0, 180] },
    { name: "lining", outline: gore(length), quantity: 6, turns: [0, 180] },
  ],
  cloths: [{ name: "the cloth", width: 59, length: null }],
  gap: 0,
  repeat: 0,
  ...more,
});

/** The lay of a question as it came, in a length that the quick lay would not find: for what contains what. */
const layOf = (question: LayQuestion): Lay => quickLay(question) as Lay;

describe("a lay of a larger question", () => {
  const larger = skirt(42);
  const lay = layOf(larger);
  const [first, second] = larger.pieces;

  it.each<[string, LayQuestion]>([
    ["the same question", larger],
    ["fewer copies", { ...larger, pieces: [first!, { ...second!, quantity: 4 }] }],
    ["a piece less", { ...larger, pieces: [second!] }],
    ["the pieces in another order", { ...larger, pieces: [{ ...second!, quantity: 12 }] }],
    ["shorter gores", skirt(39.5)],
    ["wider cloth", { ...larger, cloths: [{ name: "broad", width: 60, length: null }] }],
    ["cloth in hand that is long enough", { ...larger, cloths: [{ name: "c", width: 59, length: lay.lengths[0]! }] }],
    ["more turns", { ...larger, pieces: larger.pieces.map((one) => ({ ...one, turns: [0, 90, 180, 270] })) }],
  ])("is one of %s", (_, question) => {
    const contained = containedLay(question, larger, lay)!;
    expect(contained.lengths[0]).toBeLessThanOrEqual(lay.lengths[0]! + 1e-9);
    expect(contained.missing).toEqual([]);
    expect(checkLay(question, contained, 1e-5)).toEqual([]);
  }); // biome-ignore format: a table

  it.each<[string, LayQuestion]>([
    ["more copies", { ...larger, pieces: [first!, { ...second!, quantity: 7 }] }],
    ["longer gores", skirt(42.5)],
    ["narrower cloth", { ...larger, cloths: [{ name: "c", width: 58, length: null }] }],
    ["cloth in hand that is too short", { ...larger, cloths: [{ name: "c", width: 59, length: lay.lengths[0]! - 1 }] }],
    ["one-way cloth", { ...larger, pieces: larger.pieces.map((one) => ({ ...one, turns: [0] })) }],
    ["a gap", { ...larger, gap: 0.25 }],
    ["a repeat", { ...larger, repeat: 5, pieces: larger.pieces.map((one) => ({ ...one, match: one.outline[0]! })) }],
    ["pins", { ...larger, pinned: [{ piece: 0, copy: 0, cloth: 0, turn: 0, x: 0, y: 0 }] }],
    ["another cloth beside it", { ...larger, cloths: [...larger.cloths, { name: "c", width: 59, length: 50 }] }],
  ])("is none of %s", (_, question) => {
    expect(containedLay(question, larger, lay)).toBeNull();
  }); // biome-ignore format: a table

  it("keeps how it was found, but not that it can't be shorter", () => {
    const proved = { ...lay, origin: { by: "search", seconds: 9, proved: true } } as const;
    const contained = containedLay(skirt(39.5), larger, proved)!;
    expect(contained.origin).toEqual({ by: "search", seconds: 9 });
  });
});

describe("a smaller job", () => {
  it("never needs more cloth than a larger one, whichever is asked first", async () => {
    const lengths = [33.5, 39.5, 42, 42.5, 43];
    for (const order of [lengths, lengths.toReversed()]) {
      const desk = await newDesk();
      for (const length of order) desk(skirt(length));
      const takes = lengths.map((length) => desk(skirt(length)).lengths[0]!);
      expect(takes).toEqual(takes.toSorted((a, b) => a - b));
    }
  });

  it("is answered with a lay kept for the larger one, and says how that was found", async () => {
    const desk = await newDesk();
    const larger = skirt(42);
    const search = new Search(larger, { seed: 1, rounds: 300 });
    search.run({ rounds: 300 });
    const best = search.best!;
    expect(best.lengths[0]).toBeLessThan(0.995 * desk(larger).lengths[0]!);
    const kept = toKeep({ ...best, origin: { by: "search", seconds: 10 } });
    const found = { lengths: [expect.closeTo(best.lengths[0]!, 9)], origin: { by: "search", seconds: 10 } };
    expect(desk(larger, { [questionHash(larger)]: kept })).toMatchObject(found);
    expect(desk(skirt(41.9))).toMatchObject({ ...found, lengths: [expect.any(Number)] });
    expect(desk(skirt(41.9)).lengths[0]).toBeLessThanOrEqual(best.lengths[0]!);
  });

  it("is bounded by a lay that the book keeps of a larger job which no cell asks any more", async () => {
    // Figures that the kept question rounds.
    const larger = skirt(42 + 1 / 3e5);
    const search = new Search(larger, { seed: 1, rounds: 300 });
    search.run({ rounds: 300 });
    const best: Lay = { ...search.best!, origin: { by: "search", seconds: 10 } };
    const blank = blankBook("Withy Green", "in", "1/8");
    const book = (kept: Book["lays"][string]) =>
      (readBook(writeBook({ ...blank, lays: { [questionHash(larger)]: kept } })) as { book: Book }).book;
    const smaller = { ...larger, cloths: [{ name: "broad", width: 59.01, length: null }] };
    const quick = layOf(smaller).lengths[0]!;
    expect(best.lengths[0]).toBeLessThan(0.995 * quick);
    const kept = keepChecked(larger, best);
    const bounded = (await newDesk())(smaller, book(kept).lays);
    expect(bounded.lengths[0]).toBeLessThanOrEqual(best.lengths[0]! + 1e-9);
    expect(bounded.origin).toEqual({ by: "search", seconds: 10 });
    expect(checkLay(smaller, bounded, 1e-5)).toEqual([]);
    // Neither a question nor places that were changed in the file give a lay that is none.
    const changed = { ...kept, question: kept.question!.replace("42", "41") };
    expect((await newDesk())(smaller, book(changed).lays).lengths[0]).toBe(quick);
    const heap = { ...kept, placements: kept.placements.map((one) => ({ ...one, x: 0 })) };
    expect((await newDesk())(smaller, book(heap).lays).lengths[0]).toBe(quick);
    expect((await newDesk())(larger, book(heap).lays).lengths[0]).toBe(layOf(larger).lengths[0]);
    const { question: _, ...old } = kept;
    expect((await newDesk())(smaller, book(old).lays).lengths[0]).toBe(quick);
  });

  it("has no longer lay in a cell that is calculated before the cell of the larger one", async () => {
    const path = (length: number) => `M 5 0 L 0 ${length} L 15 ${length} L 10 0 Z`;
    const lay = (length: number) => `=YARDAGE("${path(length)}";12;59)`;
    const larger = 42;
    const smaller = 41.5;
    const asked = (rows: string[][]) => {
      const blank = blankBook("Withy Green", "in", "1/8");
      const pages = blank.pages.map((page, i) => (i === 0 ? { ...page, rows } : page));
      return { ...blank, pages };
    };
    const desk = await newDesk();
    const [cell] = new Engine(asked([["", lay(larger)]]), desk).laid();
    const { question } = cell!.lays[0]!;
    const search = new Search(question, { seed: 1, rounds: 300 });
    search.run({ rounds: 300 });
    const lays = { [questionHash(question)]: toKeep(search.best!) };
    const book = { ...asked([["", lay(smaller)], ["", lay(larger)]]), lays }; // biome-ignore format: a table
    const engine = new Engine(book, await newDesk());
    const values = [0, 1].map((row) => Number(engine.value({ page: 0, row, column: 1 })));
    expect(values[1]).toBeCloseTo(search.best!.lengths[0]!, 6);
    expect(values[0]).toBeLessThanOrEqual(values[1]! + 1e-9);
    engine.destroy();
  });

  it("is shorter or equal for random lists with a piece less, wider cloth or no gap (seeds 1 to 6)", async () => {
    const desk = await newDesk();
    for (let seed = 1; seed <= 6; seed++) {
      const list = garmentList(seed, 8, 16);
      const [one, ...others] = list.pieces;
      const wider = { ...list, cloths: [{ ...list.cloths[0]!, width: list.cloths[0]!.width + 1 }] };
      const smaller = [
        { ...list, pieces: [...others, { ...one!, quantity: 1 }] },
        wider,
        { ...list, gap: 0 },
      ];
      for (const question of smaller) {
        const before = desk(question).lengths[0]!;
        const largest = desk(list).lengths[0]!;
        const after = desk(question);
        expect(after.lengths[0], `seed ${seed}`).toBeLessThanOrEqual(Math.min(before, largest) + 1e-9);
        expect(checkLay(question, after, 1e-5)).toEqual([]);
      }
    }
  });
});

it("the maker's own arrangement stays, even where a shorter lay is known", async () => {
  const desk = await newDesk();
  const question = skirt(42, { pieces: [{ name: "gore", outline: gore(42), quantity: 1, turns: [0] }] });
  const own = {
    placements: [{ piece: 0, copy: 0, cloth: 0, turn: 0, x: 7, y: 0 }],
    length: 49,
    density: 0.2,
  };
  desk(question);
  const by = (origin: "hand" | "search") =>
    desk(question, {
      [questionHash(question)]: {
        ...own,
        origin: origin === "hand" ? { by: origin } : { by: origin, seconds: 1 },
      },
    }).lengths[0];
  expect(by("hand")).toBe(49);
  expect(by("search")).toBe(42);
});
