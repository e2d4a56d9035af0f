/** Quick lays made by a worker that stays: one question at a time. Where there is no worker, they are made on the page. */
import type { LayQuestion } from "../../functions/lay.ts";
import { quickAnswer } from "../lay/desk.ts";
import type { Answer } from "../lay/memory.ts";
import type { QuickNews, QuickTask } from "./protocol.ts";
import { startWorker } from "./speaking.ts";

/** As much of a Worker as is used. */
export interface QuickWorker {
  postMessage(task: QuickTask): void;
  terminate(): void;
  onmessage: ((event: { data: QuickNews }) => void) | null;
  onerror: ((event: { preventDefault?: () => void }) => void) | null;
  onmessageerror: (() => void) | null;
}

const makeWorker = (): QuickWorker =>
  startWorker(new URL("./worker.ts", import.meta.url)) as unknown as QuickWorker;

/** A worker that has not answered after this time is taken for dead, in milliseconds. */
const SILENCE_MS = 20_000;

export class QuickLayer {
  readonly #make: () => QuickWorker;
  #worker: QuickWorker | null = null;
  #silence: ReturnType<typeof setTimeout> | undefined;
  #tell: ((answer: Answer) => void) | null = null;

  constructor(make: () => QuickWorker = makeWorker) {
    this.#make = make;
  }

  /** Makes the quick lay of a question and calls `told` with it. The next question may be asked after that. */
  ask(question: LayQuestion, told: (answer: Answer) => void): void {
    this.#tell = told;
    const here = () => {
      this.#dismiss();
      this.#answer(quickAnswer(question));
    };
    try {
      const worker = this.#worker ?? this.#make();
      this.#worker = worker;
      worker.onmessage = ({ data }) => this.#answer(data.laid);
      worker.onerror = (event) => {
        event.preventDefault?.();
        here();
      };
      worker.onmessageerror = here;
      this.#silence = setTimeout(here, SILENCE_MS);
      worker.postMessage({ quick: question });
    } catch {
      // Later: whoever asks is not done with asking yet.
      this.#silence = setTimeout(here);
    }
  }

  /** Ends the worker; an answer that is still awaited no longer comes. */
  stop(): void {
    this.#tell = null;
    this.#dismiss();
  }

  #answer(answer: Answer): void {
    clearTimeout(this.#silence);
    const tell = this.#tell;
    this.#tell = null;
    tell?.(answer);
  }

  #dismiss(): void {
    clearTimeout(this.#silence);
    const worker = this.#worker;
    this.#worker = null;
    if (!worker) return;
    worker.onmessage = worker.onerror = worker.onmessageerror = null;
    worker.terminate();
  }
}
