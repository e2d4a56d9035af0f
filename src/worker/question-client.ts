/** Asks what-if questions of a worker, one at a time: a newer question ends the older one. */
import { phrase } from "../../functions/phrase.ts";
import type { AnswerNews, Question } from "../engine/question.ts";
import { whyEnded } from "./not-loaded.ts";
import { startWorker } from "./speaking.ts";

/** As much of a Worker as is used. */
export interface QuestionWorker {
  postMessage(message: { id: number; question: Question } | null): void;
  terminate(): void;
  onmessage: ((event: { data: { id: number; news: AnswerNews } }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
}

const makeWorker = (): QuestionWorker =>
  startWorker(new URL("./question-worker.ts", import.meta.url)) as unknown as QuestionWorker;

export class QuestionClient {
  #worker: QuestionWorker | null = null;
  #id = 0;
  #hear: ((news: AnswerNews) => void) | null = null;

  constructor(private readonly make: () => QuestionWorker = makeWorker) {}

  /** Asks a question. `hear` is called with each piece of the answer until a newer question is asked. Returns the function that ends this question. */
  ask(question: Question, hear: (news: AnswerNews) => void): () => void {
    this.#id += 1;
    const id = this.#id;
    this.#hear = hear;
    try {
      this.#ready().postMessage({ id, question });
    } catch (reason) {
      this.#fail((reason as Error).message);
    }
    return () => {
      if (this.#id !== id || !this.#hear) return;
      this.#hear = null;
      this.#worker?.postMessage(null);
    };
  }

  /** Ends the worker; a later question begins another. */
  close(): void {
    this.#hear = null;
    this.#worker?.terminate();
    this.#worker = null;
  }

  #ready(): QuestionWorker {
    if (this.#worker) return this.#worker;
    const worker = this.make();
    worker.onmessage = ({ data: { id, news } }) => {
      if (id !== this.#id) return;
      const hear = this.#hear;
      if ("done" in news) this.#hear = null;
      hear?.(news);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      this.#fail(whyEnded(event));
    };
    this.#worker = worker;
    return worker;
  }

  #fail(why: string): void {
    const hear = this.#hear;
    this.close();
    hear?.({ problem: phrase`the worker that answers questions stopped: ${why}; ask again` });
    hear?.({ done: true });
  }
}
