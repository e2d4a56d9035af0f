/** The worker's own file for documents: the book is calculated here, so that the page stays free. */
import "../../worker/alive.ts";
import "../../engine/all-functions.ts";
import type { Place } from "../../book/address.ts";
import { Engine } from "../../engine/engine.ts";
import { piecesOf } from "../../engine/pieces.ts";
import { layDesk } from "../../lay/desk.ts";
import { typeFaces } from "../../paper/document.ts";
import { laidOut } from "../../paper/documents.ts";
import type { PaperRequest } from "../../paper/kinds.ts";
import type { DrawnSheet } from "../../paper/marks.ts";
import { reasonOf } from "../faults/in-time.ts";
import { doubtsOn } from "./doubts.ts";
import { mapsOf } from "./page-map.ts";
import type { PieceOffer, PrintNews, PrintOrder } from "./protocol.ts";
import { pictureOfSheet } from "./sheet-picture.ts";

let engine: Engine | null = null;
let chosenCell = "";
let pieces: readonly PieceOffer[] = [];
let drawn: readonly DrawnSheet[] = [];

const tell = (news: PrintNews, transfer: Transferable[] = []) => self.postMessage(news, { transfer });

function offers(of: Engine, chosen: Place): PieceOffer[] {
  const { value } = of.view(chosen);
  return piecesOf(of).found.map(({ name, title, called, isToCut, address, place }) => ({
    title: name ?? title,
    called: called === title ? (name ?? title) : called,
    isToCut,
    address,
    page: place.page,
    isChosen: of.view(place).value === value,
  }));
}

async function make(request: PaperRequest): Promise<void> {
  // The chosen cell may only show a piece that stands in another cell.
  const named = request.pieces?.map((name) =>
    name === chosenCell ? (pieces.find(({ isChosen }) => isChosen)?.address ?? name) : name,
  );
  const laid = await laidOut(engine!, { ...request, ...(named && { pieces: named }) });
  if ("reason" in laid) return tell({ refusal: laid.reason });
  const { print, ...known } = laid;
  tell({ laid: known });
  const made = await print((count) => tell({ drawn: count }));
  drawn = made.drawn;
  const { bytes } = made;
  const doubts = [...made.sentences, ...doubtsOn(drawn)];
  tell({ made: { ...known, sentences: doubts, bytes, maps: mapsOf(drawn) } }, [bytes.buffer]);
}

async function hear(order: PrintOrder): Promise<void> {
  if ("book" in order) {
    engine = new Engine(order.book, layDesk);
    chosenCell = engine.address(order.chosen);
    pieces = offers(engine, order.chosen);
    tell({ pieces });
    const { regular, bold } = await typeFaces();
    tell({ faces: { regular: regular.buffer, bold: bold.buffer } });
  } else if ("make" in order) await make(order.make);
  else {
    const sheet = drawn[order.show];
    if (sheet) tell({ sheet: order.show, picture: pictureOfSheet(sheet) });
  }
}

self.onmessage = ({ data }: MessageEvent<PrintOrder>) =>
  hear(data).catch((fault) => tell({ fault: reasonOf(fault) }));
