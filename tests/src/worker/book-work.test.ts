import { expect, test } from "vitest";
import { type } from "../../../src/book/edit.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { type BookOrder, bookWork } from "../../../src/worker/book-work.ts";
import { type BookWorker, doBookWork } from "../../../src/worker/book-work-client.ts";

const at = (row: number) => ({ page: 0, row, column: 1 });
const before = type(blankBook("The cook's apron", "in", "1/8"), [
  { ...at(0), typed: "5" },
  { ...at(1), typed: "=B1*2" },
]);
const after = type(before, [{ ...at(0), typed: "6" }]);

test("two books are compared, and a book is written as either spreadsheet", async () => {
  const found = await bookWork({ is: "compare", before, after });
  expect(found).toMatchObject({
    changes: [{ where: "Measure!B1", before: "5", after: "6" }],
    answers: [{ where: "Measure!B2", before: "10", after: "12" }],
  });
  for (const ending of ["xlsx", "ods"] as const) {
    const written = await bookWork({ is: "spreadsheet", book: before, ending });
    expect(written).toMatchObject({ alive: 1, fixed: 0 });
    // Both are ZIP archives, which begin with these letters.
    expect("bytes" in written && new TextDecoder().decode(written.bytes.subarray(0, 2))).toBe("PK");
  }
});

/** A worker that does nothing by itself, and what was asked of it. */
function stillWorker() {
  const orders: (BookOrder | "terminated")[] = [];
  const worker: BookWorker = {
    postMessage: ({ order }) => orders.push(order),
    terminate: () => orders.push("terminated"),
    onmessage: null,
    onerror: null,
  };
  return { orders, worker };
}

test("the worker ends with the answer, with a stop, and with a fault, which is a sentence", async () => {
  const order = { is: "compare", before, after } as const;
  const answer = { changes: [], answers: [] };
  const answered = stillWorker();
  const work = doBookWork(order, new AbortController().signal, () => answered.worker);
  answered.worker.onmessage!({ data: { answer } });
  expect(await work).toBe(answer);
  expect(answered.orders).toEqual([order, "terminated"]);

  const stopped = stillWorker();
  const stopping = new AbortController();
  const never = doBookWork(order, stopping.signal, () => stopped.worker);
  stopping.abort();
  expect(await never).toBeNull();
  expect(stopped.orders).toEqual([order, "terminated"]);

  const failed = stillWorker();
  const failing = doBookWork(order, new AbortController().signal, () => failed.worker);
  failed.worker.onmessage!({ data: { failed: "out of memory" } });
  await expect(failing).rejects.toThrow("out of memory");
  const lost = stillWorker();
  const losing = doBookWork(order, new AbortController().signal, () => lost.worker);
  lost.worker.onerror!({});
  await expect(losing).rejects.toThrow("a part of the page's program could not be loaded");
  expect([failed.orders.at(-1), lost.orders.at(-1)]).toEqual(["terminated", "terminated"]);
});
