/** The worker's own file for documents: the book is calculated here, so that the page stays free. */
import type { Place } from "../../book/address.ts";
import { Engine } from "../../engine/engine.ts";
import { piecesOf } from "../../engine/pieces.ts";
import { layDesk } from "../../lay/desk.ts";
import { typeFaces } from "../../paper/document.ts";
import { laidOut } from "../../paper/documents.ts";
import type { PaperRequest } from "../../paper/kinds.ts";
import type { DrawnSheet } from "../../paper/marks.ts";
import { mapOf } from "./page-map.ts";
import type { PieceOffer, PrintNews, PrintOrder } from "./protocol.ts";
import { pictureOfSheet } from "./sheet-picture.ts";

let engine: Engine | null = null;
let drawn: readonly DrawnSheet[] = [];

const tell = (news: PrintNews, transfer: Transferable[] = []) => self.postMessage(news, { transfer });

function offers(of: Engine, chosen: Place): PieceOffer[] {
  const { value } = of.view(chosen);
  return piecesOf(of).found.map(({ title, address, place }) => ({
    title,
    address,
    page: place.page,
    isChosen: of.view(place).value === value,
  }));
}

async function make(request: PaperRequest): Promise<void> {
  const laid = await laidOut(engine!, request);
  if ("reason" in laid) return tell({ refusal: laid.reason });
  const { sheets, paper, says, sentences } = laid;
  tell({ laid: { sheets, paper, says, sentences } });
  const made = await laid.print((count) => tell({ drawn: count }));
  drawn = made.drawn;
  const { bytes } = made;
  tell({ made: { sheets, paper, says, sentences: made.sentences, bytes, map: mapOf(drawn) } }, [
    bytes.buffer,
  ]);
}

self.onmessage = async ({ data }: MessageEvent<PrintOrder>) => {
  if ("book" in data) {
    engine = new Engine(data.book, layDesk);
    tell({ pieces: offers(engine, data.chosen) });
    const { regular, bold } = await typeFaces();
    tell({ faces: { regular: regular.buffer, bold: bold.buffer } });
  } else if ("make" in data) {
    try {
      await make(data.make);
    } catch (fault) {
      tell({ refusal: `the document could not be made: ${(fault as Error).message}` });
    }
  } else {
    const sheet = drawn[data.show];
    if (sheet) tell({ sheet: data.show, picture: pictureOfSheet(sheet) });
  }
};
