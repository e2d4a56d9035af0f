/** One thread of the verb `lay`: searches until its time is over and tells every better lay. */
import { parentPort, workerData } from "node:worker_threads";
import { Search } from "../lay/plan.ts";
import type { ThreadNews, ThreadTask } from "./lay-threads.ts";

const { question, start, seed, milliseconds } = workerData as ThreadTask;
const tell = (news: ThreadNews) => parentPort?.postMessage(news);
const search = new Search(question, { seed, milliseconds, start });
search.run({ milliseconds }, (better) => tell({ better }));
tell({ done: true });
