/** Has tables of other programs read in a worker. */
import { ReadingClient, type ReadingWorker } from "./reading-client.ts";
import { startWorker } from "./speaking.ts";
import type { TableAnswer, TableOrder } from "./table.ts";

export type TableClient = ReadingClient<TableOrder, TableAnswer>;

const makeWorker = () =>
  startWorker(new URL("./table-worker.ts", import.meta.url)) as unknown as ReadingWorker<
    TableOrder,
    TableAnswer
  >;

export const tableClient = (): TableClient => new ReadingClient(makeWorker);
