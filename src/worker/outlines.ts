/** Reads drawings of other programs: the orders to a worker and its answers, all plain data. */
import { phrase } from "../../functions/phrase.ts";
import type { Found, Inner } from "../exchange/outlines/find-pieces.ts";
import { readOutlines } from "../exchange/outlines/read-outlines.ts";
import type { Refused } from "../exchange/outlines/read-text.ts";

/** A file to read, once, or what else the closed lines inside the pieces of that file are. */
export type OutlinesOrder = { readonly bytes: Uint8Array; readonly inner: Inner } | { readonly inner: Inner };

/** The pieces, and what the closed lines inside them were taken for. */
export interface ReadOutlines {
  readonly found: Found;
  readonly inner: Inner;
}

export type OutlinesAnswer = ReadOutlines | Refused;

/** Keeps the file that was read last. */
export class OutlinesReading {
  #bytes: Uint8Array | null = null;

  answer(order: OutlinesOrder): OutlinesAnswer {
    if ("bytes" in order) this.#bytes = order.bytes;
    if (!this.#bytes) return { refusal: phrase`no file was read; open it again` };
    const found = readOutlines(this.#bytes, order.inner);
    return "refusal" in found ? found : { found, inner: order.inner };
  }
}
