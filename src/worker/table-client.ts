/** Has a table of another program read in a worker, so that the page stays usable; a newer order makes older answers void. */
import { NOT_LOADED } from "./not-loaded.ts";
import type { TableAnswer, TableOrder } from "./table.ts";

type Reply = { readonly id: number } & ({ readonly answer: TableAnswer } | { readonly failed: string });

/** As much of a Worker as is used. */
export interface TableWorker {
  postMessage(message: { id: number; order: TableOrder }): void;
  terminate(): void;
  onmessage: ((event: { data: Reply }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
}

const makeWorker = (): TableWorker =>
  new Worker(new URL("./table-worker.ts", import.meta.url), { type: "module" }) as unknown as TableWorker;

export class TableClient {
  #worker: TableWorker | null = null;
  /** The order that brought the file: a worker that takes the place of another has to read it too. */
  #file: TableOrder | null = null;
  #id = 0;
  #hear: ((answer: TableAnswer) => void) | null = null;

  constructor(private readonly make: () => TableWorker = makeWorker) {}

  #tell(answer: TableAnswer): void {
    const hear = this.#hear;
    this.#hear = null;
    hear?.(answer);
  }

  /** The answer goes to `hear`, unless a newer order or `close` comes before it. */
  ask(order: TableOrder, hear: (answer: TableAnswer) => void): void {
    this.#id += 1;
    this.#hear = hear;
    if ("bytes" in order) this.#file = order;
    const isNew = this.#worker === null;
    const whole = isNew && this.#file ? { ...this.#file, form: order.form } : order;
    this.#ready().postMessage({ id: this.#id, order: whole });
  }

  /** Ends the worker in the middle of whatever it reads. */
  close(): void {
    this.#hear = null;
    this.#worker?.terminate();
    this.#worker = null;
  }

  #ready(): TableWorker {
    if (this.#worker) return this.#worker;
    const worker = this.make();
    worker.onmessage = ({ data }) => {
      if (data.id !== this.#id) return;
      this.#tell("answer" in data ? data.answer : { refusal: notRead(data.failed) });
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      const hear = this.#hear;
      this.close();
      hear?.({ refusal: notRead(event.message || NOT_LOADED) });
    };
    this.#worker = worker;
    return worker;
  }
}

const notRead = (why: string): string =>
  `the file could not be read (${why}); open it again, or save it anew first`;
