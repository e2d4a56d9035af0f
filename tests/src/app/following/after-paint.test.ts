import { describe, expect, it } from "vitest";
import { AfterPaint, type Clock } from "../../../../src/app/following/after-paint.ts";

/** A clock that stands still: what waits is called back when the test says so. */
function still() {
  type Waiting = { readonly for: "paint" | number; readonly then: () => void };
  let waiting: Waiting[] = [];
  const wait = (one: Waiting) => {
    waiting.push(one);
    return () => {
      waiting = waiting.filter((other) => other !== one);
    };
  };
  let now = 0;
  let patience = 0;
  const clock: Clock = {
    now: () => now,
    painted: (then, most) => {
      patience = most;
      return wait({ for: "paint", then });
    },
    later: (then, milliseconds) => wait({ for: milliseconds, then }),
  };
  const tick = (what: "paint" | number) => {
    const due = waiting.filter((one) => one.for === what);
    waiting = waiting.filter((one) => one.for !== what);
    for (const { then } of due) then();
  };
  const pass = (milliseconds: number) => {
    now += milliseconds;
  };
  return { clock, tick, pass, count: () => waiting.length, patience: () => patience };
}

describe("what follows the paint", () => {
  it("waits for the paint, and one part for the other", () => {
    const { clock, tick } = still();
    const order = new AfterPaint(clock);
    const done: string[] = [];
    const [drawing, problems] = [{}, {}];
    order.ask(drawing, () => done.push("drawing"));
    order.ask(problems, () => done.push("problems"));
    expect(done).toEqual([]);
    tick("paint");
    expect(done).toEqual(["drawing"]);
    tick(0);
    expect(done).toEqual(["drawing"]);
    order.done(drawing);
    tick(0);
    expect(done).toEqual(["drawing", "problems"]);
  });

  it("begins again with the paint when a part asks anew, and shows the newest only", () => {
    const { clock, tick } = still();
    const order = new AfterPaint(clock);
    const done: string[] = [];
    const [drawing, problems] = [{}, {}];
    order.ask(drawing, () => done.push("drawing 1"));
    order.ask(problems, () => done.push("problems 1"));
    tick("paint");
    order.ask(drawing, () => done.push("drawing 2"));
    order.ask(problems, () => done.push("problems 2"));
    order.done(drawing);
    tick(0);
    expect(done).toEqual(["drawing 1"]);
    order.ask(drawing, () => done.push("drawing 3"));
    tick("paint");
    order.done(problems);
    tick(0);
    expect(done).toEqual(["drawing 1", "problems 2", "drawing 3"]);
  });

  it("waits for a frame with time left no longer when one change follows the other", () => {
    const { clock, tick, pass, patience } = still();
    const order = new AfterPaint(clock);
    const done: number[] = [];
    const drawing = {};
    const slide = (turn: number) => {
      order.ask(drawing, () => {
        done.push(turn);
        order.done(drawing);
      });
      pass(100);
    };
    slide(1);
    const first = patience();
    expect(first).toBeGreaterThan(100);
    let turn = 1;
    while (patience() > 0 && turn < 9) {
      turn += 1;
      slide(turn);
    }
    expect(patience()).toBe(0);
    expect(done).toEqual([]);
    tick("paint");
    expect(done).toEqual([turn]);
    slide(turn + 1);
    expect(patience()).toBe(first);
  });

  it("goes on after a part that fails to answer, and leaves nothing waiting", () => {
    const { clock, tick, count } = still();
    const order = new AfterPaint(clock);
    const done: string[] = [];
    const [drawing, problems] = [{}, {}];
    order.ask(drawing, () => done.push("drawing"));
    order.ask(problems, () => done.push("problems"));
    tick("paint");
    tick(1000);
    tick(0);
    expect(done).toEqual(["drawing", "problems"]);
    order.done(problems);
    expect(count()).toBe(0);
  });
});
