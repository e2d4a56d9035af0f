import { expect, it } from "vitest";
import type { LayQuestion } from "../../../../functions/lay.ts";
import { QuickLays } from "../../../../src/app/lay/quick-lays.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { layDesk, pageDesk } from "../../../../src/lay/desk.ts";
import { setSliding } from "../../../../src/lay/large-questions.ts";
import type { Answer } from "../../../../src/lay/memory.ts";
import { quickLay } from "../../../../src/lay/plan.ts";
import { typeCells } from "../../../../src/store/commands.ts";
import { Store } from "../../../../src/store/store.ts";

/** A gusset cut often, laid on two widths of cloth, and the two lengths together. */
function book(long: string, many = "24") {
  const blank = blankBook("Withy Green", "in", "1/8");
  const columns = blank.pages[0]!.columns.map((column) => ({ ...column, kind: "any" as const }));
  const rows = [
    [`M 0 0 L ${long} 3 L 10 12 L 2 9 Z`, many, "=YARDAGE(A1;B1;54)", "=YARDAGE(A1;B1;36)", "=C1+D1"],
  ];
  return { ...blank, pages: blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page)) };
}

const at = (column: number) => ({ page: 0, row: 0, column });

function opened(from = book("14")) {
  const asked: { question: LayQuestion; told: (answer: Answer) => void }[] = [];
  const store = new Store(from, pageDesk);
  const layer = {
    ask: (question: LayQuestion, told: (answer: Answer) => void) => asked.push({ question, told }),
    stop: () => {},
  };
  let time = 0;
  const atOnce = (act: () => void) => {
    act();
    return () => {};
  };
  const quick = new QuickLays(store, layer, () => time, atOnce);
  let painted = 0;
  store.subscribe(() => {
    painted += 1;
  });
  const end = quick.watch();
  /** What the worker would do with what it was asked last. */
  const answer = () => {
    const { question, told } = asked.at(-1)!;
    told(quickLay(question));
  };
  const shown = (column: number) => store.engine.view(at(column)).shown;
  const wait = (milliseconds: number) => {
    time += milliseconds;
  };
  return { store, quick, asked, answer, shown, end, wait, painted: () => painted };
}

it("a lay that would hold up a frame is marked as being worked out, and is then the very lay of the command line", () => {
  const { store, asked, answer, shown, painted } = opened();
  expect(shown(2)).toMatch(/^≥ /);
  expect(shown(4)).toBe("…");
  expect(store.engine.view(at(2)).problem).toMatchObject({ is: "pending" });
  expect(asked).toHaveLength(1);
  answer();
  expect(shown(2)).toMatch(/^≥ /);
  answer();
  // Both lays come into the book together, and the book that is kept has no lay of them.
  expect(painted()).toBe(1);
  expect(asked).toHaveLength(2);
  const there = new Engine(store.book, layDesk);
  for (const column of [2, 3, 4]) expect(shown(column)).toBe(there.view(at(column)).shown);
  expect(store.book.lays).toEqual({});
});

it("what is not asked any more is not waited for, and what was laid once is there at once", () => {
  const { store, asked, answer, shown } = opened(book("15"));
  store.run(typeCells([{ ...at(1), typed: "23" }]));
  expect(asked).toHaveLength(1);
  expect(asked[0]!.question.pieces[0]!.quantity).toBe(24);
  answer();
  expect(asked.slice(1).map(({ question }) => question.pieces[0]!.quantity)).toEqual([23]);
  answer();
  answer();
  expect(shown(4)).not.toBe("…");
  const there = shown(4);
  store.run(typeCells([{ ...at(1), typed: "3" }]));
  expect(shown(2)).not.toMatch(/^≥ /);
  store.run(typeCells([{ ...at(1), typed: "23" }]));
  expect(shown(4)).toBe(there);
  expect(asked).toHaveLength(3);
});

it("while a figure slides only the smallest lays are made on the page", () => {
  const { store, asked, answer, shown, painted: paints } = opened(book("16", "5"));
  expect(asked).toEqual([]);
  const before = shown(2);
  const slid = book("16.5", "5");
  setSliding(true);
  store.try(slid);
  expect(shown(2)).toMatch(/^≥ /);
  expect(asked).toHaveLength(1);
  // The answer to what was slid away from is no reason to paint.
  const painted = paints();
  store.try(book("16.6", "5"));
  answer();
  expect(paints()).toBe(painted + 1);
  store.try(null);
  expect(shown(2)).toBe(before);
  store.run(typeCells([{ ...at(0), typed: "M 0 0 L 16.7 3 L 10 12 L 2 9 Z" }]));
  expect(shown(2)).not.toMatch(/^≥ /);
});

it("answers are not held back for long by others that are still to come", () => {
  const { store, asked, answer, shown, wait } = opened(book("17"));
  store.run(typeCells([{ ...at(5), typed: "=YARDAGE(A1;B1;60)" }]));
  answer();
  wait(1000);
  answer();
  for (const column of [2, 3]) expect(shown(column)).not.toMatch(/^≥ /);
  expect(shown(5)).toMatch(/^≥ /);
  expect(asked).toHaveLength(3);
});

it("the same job on a nap, set beside a lay, is laid without taking the place of the lay", () => {
  const { store, quick, asked, answer, painted } = opened(book("19"));
  answer();
  answer();
  const before = painted();
  const { question } = store.engine.laid()[0]!.lays[0]!;
  const oneWay = { ...question, pieces: question.pieces.map((piece) => ({ ...piece, turns: [0] })) };
  quick.lookBeside(oneWay);
  expect(asked.at(-1)!.question).toBe(oneWay);
  answer();
  // The Drawing is painted with it.
  expect(painted()).toBe(before + 1);
  const plan = store.engine.setting.plan!;
  for (const one of [question, oneWay]) expect(plan(one)).toMatchObject({ missing: [] });
  expect(asked).toHaveLength(3);
});

it("sharing out pieces between the stock and cloth to buy is left to the worker, and no bound is shown for it meanwhile", () => {
  const few = book("14", "7");
  const rows = [
    ["M 0 0 L 14 3 L 10 12 L 2 9 Z", "7", '=CLOTH_TO_BUY(A1;B1;D1:F2;"linen";20)', "Cloth", "Usable width", "Length"],
    ["", "", "=C1+1", "linen", "20", "15"],
  ];
  const { store, asked, answer, shown } = opened({ ...few, pages: few.pages.map((page, i) => (i === 0 ? { ...page, rows } : page)) });
  for (const [kind, says] of [
    ["cloths", "the lay of 7 pieces is being worked out"],
    ["sharing", "how to share out 7 pieces between the stock and cloth to buy is being worked out"],
  ] as const) {
    expect(asked.at(-1)!.question).toHaveProperty(kind);
    expect(store.engine.view(at(2))).toMatchObject({ shown: "…", problem: { is: "pending", sentence: says } });
    answer();
  }
  expect(asked).toHaveLength(2);
  const there = new Engine(store.book, layDesk).view(at(2));
  expect(Number(there.value)).toBeGreaterThan(0);
  expect(shown(2)).toBe(there.shown);
}); // biome-ignore format: rows
