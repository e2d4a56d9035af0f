/** Asks the worker for documents, one at a time: what is being made for an older request is given up. */
import { type Language, phrase, spokenLanguage } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import type { PaperRequest } from "../../paper/kinds.ts";
import { isForPaper } from "../../paper/paper-language.ts";
import { whyEnded } from "../../worker/not-loaded.ts";
import { startWorker } from "../../worker/speaking.ts";
import type { PrintNews, PrintOrder } from "./protocol.ts";

/** As much of a Worker as is used. */
export interface PrintWorker {
  postMessage(order: PrintOrder): void;
  terminate(): void;
  onmessage: ((event: { data: PrintNews }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
}

/** The page's language where documents can be in it; null for English. */
function paperLanguage(): Language | null {
  const language = spokenLanguage();
  return language && isForPaper(language) ? language : null;
}

/** Whether documents are in English while the page is in another language. */
export const isPaperEnglish = (): boolean => spokenLanguage() !== null && paperLanguage() === null;

const makeWorker = (): PrintWorker =>
  startWorker(new URL("./print-worker.ts", import.meta.url), paperLanguage()) as unknown as PrintWorker;

/** The news as the page gets it: a fault of the worker comes as a refusal. */
export type HeardNews =
  | Exclude<PrintNews, { readonly fault: string }>
  | { readonly refusal: string; readonly ended: true };

export class PrintClient {
  #worker: PrintWorker | null = null;
  #isBusy = false;

  constructor(
    private readonly book: Book,
    private readonly chosen: Place,
    private readonly hear: (news: HeardNews) => void,
    private readonly make: () => PrintWorker = makeWorker,
  ) {}

  /** Asks for a document. */
  request(request: PaperRequest): void {
    this.giveUp();
    try {
      const worker = this.#ready();
      this.#isBusy = true;
      worker.postMessage({ make: request });
    } catch (fault) {
      this.#fail((fault as Error).message);
    }
  }

  /** Gives up the document that is being made. A worker that draws takes no orders, so it is ended. */
  giveUp(): void {
    if (this.#isBusy) this.stop();
  }

  /** Asks for the picture of a sheet of the document that was made last. */
  show(sheet: number): void {
    if (!this.#isBusy) this.#worker?.postMessage({ show: sheet });
  }

  /** Ends the worker; the next request begins another. */
  stop(): void {
    if (this.#worker) this.#worker.onmessage = this.#worker.onerror = null;
    this.#worker?.terminate();
    this.#worker = null;
    this.#isBusy = false;
  }

  #ready(): PrintWorker {
    if (this.#worker) return this.#worker;
    const worker = this.make();
    worker.onmessage = ({ data }) => {
      if ("fault" in data) return this.#fail(data.fault);
      if ("made" in data || "refusal" in data) this.#isBusy = false;
      this.hear(data);
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      this.#fail(whyEnded(event));
    };
    worker.postMessage({ book: this.book, chosen: this.chosen });
    this.#worker = worker;
    return worker;
  }

  /** Ends the worker: what it had loaded by half is loaded anew with the next request. */
  #fail(why: string): void {
    this.stop();
    this.hear({
      ended: true,
      refusal: phrase`the document could not be made, and the book is as it was: ${why.replace(/\.$/, "")}`,
    });
  }
}
