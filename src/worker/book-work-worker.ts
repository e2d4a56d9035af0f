/** The worker's own file for work on whole books: one order, one answer. */
import "./alive.ts";
import "../engine/all-functions.ts";
import { learnQuick } from "../lay/desk.ts";
import { type BookTask, bookWork } from "./book-work.ts";

self.onmessage = ({ data: { order, laid } }: MessageEvent<BookTask>) => {
  for (const { question, answer } of laid) learnQuick(question, answer);
  bookWork(order).then(
    (answer) => self.postMessage({ answer }),
    (reason) => self.postMessage({ failed: reason instanceof Error ? reason.message : String(reason) }),
  );
};
