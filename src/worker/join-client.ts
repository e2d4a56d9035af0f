/** A search for joins in a worker of its own; where there is no worker, on the page, a lay at a time. */

import { searchJoins } from "../../functions/cutting/piecing.ts";
import type { JoinAnswer, JoinQuestion } from "../../functions/lay.ts";
import { quickLay } from "../lay/plan.ts";
import type { JoinNews, JoinTask } from "./protocol.ts";
import { startWorker } from "./speaking.ts";

/** The functions that a search for joins calls with its news. */
export interface JoinListener {
  tried(lays: number): void;
  ended(answer: JoinAnswer): void;
}

/** As much of a Worker as is used. */
export interface JoinWorker {
  postMessage(task: JoinTask): void;
  terminate(): void;
  onmessage: ((event: { data: JoinNews }) => void) | null;
  onerror: ((event: { preventDefault?: () => void }) => void) | null;
  onmessageerror: (() => void) | null;
}

const makeWorker = (): JoinWorker =>
  startWorker(new URL("./worker.ts", import.meta.url)) as unknown as JoinWorker;

/** A worker that sends no news for this long is taken for dead, in milliseconds. */
const SILENCE_MS = 30_000;

/** Begins a search for joins; returns what stops it. */
export function searchJoinsApart(
  joins: JoinQuestion,
  listener: JoinListener,
  make: () => JoinWorker = makeWorker,
): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let worker: JoinWorker | undefined;
  const stop = () => {
    clearTimeout(timer);
    if (!worker) return;
    worker.onmessage = worker.onerror = worker.onmessageerror = null;
    worker.terminate();
    worker = undefined;
  };
  const onPage = () => {
    stop();
    const search = searchJoins(joins, quickLay);
    timer = setTimeout(function next() {
      const { done, value } = search.next();
      if (done) return listener.ended(value);
      listener.tried(value);
      timer = setTimeout(next);
    });
  };
  const watch = () => {
    clearTimeout(timer);
    timer = setTimeout(onPage, SILENCE_MS);
  };
  try {
    worker = make();
    worker.onmessage = ({ data }) => {
      watch();
      if ("tried" in data) return listener.tried(data.tried);
      stop();
      listener.ended(data.joined);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      onPage();
    };
    worker.onmessageerror = onPage;
    worker.postMessage({ joins });
    watch();
  } catch {
    onPage();
  }
  return stop;
}
