/** Has work on whole books done in a worker of its own, so that the page stays usable and the work can be stopped. */
import { quickLays } from "../lay/desk.ts";
import type { AnswerTo, BookOrder, BookTask } from "./book-work.ts";
import { whyEnded } from "./not-loaded.ts";
import { startWorker } from "./speaking.ts";

type Reply = { readonly answer: AnswerTo<BookOrder> } | { readonly failed: string };

/** As much of a Worker as is used. */
export interface BookWorker {
  postMessage(task: BookTask): void;
  terminate(): void;
  onmessage: ((event: { data: Reply }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
}

const makeWorker = (): BookWorker =>
  startWorker(new URL("./book-work-worker.ts", import.meta.url)) as unknown as BookWorker;

/**
 * The answer to an order, or null once `signal` has stopped the work. Rejects with an Error, whose
 * message says why, when the work fails.
 */
export function doBookWork<Order extends BookOrder>(
  order: Order,
  signal: AbortSignal,
  make: () => BookWorker = makeWorker,
): Promise<AnswerTo<Order> | null> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) return resolve(null);
    const worker = make();
    const end = () => {
      signal.removeEventListener("abort", stop);
      worker.onmessage = worker.onerror = null;
      worker.terminate();
    };
    const stop = () => {
      end();
      resolve(null);
    };
    signal.addEventListener("abort", stop);
    worker.onmessage = ({ data }) => {
      end();
      if ("failed" in data) reject(new Error(data.failed));
      else resolve(data.answer as AnswerTo<Order>);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      end();
      reject(new Error(whyEnded(event)));
    };
    worker.postMessage({ order, laid: order.is === "read" ? [] : quickLays() });
  });
}
