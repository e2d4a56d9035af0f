/** The worker's own file: orders in, news out. An error is left to the browser to tell the client. */
import "./alive.ts";
import { type JoinTask, LayWork, type QuickTask, type WorkerOrder } from "./protocol.ts";
import { turn } from "./turn.ts";

const work = new LayWork((news) => self.postMessage(news), turn);

self.onmessage = ({ data }: MessageEvent<WorkerOrder | JoinTask | QuickTask>) => {
  work.hear(data).catch((reason) => {
    // A promise that fails is no error of the worker to its client: thrown anew, it is.
    setTimeout(() => {
      throw reason;
    });
  });
};
