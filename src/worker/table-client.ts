/** Has a table of another program read in a worker, so that the page stays usable; a newer order makes older answers void. */
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
  readonly #worker: TableWorker;
  #id = 0;
  #hear: ((answer: TableAnswer) => void) | null = null;

  constructor(make: () => TableWorker = makeWorker) {
    this.#worker = make();
    this.#worker.onmessage = ({ data }) => {
      if (data.id !== this.#id) return;
      this.#tell("answer" in data ? data.answer : { refusal: notRead(data.failed) });
    };
    this.#worker.onerror = (event) => {
      event.preventDefault?.();
      this.#tell({ refusal: notRead(event.message || "it gave no reason") });
    };
  }

  #tell(answer: TableAnswer): void {
    const hear = this.#hear;
    this.#hear = null;
    hear?.(answer);
  }

  /** The answer goes to `hear`, unless a newer order or `close` comes before it. */
  ask(order: TableOrder, hear: (answer: TableAnswer) => void): void {
    this.#id += 1;
    this.#hear = hear;
    this.#worker.postMessage({ id: this.#id, order });
  }

  /** Ends the worker in the middle of whatever it reads. */
  close(): void {
    this.#hear = null;
    this.#worker.terminate();
  }
}

const notRead = (why: string): string =>
  `the file could not be read (${why}); open it again, or save it anew first`;
