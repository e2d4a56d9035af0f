/** One thread of the verb `lay`: searches until its time is over and posts every better lay. */
import { parentPort, workerData } from "node:worker_threads";
import { Search } from "../lay/search.ts";
import type { ThreadNews, ThreadTask } from "./lay-threads.ts";

const { question, start, seed, milliseconds } = workerData as ThreadTask;
const post = (news: ThreadNews) => parentPort?.postMessage(news);
const search = new Search(question, { seed, milliseconds, start });
search.run({ milliseconds }, (better) => post({ better }));
post({ done: true });
