/** The document that belongs to what is chosen: laid out, drawn and at hand as a PDF, with its sheets one by one. */

import { useCallback, useEffect, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import type { PaperRequest } from "../../paper/kinds.ts";
import { type HeardNews, PrintClient } from "./client.ts";
import type { LaidOut, MadeDocument, PieceOffer } from "./protocol.ts";
import type { SheetPicture } from "./sheet-picture.ts";

export type Making =
  | { readonly is: "beginning" }
  /** Known in size, being drawn; `drawn` sheets are done. */
  | { readonly is: "drawing"; readonly laid: LaidOut; readonly drawn: number }
  | { readonly is: "made"; readonly made: MadeDocument }
  | { readonly is: "stopped" }
  /** `ended`: its worker has ended, and another may make the document. */
  | { readonly is: "refused"; readonly sentence: string; readonly ended: boolean };

/** The name of the type in the page: that of the documents. */
export const TYPE = "Ellwand paper";

/** A choice is followed by another within this time, in milliseconds, before anything is made. */
const SETTLE = 150;

/** Gives the page the type of the documents, so that the preview has the letters of the PDF. */
async function addFaces({ regular, bold }: { readonly regular: ArrayBuffer; readonly bold: ArrayBuffer }) {
  for (const face of document.fonts) if (face.family.replaceAll('"', "") === TYPE) return;
  const faces = [new FontFace(TYPE, regular), new FontFace(TYPE, bold, { weight: "700" })];
  for (const face of faces) document.fonts.add(await face.load());
}

export function usePrinting(book: Book, chosen: Place, request: Omit<PaperRequest, "day">) {
  const [making, setMaking] = useState<Making>({ is: "beginning" });
  const [pieces, setPieces] = useState<readonly PieceOffer[] | null>(null);
  const [sheet, setSheet] = useState(0);
  const [picture, setPicture] = useState<{ readonly sheet: number; readonly picture: SheetPicture } | null>(
    null,
  );
  const client = useRef<PrintClient | null>(null);

  const hear = useCallback((news: HeardNews) => {
    if ("pieces" in news) setPieces(news.pieces);
    else if ("faces" in news) addFaces(news.faces).catch(() => {});
    else if ("laid" in news) setMaking({ is: "drawing", laid: news.laid, drawn: 0 });
    else if ("drawn" in news)
      setMaking((before) => (before.is === "drawing" ? { ...before, drawn: news.drawn } : before));
    else if ("made" in news) {
      setMaking({ is: "made", made: news.made });
      setSheet((before) => Math.min(before, news.made.sheets - 1));
    } else if ("refusal" in news)
      setMaking({ is: "refused", sentence: news.refusal, ended: "ended" in news });
    else setPicture(news);
  }, []);

  useEffect(() => {
    const one = new PrintClient(book, chosen, hear);
    client.current = one;
    return () => one.stop();
  }, [book, chosen, hear]);

  const asked = JSON.stringify(request);
  const ask = useCallback(() => {
    setMaking({ is: "beginning" });
    client.current?.request({ ...JSON.parse(asked), day: new Date() });
  }, [asked]);
  useEffect(() => {
    setMaking({ is: "beginning" });
    // Or the document of the choice before could come meanwhile, and be saved for that of this one.
    client.current?.giveUp();
    const timer = setTimeout(ask, SETTLE);
    return () => clearTimeout(timer);
  }, [ask]);

  const isMade = making.is === "made" ? making.made : null;
  useEffect(() => {
    if (isMade) client.current?.show(sheet);
  }, [isMade, sheet]);

  return {
    making,
    pieces,
    sheet,
    setSheet,
    picture,
    again: ask,
    stop: () => {
      client.current?.stop();
      setMaking({ is: "stopped" });
    },
  };
}
