import { expect, test } from "vitest";
import { type HeardNews, PrintClient, type PrintWorker } from "../../../../src/app/print/client.ts";
import type { PrintOrder } from "../../../../src/app/print/protocol.ts";
import { blankBook } from "../../../../src/book/shape.ts";

class StandIn implements PrintWorker {
  readonly orders: PrintOrder[] = [];
  isEnded = false;
  onmessage: PrintWorker["onmessage"] = null;
  onerror: PrintWorker["onerror"] = null;
  postMessage(order: PrintOrder): void {
    this.orders.push(order);
  }
  terminate(): void {
    this.isEnded = true;
  }
}

const day = new Date(2026, 4, 20);
const request = { what: "pattern", paper: "a4", day } as const;

function begun() {
  const workers: StandIn[] = [];
  const heard: HeardNews[] = [];
  const make = () => {
    workers.push(new StandIn());
    return workers.at(-1)!;
  };
  const place = { page: 0, row: 0, column: 0 };
  const book = blankBook("Withy Green", "in", "1/8");
  const client = new PrintClient(book, place, (news) => heard.push(news), make);
  return { client, workers, heard };
}

test("a newer request gives up what is being made for the older one, and only that", () => {
  const { client, workers, heard } = begun();
  client.request(request);
  client.request({ ...request, paper: "a3" });
  expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, false]);
  expect(workers[0]!.onmessage).toBeNull();
  workers[1]!.onmessage!({ data: { refusal: "the book has no pattern pieces" } });
  expect(heard).toEqual([{ refusal: "the book has no pattern pieces" }]);
  // The same worker goes on with the book that it has.
  client.request({ ...request, paper: "letter" });
  expect(workers).toHaveLength(2);
  expect(workers[1]!.orders.map((order) => Object.keys(order)[0])).toEqual(["book", "make", "make"]);
});

test("what is given up is never heard of, and a worker that is not busy keeps its book", () => {
  const { client, workers, heard } = begun();
  client.request(request);
  client.giveUp();
  expect(workers[0]).toMatchObject({ isEnded: true, onmessage: null });
  client.request(request);
  workers[1]!.onmessage!({ data: { refusal: "none" } });
  client.giveUp();
  client.request(request);
  expect(workers).toHaveLength(2);
  expect(heard).toHaveLength(1);
});

test("a worker that fails says so in one sentence, and the next request begins another", () => {
  const { client, workers, heard } = begun();
  client.request(request);
  workers[0]!.onerror!({ message: "out of memory." });
  expect(heard).toEqual([
    { refusal: "the document could not be made, and the book is as it was: out of memory", ended: true },
  ]);
  client.request(request);
  workers[1]!.onmessage!({ data: { fault: "the type could not be loaded" } });
  expect(heard.at(-1)).toMatchObject({ refusal: expect.stringContaining("the type could not be loaded") });
  expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, true]);
  client.request(request);
  expect(workers).toHaveLength(3);
});

test("no sheet is asked for while another document is being made", () => {
  const { client, workers } = begun();
  client.request(request);
  client.show(0);
  expect(workers[0]!.orders).toHaveLength(2);
  workers[0]!.onmessage!({ data: { refusal: "" } });
  client.show(0);
  expect(workers[0]!.orders.at(-1)).toEqual({ show: 0 });
});
