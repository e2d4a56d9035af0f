/** The pattern pieces of a book, each once, with what is drawn on them: for paper. */

import { grainDrawn } from "../../functions/drawing/grain-line.ts";
import { outline, type Shape } from "../../functions/drawing/shapes.ts";
import { type Piece, readPiece, writePiece } from "../../functions/pieces/piece.ts";
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { nameFor } from "../book/names.ts";
import { type CutRow, cutRows, cutsSome } from "./cut-rows.ts";
import { drawnAt } from "./drawn.ts";
import type { Engine } from "./engine.ts";
import { calledIn, pieceNotes, whoseIs } from "./piece-notes.ts";
import { remarksOf } from "./remarks.ts";
import type { CellView } from "./view.ts";

export interface FoundPiece {
  readonly place: Place;
  readonly address: string;
  readonly name: string | undefined;
  /** The name, with its page where several pages have it, or for a cell without one the words at the beginning of its row, or its address. */
  readonly title: string;
  /** What the cut list calls the piece; else its title. */
  readonly called: string;
  /** The wearer it is for; "" when nothing says. */
  readonly whose: string;
  /** Whether a cut list says how many of it to cut. */
  readonly isToCut: boolean;
  /** Whether its lines for the cutter say how many to cut, if only "0". */
  readonly saysHowMany: boolean;
  readonly piece: Piece;
  /** The lines written on the piece for the cutter, its title first. */
  readonly notes: readonly string[];
  /** What should be checked before it is cut, in sentences: something unusual, or an estimate that it rests on. */
  readonly remarks: readonly string[];
  /** The outline, and what the page draws on it; no dimensions. */
  readonly shapes: readonly Shape[];
}

/** A cell that should hold a piece and does not. */
export interface LostPiece {
  readonly place: Place;
  readonly address: string;
  readonly title: string;
  readonly sentence: string;
}

/** All pieces of the book, named ones first. A cell that only shows another piece once more is left out. */
export function piecesOf(engine: Engine): {
  readonly found: FoundPiece[];
  readonly lost: LostPiece[];
  /** Whether a cut list of the book cuts pieces, even if none of them can be drawn. */
  readonly hasCutList: boolean;
} {
  const seen = new Set<string>();
  const found: FoundPiece[] = [];
  const lost: LostPiece[] = [];
  const rows = cutRows(engine);
  const toCut = rows.filter(cutsSome);
  for (const { place, view } of namedFirst(engine)) {
    const { value, kind, name, problem } = view;
    const address = engine.address(place);
    const title = nameFor(engine.book, place, null) ?? rowTitle(engine, place) ?? address;
    if (problem?.is === "error") {
      const begins = engine.address(problem.from) === address;
      if (kind === "piece" && (name !== undefined || begins))
        lost.push({ place, address, title, sentence: problem.sentence });
      continue;
    }
    if (problem?.is === "pending" && kind === "piece")
      lost.push({ place, address, title, sentence: problem.sentence });
    if (typeof value !== "string" || value.trim() === "") continue;
    if (kind !== "piece" && !/^\s*M[\s\d.-]/.test(value)) continue;
    if (name === undefined && seen.has(value)) continue;
    try {
      const piece = readPiece(value);
      const notes = pieceNotes(engine, place, title, rows);
      const cut = rows.filter(({ outlines }) => outlines.includes(value));
      const called = calledIn(cut) || title;
      const whose = whoseIs(engine, place, cut[0]);
      const isToCut = toCut.some(({ outlines }) => outlines.includes(value));
      const saysHowMany = cut.some(({ many }) => many !== "");
      const remarks = remarksOf(engine, place);
      const shapes = onPaper(engine, place, piece);
      const inPrint = { isToCut, saysHowMany, notes, remarks, shapes };
      found.push({ place, address, name, title, called, whose, piece, ...inPrint });
      seen.add(value);
    } catch (reason) {
      if (kind === "piece") lost.push({ place, address, title, sentence: (reason as Error).message });
    }
  }
  return { found: withoutTwins(found, toCut), lost, hasCutList: toCut.length > 0 };
}

/** Of pieces of the same outline only one is to be cut: that which the list refers to, else the first. */
function withoutTwins(found: readonly FoundPiece[], toCut: readonly CutRow[]): FoundPiece[] {
  const shown = new Set(toCut.flatMap((row) => row.shown));
  const isShown = ({ title, address }: FoundPiece) =>
    shown.has(title.toLowerCase()) || shown.has(address.toLowerCase());
  const first = new Map<string, FoundPiece>();
  for (const one of found) {
    if (!one.isToCut) continue;
    const outline = writePiece(one.piece);
    const before = first.get(outline);
    if (!before || (isShown(one) && !isShown(before))) first.set(outline, one);
  }
  const kept = new Set(first.values());
  return found.map((one) => (one.isToCut && !kept.has(one) ? { ...one, isToCut: false } : one));
}

function namedFirst(engine: Engine): { readonly place: Place; readonly view: CellView }[] {
  const cells = engine.book.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cellsOfRow, row) =>
      cellsOfRow.map((_, column) => {
        const place = { page, row, column };
        return { place, view: engine.view(place) };
      }),
    ),
  );
  return [
    ...cells.filter(({ view }) => view.name !== undefined),
    ...cells.filter(({ view }) => view.name === undefined),
  ];
}

function rowTitle(engine: Engine, { page, row, column }: Place): string | null {
  const text = engine.book.pages[page]!.rows[row]![0]!.trim();
  return column > 0 && text !== "" && !isFormula(text) ? text : null;
}

/** What the page draws of the piece, without dimensions. */
function onPaper(engine: Engine, place: Place, piece: Piece): Shape[] {
  const drawn = drawnAt(engine, place);
  const shapes = drawn?.isOfValue
    ? drawn.shapes.filter((shape) => shape.kind !== "outline" || !shape.context)
    : outline(piece);
  if (!shapes.some((shape) => shape.kind === "edge" && shape.role === "grain"))
    shapes.push(grainDrawn(piece));
  return shapes.filter(({ kind }) => kind !== "dimension" && kind !== "angle");
}
