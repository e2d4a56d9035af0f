/** Has drawings of other programs read in a worker. */
import type { OutlinesAnswer, OutlinesOrder } from "./outlines.ts";
import { ReadingClient, type ReadingWorker } from "./reading-client.ts";
import { startWorker } from "./speaking.ts";

export type OutlinesClient = ReadingClient<OutlinesOrder, OutlinesAnswer>;

const makeWorker = () =>
  startWorker(new URL("./outlines-worker.ts", import.meta.url)) as unknown as ReadingWorker<
    OutlinesOrder,
    OutlinesAnswer
  >;

export const outlinesClient = (): OutlinesClient => new ReadingClient(makeWorker);
