import { describe, expect, it } from "vitest";
import { Engine } from "../../../src/engine/engine.ts";
import { chain } from "../../../src/engine/explain.ts";
import {
  concerned,
  hashOf,
  isUnsure,
  laidSign,
  laidText,
  leastSearched,
  uncertaintyOf,
} from "../../../src/engine/laid.ts";
import { laysBelow, laysBelowText, originBelow } from "../../../src/engine/lays-below.ts";
import { finish } from "../../../src/engine/sweep.ts";
import { comparing } from "../../../src/engine/trials.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { typeCells } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";
import { cell } from "./ask.ts";
import { bookOf, laidPeplum } from "./whatif-books.ts";

const QUICK = { by: "quick" } as const;
const searched = (seconds: number, proved = false) => ({ by: "search", seconds, proved }) as const;

describe("a laid length", () => {
  it("says in a sign and in words how its lay was found", () => {
    const all = [QUICK, searched(12), searched(12, true), { by: "hand" } as const];
    expect(all.map(laidSign)).toEqual(["≈", "≤", "✓", "✎"]);
    expect(all.map(laidText)).toEqual([
      "quick lay, a search may find a shorter one",
      "lay searched for 12 s",
      "lay proved: no lay can be shorter",
      "laid by hand",
    ]);
  });

  it("is the less uncertain the longer it was searched for, and certain once it is proved", () => {
    const shares = [QUICK, searched(0.2), searched(2), searched(20), searched(60), searched(1, true)];
    expect(shares.map(uncertaintyOf)).toEqual([0.11, 0.11, 0.03, 0.01, 0.01, 0]);
    expect(isUnsure(100, 105, [QUICK, QUICK])).toBe(true);
    expect(isUnsure(100, 105, [searched(20), searched(20)])).toBe(false);
    expect(isUnsure(100, 100, [QUICK, QUICK])).toBe(false);
    expect(isUnsure(100, 105, [null, null])).toBe(false);
  });

  it("is as good as its least searched lay, but for pieces that all lie on cloth in stock, where a search gains nothing", () => {
    const laid = (length: number | null, missing: readonly (readonly [number, number])[], origin: typeof QUICK | ReturnType<typeof searched>) => ({
      question: { pieces: [], cloths: [{ name: "cloth", width: 45, length }], gap: 0, repeat: 0 },
      answer: { placements: [], lengths: [30], density: 1, missing, origin },
    });
    const stock = laid(40, [], QUICK);
    expect(leastSearched([stock, laid(null, [], searched(20))])).toEqual(searched(20));
    expect(leastSearched([laid(40, [[0, 1]], QUICK), laid(null, [], searched(20))])).toEqual(QUICK);
    expect(leastSearched([stock])).toEqual(QUICK);
  }); // biome-ignore format: a row for each lay

  it("is told of in the cells that rest on it, and in no others", () => {
    const book = bookOf({
      panel: "M 0 0 L 27 0 L 27 40 L 0 40 Z",
      cloth: "=YARDAGE(panel;3;54)",
      price: "=cloth/36*12",
      other: "=2+3",
    });
    const engine = new Engine(book, layDesk);
    const at = (name: string) => cell(book, name);
    expect(engine.view(at("cloth")).origin).not.toBeNull();
    expect(engine.view(at("price")).origin).toBeNull();
    expect(laysBelow(engine, at("price")).map(({ place }) => place)).toEqual([at("cloth")]);
    expect(laysBelowText(engine, at("price"))).toMatch(/^rests on cloth \(Draft!B2\): /);
    expect(laysBelowText(engine, at("other"))).toBe("");
    expect(laysBelow(engine, at("cloth"))).toEqual([]);
    // The Working works the formula once more; no other cell is marked by that.
    chain(engine, at("price"));
    expect(engine.laid().map(({ place }) => place)).toEqual([at("cloth")]);
    engine.destroy();
  });

  it("marks a cell only while the answer of the cell uses it", () => {
    const cells = {
      panel: "M 0 0 L 27 0 L 27 40 L 0 40 Z",
      have: "0",
      cloth: "=YARDAGE(panel;3;54)",
      own: "=IF(have=0;YARDAGE(panel;3;54);7)",
      switched: "=SWITCH(have;0;YARDAGE(panel;3;54);1;7;9)",
      below: "=IF(have=0;cloth;7)",
      chosen: "=CHOOSE(have+1;cloth;7)+2",
      fallen: "=IFERROR(have/have;cloth)",
    };
    const book = bookOf(cells);
    const store = new Store(book, layDesk);
    const { engine } = store;
    const at = (name: string) => cell(book, name);
    const marked = () =>
      ["own", "switched", "below", "chosen", "fallen"].filter(
        (name) => originBelow(engine, at(name)) !== null,
      );
    const have = (typed: string) => store.run(typeCells([{ ...at("have"), typed }]));
    expect(marked()).toEqual(["own", "switched", "below", "chosen", "fallen"]);
    have("1");
    expect(engine.view(at("own"))).toMatchObject({ value: 7, origin: null });
    expect(engine.view(at("below")).value).toBe(7);
    expect(marked()).toEqual([]);
    have("0");
    expect(marked()).toHaveLength(5);
    // The value stays the same, the branch does not.
    const length = String(engine.value(at("own")));
    store.run(typeCells([{ ...at("own"), typed: `=IF(have=0;YARDAGE(panel;3;54);${length})` }]));
    have("1");
    expect(engine.view(at("own"))).toMatchObject({ value: Number(length), origin: null });
    engine.destroy();
  });

  it("of trials says with each answer how its lay was found", () => {
    const book = { ...laidPeplum(), trials: [{ title: "deeper", cells: { "Draft!B3": "10 in" } }] };
    const { outputs } = finish(comparing(book, layDesk));
    const cloth = outputs.find(({ label }) => label === "cloth")!;
    expect(cloth.origins).toHaveLength(2);
    expect(cloth.origins.every((origin) => origin !== null)).toBe(true);
    expect(outputs.find(({ label }) => label === "hem_edge")!.origins).toEqual([null, null]);
  });

  it("of very many cells only those are worked anew that asked the very question of a new lay", () => {
    const asks = (width: number) => ({
      question: {
        pieces: [],
        cloths: [{ name: "cloth", width, length: null }],
        gap: 0,
        repeat: 0,
      },
      answer: { refusal: "nothing to lay" },
    });
    const cells = (count: number) => Array.from({ length: count }, (_, i) => ({ i, lays: [asks(i + 10)] }));
    const lay = { placements: [], length: 1, density: 1 };
    const next = { [hashOf(asks(12).question)]: lay };
    expect(concerned(cells(40), {}, next)).toHaveLength(40);
    expect(concerned(cells(400), {}, next).map(({ i }) => i)).toEqual([2]);
    expect(concerned(cells(400), next, {}).map(({ i }) => i)).toEqual([2]);
    expect(concerned(cells(400), next, { ...next })).toEqual([]);
  });
});
