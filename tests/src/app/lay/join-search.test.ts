import { expect, it, vi } from "vitest";
import type { JoinQuestion } from "../../../../functions/lay.ts";
import { JoinSearch } from "../../../../src/app/lay/join-search.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { Engine } from "../../../../src/engine/engine.ts";
import { layDesk, pageDesk } from "../../../../src/lay/desk.ts";
import { knownJoins } from "../../../../src/lay/joins.ts";
import { typeCells } from "../../../../src/store/commands.ts";
import { Store } from "../../../../src/store/store.ts";
import { type JoinListener, searchJoinsApart } from "../../../../src/worker/join-client.ts";
import { type JoinNews, workJoins } from "../../../../src/worker/protocol.ts";

const PLACE = { page: 0, row: 0, column: 3 };

/** A cape that is too wide for the cloth in hand, and a cell that asks for a join. */
function book() {
  const blank = blankBook("Withy Green", "in", "1/8");
  const columns = blank.pages[0]!.columns.map((column) => ({ ...column, kind: "any" as const }));
  const rows = [["M 0 0 H 60 V 40 H 0 Z", "54", "90", "=CLOTH_CHECK(A1;1;B1;C1;;;;;;;;;0.5)"]];
  return { ...blank, pages: blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page)) };
}

function opened() {
  const begun: { joins: JoinQuestion; listener: JoinListener; stopped: boolean }[] = [];
  const store = new Store(book(), pageDesk);
  const search = new JoinSearch(store, (joins, listener) => {
    const one = { joins, listener, stopped: false };
    begun.push(one);
    return () => {
      one.stopped = true;
    };
  });
  search.watch();
  const verdict = () => store.engine.view(PLACE).value;
  /** What a worker would do, all at once. */
  const work = ({ joins, listener }: (typeof begun)[number]) => {
    const news: JoinNews[] = [];
    for (const _ of workJoins({ joins }, (one) => news.push(one)));
    for (const one of news) "tried" in one ? listener.tried(one.tried) : listener.ended(one.joined);
    return news.length - 1;
  };
  return { store, search, begun, verdict, work };
}

it("a cell on the page says that joins are being looked for, and then the very verdict of the command line", () => {
  const { store, search, begun, verdict, work } = opened();
  expect(verdict()).toMatch(/^check: .*; whether a join makes it fit is being worked out$/);
  expect(begun).toHaveLength(1);
  const tried = work(begun[0]!);
  const there = new Engine(book(), layDesk);
  expect(verdict()).toMatch(/; with a join it fits: 1 of piece 1 in two, /);
  expect(verdict()).toBe(there.view(PLACE).value);
  // The Drawing asks the same question and has the answer already.
  const known = knownJoins(begun[0]!.joins);
  expect(known).toMatchObject({ tried, pieced: { lay: { missing: [] } } });
  search.ask(begun[0]!.joins);
  expect(begun).toHaveLength(1);
  // Another allowance is another question.
  search.ask({ ...begun[0]!.joins, seam: 0.75 });
  expect(begun).toHaveLength(2);
  expect(store.engine.laid().flatMap(({ joins }) => joins ?? [])).toEqual([]);
  there.destroy();
});

it("a search whose question the book asks no more is given up, and typing begins no lay of a join", () => {
  const { store, search, begun, verdict, work } = opened();
  store.run(typeCells([{ page: 0, row: 0, column: 2, typed: "89" }]));
  store.run(typeCells([{ page: 0, row: 0, column: 2, typed: "88" }]));
  expect(begun.slice(0, -1).every(({ stopped }) => stopped)).toBe(true);
  expect(begun.at(-1)!.joins.question.cloths[0]!.length).toBe(88);
  expect(verdict()).toMatch(/being worked out$/);
  // On wide cloth nothing is missing and nobody waits.
  store.run(typeCells([{ page: 0, row: 0, column: 1, typed: "64" }]));
  expect(begun.at(-1)!.stopped).toBe(true);
  expect(search.state().key).toBe("");
  expect(verdict()).toBe("ok");
  store.undo();
  const before = begun.length;
  work(begun.at(-1)!);
  expect(verdict()).toMatch(/with a join it fits/);
  expect(begun).toHaveLength(before);
});

it("where no worker can be started, the page looks for the joins a lay at a time", () => {
  vi.useFakeTimers();
  const engine = new Engine(
    book(),
    Object.assign(layDesk.bind(null), { joins: () => ({ pending: true }) as const }),
  );
  const [joins] = engine.laid().flatMap((one) => one.joins ?? []);
  const tried = vi.fn();
  const ended = vi.fn();
  const make = () => {
    throw new Error("no workers here");
  };
  searchJoinsApart(joins!, { tried, ended }, make);
  expect(tried).not.toHaveBeenCalled();
  vi.advanceTimersToNextTimer();
  expect(tried).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1000);
  expect(ended).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ tried: tried.mock.calls.length }));
  vi.useRealTimers();
});
