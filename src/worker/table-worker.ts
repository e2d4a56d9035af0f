/** The worker's own file for tables of other programs: orders in, answers out, in the order of asking. */
import "../engine/all-functions.ts";
import { type TableOrder, TableReading } from "./table.ts";

const reading = new TableReading();
let before: Promise<unknown> = Promise.resolve();

self.onmessage = ({ data: { id, order } }: MessageEvent<{ id: number; order: TableOrder }>) => {
  before = before
    .then(() => reading.answer(order))
    .then(
      (answer) => self.postMessage({ id, answer }),
      (reason) => self.postMessage({ id, failed: reason instanceof Error ? reason.message : String(reason) }),
    );
};
