/** Starts a worker of the page that speaks the page's language. */
import { type Language, spokenLanguage } from "../../functions/phrase.ts";
import { watchEnd, workerName } from "./ended.ts";
import type { SpokenOrder } from "./spoken-worker.ts";

/**
 * `program` is the worker's file; `language` is the page's unless another is given, null for English. In another
 * language than English the worker begins with a small program that takes up the language first, since sentences
 * that are constants are made as their modules are loaded. A worker that ends by itself has an error event.
 */
export function startWorker(program: URL, language: Language | null = spokenLanguage()): Worker {
  const name = workerName();
  const first = language ? new URL("./spoken-worker.ts", import.meta.url) : program;
  const worker = new Worker(first, { type: "module", name });
  watchEnd(worker, name);
  if (language) worker.postMessage({ language, program: String(program) } satisfies SpokenOrder);
  return worker;
}
