import { afterEach, describe, expect, it, vi } from "vitest";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { answerFrom } from "../../../src/lay/answer.ts";
import { LaySearcher, type LayWorker, type Listener, workersFor } from "../../../src/worker/client.ts";
import type { SearchNews, SearchTask, WorkerOrder } from "../../../src/worker/protocol.ts";

const question: LayQuestion = {
  pieces: [
    {
      name: "collar",
      outline: [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      quantity: 1,
      turns: [0],
    },
  ],
  cloths: [{ name: "cloth", width: 30, length: null }],
  gap: 0,
  repeat: 0,
};

/** The collar lying so far along the cloth. */
const at = (x: number): Lay => answerFrom(question, [{ piece: 0, copy: 0, cloth: 0, turn: 0, x, y: 0 }]);

/** A worker that does as it is told by the test. */
class Puppet implements LayWorker {
  onmessage: LayWorker["onmessage"] = null;
  onerror: LayWorker["onerror"] = null;
  onmessageerror: LayWorker["onmessageerror"] = null;
  task: SearchTask | null = null;
  ended = false;
  rests: boolean | null = null;
  postMessage(order: WorkerOrder) {
    if ("rest" in order) this.rests = order.rest;
    else this.task = order;
  }
  terminate() {
    this.ended = true;
  }
  tells(data: SearchNews) {
    this.onmessage?.({ data });
  }
}

function begin(count = 2) {
  const workers: Puppet[] = [];
  const searcher = new LaySearcher(count, () => {
    const worker = new Puppet();
    workers.push(worker);
    return worker;
  });
  const heard: string[] = [];
  const lays: number[] = [];
  const listener: Listener = {
    better: (lay) => void lays.push(lay.lengths[0]!),
    progress: (share) => void heard.push(`progress ${share}`),
    trouble: (sentence) => void heard.push(sentence),
    ended: (how) => void heard.push(`ended: ${how}`),
  };
  const wish = { question, start: at(50), milliseconds: 5000, seed: 10 };
  searcher.search(wish, listener);
  return { searcher, workers, heard, lays, listener, wish };
}

afterEach(() => void vi.useRealTimers());

describe("a search by several workers", () => {
  it("leaves one core to the page", () => {
    expect([1, 2, 8, undefined].map(workersFor)).toEqual([1, 1, 7, 1]);
  });

  it("gives each worker a seed of its own and passes on only what is better than all before", () => {
    const { workers, lays } = begin(3);
    expect(workers.map(({ task }) => task!.seed)).toEqual([10, 11, 12]);
    workers[0]!.tells({ better: at(40) });
    workers[1]!.tells({ better: at(45) });
    workers[2]!.tells({ better: at(30) });
    expect(lays).toEqual([50, 40]);
  });

  it("is as far as its slowest worker, and over when the last one is done", () => {
    const { workers, heard, searcher } = begin();
    workers[0]!.tells({ progress: 0.5 });
    workers[1]!.tells({ progress: 0.4 });
    workers[0]!.tells({ done: "time" });
    expect(searcher.isSearching).toBe(true);
    workers[1]!.tells({ done: "time" });
    expect(heard).toEqual(["progress 0", "progress 0.4", "ended: time"]);
    expect(workers.every(({ ended }) => ended)).toBe(true);
  });

  it("is over as soon as one worker knows that no lay can be better", () => {
    const { workers, heard } = begin();
    workers[1]!.tells({ done: "best" });
    expect(heard).toEqual(["ended: best"]);
    expect(workers[0]!.ended).toBe(true);
  });

  it("stops when told to, and hears nothing after", () => {
    const { workers, heard, lays, searcher } = begin();
    const late = workers[0]!.onmessage!;
    searcher.stop();
    late({ data: { better: at(1) } });
    expect(heard).toEqual(["ended: stopped"]);
    expect(lays).toEqual([]);
    expect(workers.every(({ ended }) => ended)).toBe(true);
  });

  it("gives way to a newer question", () => {
    const { workers, heard, searcher, listener, wish } = begin();
    searcher.search({ ...wish, seed: 90 }, listener);
    expect(heard).toEqual(["ended: stopped"]);
    expect(workers.map(({ ended }) => ended)).toEqual([true, true, false, false]);
    expect(searcher.isSearching).toBe(true);
  });
});

describe("a search that rests", () => {
  it("is not taken for dead, tells nothing lost, and goes on", () => {
    vi.useFakeTimers();
    const { workers, heard, lays, searcher } = begin();
    searcher.rest(true);
    expect(workers.map(({ rests }) => rests)).toEqual([true, true]);
    // What a worker told before it heard of the rest still counts.
    workers[0]!.tells({ better: at(40) });
    vi.advanceTimersByTime(120_000);
    expect(heard).toEqual([]);
    searcher.rest(false);
    expect(workers.map(({ rests }) => rests)).toEqual([false, false]);
    expect(lays).toEqual([50]);
    vi.advanceTimersByTime(31_000);
    expect(heard.at(-1)).toBe("ended: failed");
  });

  it("the quick lay alone is made by one worker, and is told though nothing was there before", () => {
    const { workers, lays, searcher, listener } = begin();
    searcher.search({ question, milliseconds: 0, seed: 1 }, listener);
    expect(workers).toHaveLength(3);
    workers[2]!.tells({ better: at(60) });
    expect(lays).toEqual([70]);
  });
});

describe("workers that fail", () => {
  it("one of two dies: a sentence, and the other searches on", () => {
    const { workers, heard, lays } = begin();
    workers[0]!.onerror!({ message: "out of memory" });
    expect(heard).toEqual(["a search worker stopped: out of memory; the others search on"]);
    workers[1]!.tells({ better: at(20) });
    expect(lays).toEqual([30]);
  });

  it("all die: a sentence each, and the last good lay stands", () => {
    const { workers, heard, lays, searcher } = begin();
    workers[0]!.tells({ better: at(20) });
    workers[0]!.onmessageerror!();
    workers[1]!.onerror!({});
    expect(heard).toEqual([
      "a search worker stopped: its message could not be read; the others search on",
      "a search worker stopped: it gave no reason; the best lay so far is kept",
      "ended: failed",
    ]);
    expect(lays).toEqual([30]);
    expect(searcher.isSearching).toBe(false);
  });

  it("one that tells nothing for half a minute is taken for dead", () => {
    vi.useFakeTimers();
    const { workers, heard } = begin(1);
    vi.advanceTimersByTime(20_000);
    workers[0]!.tells({ progress: 0.1 });
    vi.advanceTimersByTime(29_000);
    expect(heard).toEqual(["progress 0.1"]);
    vi.advanceTimersByTime(2_000);
    expect(heard.slice(1)).toEqual([
      "a search worker stopped: it fell silent; the best lay so far is kept",
      "ended: failed",
    ]);
    expect(workers[0]!.ended).toBe(true);
  });

  it("a browser that starts no workers says so", () => {
    const heard: string[] = [];
    const searcher = new LaySearcher(1, () => {
      throw new Error("not allowed here");
    });
    searcher.search(
      { question, start: at(5), milliseconds: 100, seed: 1 },
      {
        better: () => {},
        progress: () => {},
        trouble: (sentence) => void heard.push(sentence),
        ended: (how) => void heard.push(how),
      },
    );
    expect(heard).toEqual([
      "a search worker stopped: it could not be started (not allowed here); the best lay so far is kept",
      "failed",
    ]);
  });

  it("a question that can not be laid ends the search with its reason", () => {
    const { workers, heard } = begin();
    workers[0]!.tells({ refusal: "the width of cloth must be more than 0, not 0" });
    expect(heard).toEqual(["the width of cloth must be more than 0, not 0", "ended: failed"]);
  });
});
