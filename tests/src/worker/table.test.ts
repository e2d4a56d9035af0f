import { expect, test } from "vitest";
import { ReadingClient, type ReadingWorker } from "../../../src/worker/reading-client.ts";
import { type TableAnswer, type TableOrder, TableReading } from "../../../src/worker/table.ts";

const csv = (text: string) => ({
  bytes: new TextEncoder().encode(text),
  name: "cast.csv",
  form: {},
  decimal: "point" as const,
  unit: "cm" as const,
});

test("a file is read once, and understood anew for each form", async () => {
  const reading = new TableReading();
  expect(await reading.answer({ form: {} })).toEqual({ refusal: "no file was read; open it again" });
  const first = await reading.answer(csv("role;waist\nmiller;70,5"));
  expect(first).toMatchObject({
    delimiter: ";",
    book: { unit: "cm", pages: [{ rows: [["miller", "70.5"]] }] },
  });
  const again = await reading.answer({ form: { delimiter: ",", unit: "in" } });
  expect(again).toMatchObject({ delimiter: ",", book: { unit: "in" } });
  expect(await reading.answer(csv(""))).toEqual({ refusal: "the file is empty" });
});

test("an older answer is passed over, a fault is a sentence, and a closed client hears nothing", () => {
  const sent: { id: number }[] = [];
  const worker: ReadingWorker<TableOrder, TableAnswer> = {
    postMessage: (message) => sent.push(message),
    terminate: () => sent.push({ id: -1 }),
    onmessage: null,
    onerror: null,
  };
  const heard: unknown[] = [];
  const client = new ReadingClient(() => worker);
  client.ask({ form: {} }, (answer) => heard.push(answer));
  client.ask({ form: {} }, (answer) => heard.push(answer));
  worker.onmessage!({ data: { id: 1, answer: { refusal: "old" } } });
  worker.onmessage!({ data: { id: 2, failed: "out of memory" } });
  expect(heard).toEqual([
    { refusal: "the file could not be read (out of memory); open it again, or save it anew first" },
  ]);
  client.ask({ form: {} }, (answer) => heard.push(answer));
  client.close();
  worker.onmessage!({ data: { id: 3, answer: { refusal: "late" } } });
  expect(heard).toHaveLength(1);
  expect(sent.map(({ id }) => id)).toEqual([1, 2, 3, -1]);
});

test("a worker that dies is a sentence, and another one reads the file again", () => {
  const workers: ReadingWorker<TableOrder, TableAnswer>[] = [];
  const sent: unknown[] = [];
  const client = new ReadingClient(() => {
    const worker: ReadingWorker<TableOrder, TableAnswer> = {
      postMessage: ({ order }) => sent.push(order),
      terminate: () => {},
      onmessage: null,
      onerror: null,
    };
    workers.push(worker);
    return worker;
  });
  const heard: unknown[] = [];
  const file = csv("role;waist");
  client.ask(file, (answer) => heard.push(answer));
  workers[0]!.onerror!({});
  expect(heard).toEqual([
    { refusal: expect.stringContaining("a part of the page's program could not be loaded"), ended: true },
  ]);
  client.ask({ form: { delimiter: "," } }, (answer) => heard.push(answer));
  workers[1]!.onmessage!({ data: { id: 2, answer: { refusal: "from the second" } } });
  expect(heard.at(-1)).toEqual({ refusal: "from the second" });
  expect(sent).toEqual([file, { ...file, form: { delimiter: "," } }]);
});

test("a worker that is silent gives way to another, which gets the file with the last order", () => {
  const sent: [worker: number, order: TableOrder | "ended"][] = [];
  const workers: ReadingWorker<TableOrder, TableAnswer>[] = [];
  const client = new ReadingClient(() => {
    const number = workers.length;
    const worker: ReadingWorker<TableOrder, TableAnswer> = {
      postMessage: ({ order }) => sent.push([number, order]),
      terminate: () => sent.push([number, "ended"]),
      onmessage: null,
      onerror: null,
    };
    workers.push(worker);
    return worker;
  });
  const heard: unknown[] = [];
  const file = csv("role;waist");
  client.ask(file, (answer) => heard.push(answer));
  client.ask({ form: { delimiter: "," } }, (answer) => heard.push(answer));
  client.again((answer) => heard.push(answer));
  const whole = { ...file, form: { delimiter: "," } };
  expect(sent).toEqual([[0, file], [0, { form: { delimiter: "," } }], [0, "ended"], [1, whole]]);
  workers[0]!.onmessage!({ data: { id: 2, answer: { refusal: "from the first" } } });
  workers[1]!.onmessage!({ data: { id: 3, answer: { refusal: "from the second" } } });
  expect(heard).toEqual([{ refusal: "from the second" }]);
}); // biome-ignore format: short
