/** Has a file of another program read in a worker, so that the page stays usable. A newer order makes older answers void. */
import { phrase } from "../../functions/phrase.ts";
import type { Refused } from "../exchange/decode.ts";
import { whyEnded } from "./not-loaded.ts";

/** The refusal of a file whose worker has ended: another worker may read it. */
export interface Ended extends Refused {
  readonly ended: true;
}

type Reply<Answer> = { readonly id: number } & ({ readonly answer: Answer } | { readonly failed: string });

/** As much of a Worker as is used. */
export interface ReadingWorker<Order, Answer> {
  postMessage(message: { id: number; order: Order }): void;
  terminate(): void;
  onmessage: ((event: { data: Reply<Answer> }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
}

/** The first order for a file has its `bytes`; later orders have what changes. */
export class ReadingClient<Order extends object, Answer> {
  #worker: ReadingWorker<Order, Answer> | null = null;
  /** The order that brought the file: a worker that takes the place of another has to read it too. */
  #file: Order | null = null;
  #id = 0;
  /** The order that was sent last. */
  #order: Order | null = null;
  #hear: ((answer: Answer | Refused) => void) | null = null;

  constructor(private readonly make: () => ReadingWorker<Order, Answer>) {}

  #pass(answer: Answer | Refused): void {
    const hear = this.#hear;
    this.#hear = null;
    hear?.(answer);
  }

  /** Sends an order. The answer goes to `hear`, unless a newer order or `close` comes before it. */
  ask(order: Order, hear: (answer: Answer | Refused) => void): void {
    this.#id += 1;
    this.#hear = hear;
    this.#order = order;
    if ("bytes" in order) this.#file = order;
    const isNew = this.#worker === null;
    const whole = isNew && this.#file ? { ...this.#file, ...order } : order;
    this.#ready().postMessage({ id: this.#id, order: whole });
  }

  /** Sends the last order to another worker, in the place of one that has ended or is silent. */
  again(hear: (answer: Answer | Refused) => void): void {
    this.close();
    if (this.#order) this.ask(this.#order, hear);
  }

  /** Ends the worker in the middle of whatever it reads. */
  close(): void {
    this.#hear = null;
    this.#worker?.terminate();
    this.#worker = null;
  }

  #ready(): ReadingWorker<Order, Answer> {
    if (this.#worker) return this.#worker;
    const worker = this.make();
    worker.onmessage = ({ data }) => {
      if (data.id !== this.#id) return;
      this.#pass("answer" in data ? data.answer : { refusal: notRead(data.failed) });
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      const hear = this.#hear;
      this.close();
      const ended: Ended = { refusal: endedBy(whyEnded(event)), ended: true };
      hear?.(ended);
    };
    this.#worker = worker;
    return worker;
  }
}

const notRead = (why: string): string =>
  phrase`the file could not be read (${why}); open it again, or save it anew first`;

const endedBy = (why: string): string => phrase`the file could not be read (${why}); try again`;
