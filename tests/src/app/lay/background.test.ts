import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { questionHash } from "../../../../functions/cutting/lay-question.ts";
import { Background } from "../../../../src/app/lay/background.ts";
import { sessionOf } from "../../../../src/app/lay/search-session.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { keepChecked, layDesk } from "../../../../src/lay/desk.ts";
import { Search } from "../../../../src/lay/search.ts";
import { typeCells } from "../../../../src/store/commands.ts";
import { Store } from "../../../../src/store/store.ts";
import { LaySearcher, type LayWorker } from "../../../../src/worker/client.ts";
import type { SearchNews, SearchTask, WorkerOrder } from "../../../../src/worker/protocol.ts";

class Puppet implements LayWorker {
  onmessage: LayWorker["onmessage"] = null;
  onerror: LayWorker["onerror"] = null;
  onmessageerror: LayWorker["onmessageerror"] = null;
  task: SearchTask | null = null;
  resting = false;
  ended = false;
  postMessage(order: WorkerOrder) {
    if ("rest" in order) this.resting = order.rest;
    else this.task = order;
  }
  terminate() {
    this.ended = true;
  }
  tells(data: SearchNews) {
    this.onmessage?.({ data });
  }
}

const PENTAGON = "M 0 8 L 9 0 L 18 8 L 15 22 L 3 22 Z";
const PLACE = { page: 0, row: 0, column: 1 };
const visible = new EventTarget() as EventTarget & { visibilityState: string; body: unknown };

function begin() {
  const blank = blankBook("Withy Green", "in", "1/8");
  const columns = blank.pages[0]!.columns.map((column) => ({ ...column, kind: "any" as const }));
  const rows = [
    [PENTAGON, "=YARDAGE(A1;5;46)", "=B1+1"],
    ["40", "=YARDAGE(A1;5;A2)"],
  ];
  const pages = blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page));
  const store = new Store({ ...blank, pages }, layDesk);
  const workers: Puppet[] = [];
  const make = () => {
    workers.push(new Puppet());
    return workers.at(-1)!;
  };
  const background = new Background(store, new LaySearcher(1, make));
  const end = background.watch();
  const width = () => workers.at(-1)!.task!.question.cloths[0]!.width;
  return { store, background, workers, width, end };
}

beforeEach(() => {
  vi.useFakeTimers();
  visible.visibilityState = "visible";
  visible.body = { dataset: {} };
  vi.stubGlobal("document", visible);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("the search that nobody has to ask for", () => {
  it("begins shortly after the last key, with the cell that is looked at, and marks what it finds", () => {
    const { store, background, workers, width } = begin();
    background.lookAt({ page: 0, row: 1, column: 1 });
    vi.advanceTimersByTime(300);
    visible.dispatchEvent(new Event("keydown"));
    vi.advanceTimersByTime(300);
    expect(workers).toEqual([]);
    vi.advanceTimersByTime(200);
    expect(width()).toBe(40);
    expect(store.engine.view(PLACE).origin).toEqual({ by: "quick" });
    workers[0]!.tells({ progress: 1 });
    workers[0]!.tells({ done: "time" });
    vi.advanceTimersByTime(1);
    // No better lay in two seconds: the same figure, and it says that it was searched for.
    expect(store.engine.view({ page: 0, row: 1, column: 1 }).origin).toMatchObject({
      by: "search",
      seconds: 2,
    });
    expect(width()).toBe(46);
  });

  it("rests while the maker types and while the page is hidden, and goes on where it was", () => {
    const { workers, background } = begin();
    vi.advanceTimersByTime(500);
    expect(workers[0]!.resting).toBe(false);
    visible.dispatchEvent(new Event("input"));
    expect(workers[0]!.resting).toBe(true);
    vi.advanceTimersByTime(500);
    expect(workers[0]!.resting).toBe(false);
    visible.visibilityState = "hidden";
    visible.dispatchEvent(new Event("visibilitychange"));
    vi.advanceTimersByTime(60_000);
    expect(workers[0]!.resting).toBe(true);
    expect(background.state().is).toBe("waiting");
    visible.visibilityState = "visible";
    visible.dispatchEvent(new Event("visibilitychange"));
    vi.advanceTimersByTime(500);
    expect(workers).toHaveLength(1);
    expect(workers[0]!.resting).toBe(false);
  });

  it("ends when the question is asked no more, and asks the new one", () => {
    const { store, workers, width } = begin();
    vi.advanceTimersByTime(500);
    expect(width()).toBe(46);
    store.run(typeCells([{ page: 0, row: 0, column: 1, typed: "=YARDAGE(A1;5;50)" }]));
    expect(workers[0]!.resting).toBe(true);
    vi.advanceTimersByTime(500);
    expect(workers[0]!.ended).toBe(true);
    expect(width()).toBe(50);
  });

  it("gives up a search that has gained nothing for ten seconds, and is idle when all are given up or proved", () => {
    const { background, workers } = begin();
    vi.advanceTimersByTime(500);
    const round = (share: number, done?: "time" | "best") => {
      const worker = workers.at(-1)!;
      worker.tells({ progress: share });
      if (done) worker.tells({ done });
      vi.advanceTimersByTime(1);
    };
    round(1, "time");
    round(1, "best");
    expect(workers).toHaveLength(3);
    // Eighteen seconds more are planned; after nine of them it has gained nothing for eleven.
    round(0.4);
    expect(background.state().is).toBe("searching");
    const last = workers.at(-1)!;
    round(0.5);
    expect(last.ended).toBe(true);
    expect(background.state().is).toBe("idle");
  });

  it("does nothing while a search that was asked for goes on", () => {
    const { store, workers } = begin();
    vi.advanceTimersByTime(500);
    vi.spyOn(sessionOf(store), "state").mockReturnValue({ ...sessionOf(store).state(), running: true });
    visible.dispatchEvent(new Event("keydown"));
    vi.advanceTimersByTime(5000);
    expect(workers[0]!.resting).toBe(true);
  });

  it("keeps the lay of a larger job for a smaller one too, so that the value is no longer when the book is opened again", () => {
    const { store, background } = begin();
    const typed = ["M 5 0 L 17 0 L 22 31 L 0 31 Z", "5", PENTAGON, "6", "M 0 0 L 14 3 L 10 12 L 2 9 Z", "7"];
    const cells = typed.map((text, i) => ({ page: 0, row: 4 + (i >> 1), column: i % 2, typed: text }));
    const cloth = (width: number, row: number) => ({
      page: 0,
      row,
      column: 0,
      typed: `=YARDAGE(A5:A7;B5:B7;${width};FALSE)`,
    });
    store.run(typeCells([...cells, cloth(46, 8), cloth(46.125, 9)]));
    const asked = (row: number) =>
      store.engine.laid().find(({ place }) => place.row === row)!.lays[0]!.question;
    const search = new Search(asked(8), { seed: 1, rounds: 800 });
    search.run({ rounds: 800 });
    const found = { ...search.best!, origin: { by: "search", seconds: 3 } as const };
    store.keepLay(questionHash(asked(8)), keepChecked(asked(8), found));
    const value = (one: Store, row: number) => one.engine.value({ page: 0, row, column: 0 }) as number;
    expect(value(store, 9)).toBeCloseTo(found.lengths[0]!, 6);
    const hash = questionHash(asked(9));
    expect(store.book.lays[hash]).toBeUndefined();
    background.lookAt({ page: 0, row: 9, column: 0 });
    vi.advanceTimersByTime(500);
    expect(store.book.lays[hash]?.length).toBeCloseTo(value(store, 9), 6);
  });
});
