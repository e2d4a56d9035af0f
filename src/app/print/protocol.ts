/** The orders to the worker that makes documents for paper, and the news it sends back. All of it is plain data. */
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import type { PaperRequest } from "../../paper/kinds.ts";
import type { PageMap } from "./page-map.ts";
import type { SheetPicture } from "./sheet-picture.ts";

export type PrintOrder =
  /** The book to print from; a later document is made from the same book. */
  | { readonly book: Book; readonly chosen: Place }
  /** Makes a document. */
  | { readonly make: PaperRequest }
  /** Asks for the picture of one sheet of the document that was made last, counted from 0. */
  | { readonly show: number };

/** A piece that can be printed. */
export interface PieceOffer {
  /** What its cell is called on its page. */
  readonly title: string;
  /** What the cut list calls it; else its title. */
  readonly called: string;
  /** Whether a cut list says how many of it to cut. */
  readonly isToCut: boolean;
  readonly address: string;
  readonly page: number;
  /** Whether the chosen cell holds it. */
  readonly isChosen: boolean;
}

/** A document that is laid out: known before it is drawn. */
export interface LaidOut {
  readonly sheets: number;
  readonly paper: string;
  readonly says: string;
  readonly sentences: readonly string[];
  /** What is left out on purpose. */
  readonly notes: readonly string[];
  /** What the pieces of a pattern are called. */
  readonly pieces: readonly string[];
}

/** A document that is drawn. */
export interface MadeDocument extends LaidOut {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** A map for each drawing that is spread over several sheets, in their order. */
  readonly maps: readonly PageMap[];
}

export type PrintNews =
  | { readonly pieces: readonly PieceOffer[] }
  | { readonly laid: LaidOut }
  /** How many sheets are drawn so far. */
  | { readonly drawn: number }
  | { readonly made: MadeDocument }
  /** Why there is no document, in a sentence. */
  | { readonly refusal: string }
  /** What went wrong in the worker, in words. */
  | { readonly fault: string }
  | { readonly sheet: number; readonly picture: SheetPicture }
  /** The type of the documents, once. */
  | { readonly faces: { readonly regular: ArrayBuffer; readonly bold: ArrayBuffer } };
