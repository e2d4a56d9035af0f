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
    about: "The pieces to cut, full size or as a model, over as many sheets as they need.",
    takes: ["scale", "pieces", "page", "large"],
  },
  {
    name: "chart",
    title: "Measurement chart",
    about: "The Measure pages: filled, or blank with room to write.",
    takes: ["page", "blank", "large"],
  },
  {
    name: "cut-list",
    title: "Cut list",
    about: "The Cut pages, with a small picture of each piece.",
    takes: ["page", "large"],
  },
  {
    name: "log",
    title: "Fitting log",
    about: "The Fit pages: filled, or blank with room to write.",
    takes: ["page", "blank", "large"],
  },
  {
    name: "shopping",
    title: "Shopping list",
    about: "The lengths of cloth and the Trimmings pages, with boxes to tick.",
    takes: ["page", "large"],
  },
  {
    name: "lay",
    title: "Lay",
    about: "Every lay to scale on its cloth, with a ruler, the pieces by name and how it was found.",
    takes: ["cells", "page", "scale", "large"],
  },
  {
    name: "strip",
    title: "Marking strips",
    about: "Paper strips at full size with the places of pleats, buttons and eyelets along an edge.",
    takes: ["cells", "page", "large"],
  },
  {
    name: "working",
    title: "Working",
    about: "How the figures of chosen cells come about, from tape to cut.",
    takes: ["cells", "large"],
  },
  {
    name: "all",
    title: "Everything",
    about: "All documents that the book has something for, with a first sheet that lists them.",
    takes: ["scale", "pieces", "page", "cells", "blank", "large"],
  },
] as const satisfies readonly DocumentKind[];

export type DocumentName = (typeof DOCUMENTS)[number]["name"];

export interface PaperRequest {
  readonly what: DocumentName;
  /** "a4", "letter", "a3", "a0", or a roll with its width: "roll=36in". */
  readonly paper: string;
  /** The name of a scale: "1", "1/2", "1/4", "1/5", "1/8", of a lay any "1/n". When left out a pattern is full size and a lay as large as the paper holds. */
  readonly scale?: string;
  /** Names or addresses of pieces, or what a cut list calls them; when left out, the pieces to cut. */
  readonly pieces?: readonly string[];
  /** Also the pieces that no cut list cuts, where none is asked for by name. */
  readonly everyPiece?: boolean;
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
  /** What is left out on purpose, in sentences; nothing to check. */
  readonly notes: readonly string[];
  /** What the pieces of a pattern are called; empty for a document without pieces. */
  readonly pieces: readonly string[];
}

/** Why there is no document, in a sentence. */
export interface NotPrinted {
  readonly reason: string;
}
