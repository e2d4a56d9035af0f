/** Starts a worker of the page that speaks the page's language. */
import { type Language, spokenLanguage } from "../../functions/phrase.ts";
import type { SpokenOrder } from "./spoken-worker.ts";

/**
 * `program` is the worker's file; `language` is the page's unless another is given, null for English. In another
 * language than English the worker begins with a small program that takes up the language first, since sentences
 * that are constants are made as their modules are loaded.
 */
export function startWorker(program: URL, language: Language | null = spokenLanguage()): Worker {
  if (!language) return new Worker(program, { type: "module" });
  const worker = new Worker(new URL("./spoken-worker.ts", import.meta.url), { type: "module" });
  worker.postMessage({ language, program: String(program) } satisfies SpokenOrder);
  return worker;
}
