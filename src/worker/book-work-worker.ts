/** The worker's own file for work on whole books: one order, one answer. */
import "../engine/all-functions.ts";
import { type BookOrder, bookWork } from "./book-work.ts";

self.onmessage = ({ data: order }: MessageEvent<BookOrder>) => {
  bookWork(order).then(
    (answer) => self.postMessage({ answer }),
    (reason) => self.postMessage({ failed: reason instanceof Error ? reason.message : String(reason) }),
  );
};
