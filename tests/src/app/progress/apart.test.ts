import { expect, test } from "vitest";
import { doneApart } from "../../../../src/app/progress/apart.ts";
import { ongoing } from "../../../../src/app/progress/ongoing.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { nextVersion } from "../../../../src/engine/next-version.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { bookWork } from "../../../../src/worker/book-work.ts";
import type { BookWorker } from "../../../../src/worker/book-work-client.ts";

const BOOK = blankBook("Gown", "in", "1/8");
const ORDER = { is: "next", book: BOOK } as const;

/** Workers that answer only when they are asked to, and how many have ended. */
function workers() {
  const made: BookWorker[] = [];
  const ended: number[] = [];
  const make = () => {
    const at = made.length;
    made.push({ postMessage: () => {}, terminate: () => ended.push(at), onmessage: null, onerror: null });
    return made[at]!;
  };
  return { made, ended, make };
}

test("work whose worker is silent is begun again with another worker, whose answer counts", async () => {
  const { made, ended, make } = workers();
  const answer = doneApart(ORDER, "Working it out", make);
  ongoing.list[0]!.onAgain!();
  await expect.poll(() => made.length).toBe(2);
  expect([ended, ongoing.list.map(({ what }) => what)]).toEqual([[0], ["Working it out"]]);
  made[1]!.onmessage!({ data: { answer: { refusal: "there is no log" } } });
  expect(await answer).toEqual({ refusal: "there is no log" });
  expect([ended, ongoing.list]).toEqual([[0, 1], []]);
});

test("work that is stopped gives nothing, and is not begun again", async () => {
  const { made, ended, make } = workers();
  const answer = doneApart(ORDER, "Working it out", make);
  ongoing.list[0]!.onStop!();
  expect(await answer).toBeNull();
  expect([made.length, ended, ongoing.list]).toEqual([1, [0], []]);
});

test("a worker works out the next version as the page does", async () => {
  expect(await bookWork(ORDER)).toEqual(nextVersion(BOOK, layDesk));
});
