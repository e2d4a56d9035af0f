/**
 * Documents for paper: `printed` makes one; `laidOut` first says how many sheets it takes. Their kinds are in
 * `kinds.ts`. Load this module only when a document is asked for: it brings the writer of PDFs and the typeface.
 */

import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Engine } from "../engine/engine.ts";
import { allDocuments } from "./all.ts";
import { chartDocument, cutListDocument, logDocument } from "./chart.ts";
import { type Letters, newDocument, type Sheet } from "./document.ts";
import type { Manner } from "./flow.ts";
import { DOCUMENTS, type DocumentName, type NotPrinted, type PaperRequest, type Printed } from "./kinds.ts";
import { layDocument } from "./lay.ts";
import { readPaper } from "./paper.ts";
import { patternDocument } from "./pattern.ts";
import { shoppingDocument } from "./shopping.ts";
import { stripDocument } from "./strip.ts";
import { workingDocument } from "./working.ts";

/** A request whose paper and page have been read. */
export interface Asked {
  readonly request: PaperRequest;
  readonly manner: Manner;
  readonly letters: Letters;
  /** The number of the page that is asked for, from 0; null for the whole book. */
  readonly page: number | null;
}

/** A document that is laid out and not yet drawn. */
export interface Built {
  readonly sheets: readonly Sheet[];
  readonly says: string;
  readonly sentences: readonly string[];
  /** What is left out on purpose, in sentences; nothing to check. */
  readonly notes?: readonly string[];
  /** What the pieces of a pattern are called. */
  readonly pieces?: readonly string[];
}

const BUILDERS: Record<Exclude<DocumentName, "all">, (engine: Engine, asked: Asked) => Built | NotPrinted> = {
  pattern: patternDocument,
  chart: chartDocument,
  "cut-list": cutListDocument,
  log: logDocument,
  shopping: shoppingDocument,
  lay: layDocument,
  strip: stripDocument,
  working: workingDocument,
};

function read(engine: Engine, request: PaperRequest, letters: Letters): Asked | NotPrinted {
  const { book } = engine;
  const paper = readPaper(request.paper);
  if ("reason" in paper) return paper;
  const title = request.page;
  const page = title === undefined ? null : book.pages.findIndex((one) => isSame(one.title, title));
  if (page === -1) {
    const near = nearestWord(
      title!,
      book.pages.map((one) => one.title),
    );
    return {
      reason: near
        ? phrase`this book has no page "${title!}"; is ${near} meant?`
        : phrase`this book has no page "${title!}"`,
    };
  }
  const manner = { paper, large: request.large ?? false, title: book.title, day: request.day };
  return { request, manner, letters, page };
}

const isSame = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** A document whose sheets are known and not yet drawn. */
export interface LaidOut extends Pick<Printed, "paper" | "says" | "sentences" | "notes" | "pieces"> {
  readonly sheets: number;
  /** Draws the sheets; `onSheet` hears how many are drawn. */
  print(onSheet?: (drawn: number) => void): Promise<Printed>;
}

/** The document laid out, or a sentence that says why it can't be made. */
export async function laidOut(engine: Engine, request: PaperRequest): Promise<LaidOut | NotPrinted> {
  const doc = await newDocument(engine.book.title, request.day);
  const asked = read(engine, request, doc);
  if ("reason" in asked) return asked;
  const built = request.what === "all" ? all(engine, asked) : BUILDERS[request.what](engine, asked);
  if ("reason" in built) return built;
  const { sheets, says, sentences, notes = [], pieces = [] } = built;
  const known = { sheets: sheets.length, paper: asked.manner.paper.name, says, notes, pieces };
  return {
    ...known,
    sentences,
    async print(onSheet) {
      for (const [i, sheet] of sheets.entries()) {
        doc.page(sheet);
        sheet.draw(doc, i + 1, sheets.length);
        onSheet?.(i + 1);
      }
      const missing = doc.missing();
      return {
        ...known,
        bytes: await doc.bytes(),
        drawn: doc.sheets(),
        sentences: [
          ...sentences,
          ...(missing.length > 0
            ? [phrase`the typeface has no letter for ${missing.slice(0, 20).join(" ")}: □ is printed instead`]
            : []),
        ],
      };
    },
  };
}

function all(engine: Engine, asked: Asked): Built | NotPrinted {
  // The cells choose whose working is printed, and the scale is that of the pattern.
  const { cells = [], scale, ...request } = asked.request;
  const parts = DOCUMENTS.flatMap(({ name, title }) => {
    if (name === "all") return [];
    const own = {
      ...request,
      ...(name === "working" && { cells }),
      ...(name === "pattern" && scale && { scale }),
    };
    return [{ title, built: BUILDERS[name](engine, { ...asked, request: own }) }];
  });
  return allDocuments(engine, asked, parts);
}

/** The document as a PDF, or a sentence that says why it can't be made. */
export async function printed(engine: Engine, request: PaperRequest): Promise<Printed | NotPrinted> {
  const laid = await laidOut(engine, request);
  return "reason" in laid ? laid : laid.print();
}
