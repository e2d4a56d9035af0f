/** One thread of the verb `lay`: searches until its time is over, posts every better lay and hears of those of other threads. */
import { parentPort, receiveMessageOnPort, workerData } from "node:worker_threads";
import type { Lay } from "../../functions/lay.ts";
import { Search } from "../lay/search.ts";
import type { ThreadNews, ThreadTask } from "./lay-threads.ts";

/** How long the thread searches before it looks for messages again. */
const SLICE_MS = 40;

const { question, start, seed, milliseconds } = workerData as ThreadTask;
const port = parentPort!;
const post = (news: ThreadNews) => port.postMessage(news);
const search = new Search(question, { seed, milliseconds, start });
for (let done = false; !done && search.progress < 1; ) {
  for (let heard = receiveMessageOnPort(port); heard; heard = receiveMessageOnPort(port))
    search.take(heard.message as Lay);
  const left = milliseconds * (1 - search.progress);
  done = search.run({ milliseconds: Math.min(SLICE_MS, left) }, (better) => post({ better }));
}
post({ done: true });
