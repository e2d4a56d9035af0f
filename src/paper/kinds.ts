/** The kinds of documents, as plain data for a menu or a command line. Nothing else of paper is loaded with it. */

import { phrase } from "../../functions/phrase.ts";
import type { DrawnSheet } from "./marks.ts";

/** The options that only some documents take. Every document takes a paper, and large type. */
export type DocumentOption = "scale" | "pieces" | "page" | "cells" | "blank";

export interface DocumentKind {
  readonly name: string;
  readonly title: string;
  /** What is on the document, in a sentence. */
  readonly about: string;
  /** The options that change this document. */
  readonly takes: readonly DocumentOption[];
}

export const DOCUMENTS = [
  {
    name: "pattern",
    title: phrase`Pattern`,
    about: phrase`The pieces to cut, full size or as a model, over as many sheets as they need.`,
    takes: ["scale", "pieces", "page"],
  },
  {
    name: "chart",
    title: phrase`Measurement chart`,
    about: phrase`The Measure pages: filled, or blank with room to write.`,
    takes: ["page", "blank"],
  },
  {
    name: "cut-list",
    title: phrase`Cut list`,
    about: phrase`The Cut pages, with a small picture of each piece.`,
    takes: ["page"],
  },
  {
    name: "log",
    title: phrase`Fitting log`,
    about: phrase`The Fit pages: filled, or blank with room to write.`,
    takes: ["page", "blank"],
  },
  {
    name: "shopping",
    title: phrase`Shopping list`,
    about: phrase`The lengths of cloth and the Trimmings pages, with boxes to tick.`,
    takes: ["page"],
  },
  {
    name: "lay",
    title: phrase`Lay`,
    about: phrase`Every lay to scale on its cloth, with a ruler, the pieces by name and how it was found.`,
    takes: ["cells", "page", "scale"],
  },
  {
    name: "strip",
    title: phrase`Marking strips`,
    about: phrase`Paper strips at full size with the places of pleats, buttons and eyelets along an edge.`,
    takes: ["cells", "page"],
  },
  {
    name: "working",
    title: phrase`Working`,
    about: phrase`How the figures of selected cells come about, from tape to cut.`,
    takes: ["cells"],
  },
  {
    name: "all",
    title: phrase`Everything`,
    about: phrase`All documents that the book has something for, with a first sheet that lists them.`,
    takes: ["scale", "pieces", "page", "cells", "blank"],
  },
] as const satisfies readonly DocumentKind[];

export type DocumentName = (typeof DOCUMENTS)[number]["name"];

export interface PaperRequest {
  readonly what: DocumentName;
  /** The name of a paper, such as "a4" or "letter", or a roll with its width: "roll=36in". */
  readonly paper: string;
  /**
   * A scale of `paper.ts`, such as "1/4"; a lay takes any "1/n". Without a scale, a pattern is full size, and a
   * lay is as large as the paper holds.
   */
  readonly scale?: string;
  /** Names or addresses of pieces, or what a cut list calls them. Without this, the pieces that are cut. */
  readonly pieces?: readonly string[];
  /** Also the pieces that no cut list cuts. Has no effect beside `pieces`. */
  readonly everyPiece?: boolean;
  /** The title of a page, to print only what is on that page. */
  readonly page?: string;
  /** Names or addresses of cells. */
  readonly cells?: readonly string[];
  /** Whether the form is left empty, with room to write. */
  readonly blank?: boolean;
  /** Whether the type is large, to be read from a sewing table. */
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
  /** What is to be checked: what is missing, not certain or replaced, in sentences. */
  readonly sentences: readonly string[];
  /** What is left out on purpose, in sentences. There is nothing to check about it. */
  readonly notes: readonly string[];
  /** What the pieces of a pattern are called; empty for a document without pieces. */
  readonly pieces: readonly string[];
}

/** A sentence that says why the document can't be made. */
export interface NotPrinted {
  readonly reason: string;
}
