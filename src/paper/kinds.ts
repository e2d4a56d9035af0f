/** The kinds of documents, as plain data for a menu or a command line. Nothing else of paper is loaded with it. */

import type { DrawnSheet } from "./marks.ts";

/** What a document may be asked for with, beside the paper. */
export type DocumentOption = "scale" | "pieces" | "page" | "cells" | "blank" | "large";

export interface DocumentKind {
  readonly name: string;
  readonly title: string;
  /** What is on it, in a sentence. */
  readonly about: string;
  /** The options it takes; every other option leaves it as it is. */
  readonly takes: readonly DocumentOption[];
}

export const DOCUMENTS = [
  {
    name: "pattern",
    title: "Pattern",
    about: "The pieces, full size or as a model, over as many sheets as they need.",
    takes: ["scale", "pieces", "page"],
  },
  {
    name: "chart",
    title: "Measurement chart",
    about: "The Measure pages: filled, or blank with room to write.",
    takes: ["page", "blank", "large"],
  },
] as const satisfies readonly DocumentKind[];

export type DocumentName = (typeof DOCUMENTS)[number]["name"];

export interface PaperRequest {
  readonly what: DocumentName;
  /** "a4", "letter", "a3", "a0", or a roll with its width: "roll=36in". */
  readonly paper: string;
  /** The name of a scale: "1", "1/2", "1/4", "1/5", "1/8". Full size when left out. */
  readonly scale?: string;
  /** Names or addresses of pieces; every piece when left out. */
  readonly pieces?: readonly string[];
  /** The title of a page: only what is on it. */
  readonly page?: string;
  /** Names or addresses of cells. */
  readonly cells?: readonly string[];
  /** A form without figures, with room to write. */
  readonly blank?: boolean;
  /** Large type, for the sewing table. */
  readonly large?: boolean;
  readonly day: Date;
}

export interface Printed {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sheets: number;
  /** The same sheets for a preview. */
  readonly drawn: readonly DrawnSheet[];
  /** The paper by its name: "A4", "roll 36 in wide". */
  readonly paper: string;
  /** What was printed, in a few words: "6 pieces", "1 page of measurements". */
  readonly says: string;
  /** What the reader should know: what is left out, what is not certain, what was replaced. */
  readonly sentences: readonly string[];
}

/** Why there is no document, in a sentence. */
export interface NotPrinted {
  readonly reason: string;
}
