import { expect, test } from "vitest";
import { TableReading } from "../../../src/worker/table.ts";
import { TableClient, type TableWorker } from "../../../src/worker/table-client.ts";

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
  const worker: TableWorker = {
    postMessage: (message) => sent.push(message),
    terminate: () => sent.push({ id: -1 }),
    onmessage: null,
    onerror: null,
  };
  const heard: unknown[] = [];
  const client = new TableClient(() => worker);
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
