/** The lines written on a pattern piece for the cutter: its name, how many to cut, the cloth, the wearer, the day, the version and the layers worn beneath. */

import { headingText } from "../../functions/block.ts";
import type { Shape } from "../../functions/drawing/shapes.ts";
import { phrase } from "../../functions/phrase.ts";
import { pieceArea } from "../../functions/pieces/piece.ts";
import { isLayersHeading, isWearerHeading } from "../../functions/wearers/chart.ts";
import { layersIn, layersText } from "../../functions/wearers/layer-set.ts";
import type { Place } from "../book/address.ts";
import { lookUp } from "../book/names.ts";
import { versionText } from "../book/version.ts";
import { type CutRow, cutRows } from "./cut-rows.ts";
import type { Engine } from "./engine.ts";
import { layersCell, WEARER } from "./wearer-cell.ts";

/** The name of the day of the draft, where a book has one. */
export const DAY = "today";

/**
 * The lines for a piece: first its name in the cut list, then how it is cut. When several rows cut the piece, there
 * is a line for each row. `title` is the name of a piece that no list names.
 */
export function pieceNotes(
  engine: Engine,
  place: Place,
  title: string,
  rows: readonly CutRow[] = cutRows(engine),
): string[] {
  const value = engine.value(place);
  const cut = rows.filter(({ outlines }) => outlines.some((outline) => outline === value));
  const shown = (name: string): string => shownAt(engine, lookUp(engine.book, name, place.page));
  const when = [shown(DAY), versionText(engine.book.title)];
  const called = calledIn(cut) || title;
  if (cut.length > 1) {
    const lines = cut.map((one) => {
      const whose = wearerBeside(engine, one) ?? "";
      return `${one.called || title}: ${[...cutWords(one), whose].filter(Boolean).join(", ")}`;
    });
    const whose = cut.some((one) => wearerBeside(engine, one)) ? "" : shown(WEARER);
    const [over, other] = new Set(cut.map((one) => layersBeside(engine, one) || layersBeside(engine, place)));
    return [called, ...lines, joined(whose, ...when), other === undefined ? over! : ""].filter(Boolean);
  }
  const over = [cut[0] ?? place, place].map((at) => layersBeside(engine, at)).find(Boolean) ?? "";
  return [
    called,
    ...(cut[0] ? cutWords(cut[0]) : []),
    joined(whoseIs(engine, place, cut[0]), ...when),
    over,
  ].filter(Boolean);
}

/** Whose a piece is that a row of a cut list cuts: the wearer in that row, or beside the piece, or of its page; "" when nothing says. */
export function whoseIs(engine: Engine, place: Place, cut: CutRow | undefined): string {
  const beside = (cut && wearerBeside(engine, cut)) ?? wearerBeside(engine, place);
  return beside ?? shownAt(engine, lookUp(engine.book, WEARER, place.page));
}

function shownAt(engine: Engine, at: Place | null): string {
  const view = at && engine.view(at);
  return view && !view.problem ? view.shown : "";
}

const joined = (...parts: readonly string[]): string => parts.filter(Boolean).join(", ");

/** What the rows call their piece, each name once; "" where none has a name. */
export const calledIn = (rows: readonly CutRow[]): string =>
  [...new Set(rows.map(({ called }) => called).filter(Boolean))].join(", ");

type RowAt = Pick<Place, "page" | "row">;

/** What the row of a garment shows in the column with such a heading. Returns null on a page without this column. */
function shownBeside(engine: Engine, { page, row }: RowAt, isHeading: (heading: string) => boolean) {
  const column = engine.book.pages[page]!.columns.findIndex(({ heading }) => isHeading(headingText(heading)));
  return column < 0 ? null : engine.view({ page, row, column }).shown;
}

/** The wearer named in the row of a garment. Returns null on a page without a column of wearers. */
const wearerBeside = (engine: Engine, at: RowAt): string | null => shownBeside(engine, at, isWearerHeading);

/** "over shift and stays": the layers in the row of a garment, else those for which its page takes figures from the chart; "" when neither says. */
function layersBeside(engine: Engine, at: RowAt): string {
  const layers = shownBeside(engine, at, isLayersHeading);
  return layers === null ? layersOn(engine, at.page) : overText(layers);
}

/** The layers for which a page takes figures from the chart, in the same words. */
export const layersOn = (engine: Engine, page: number): string =>
  overText(shownAt(engine, layersCell(engine.book, page)));

const overText = (layers: string): string =>
  layers.trim() === "" ? "" : phrase`over ${layersText(layersIn(layers))}`;

function cutWords({ many, pair, fold, cloth }: CutRow): string[] {
  if (many === "") return [cloth];
  const both = pair && fold;
  const how = both
    ? phrase`cut ${many}, mirrored in pairs, on the fold`
    : pair
      ? phrase`cut ${many}, mirrored in pairs`
      : fold
        ? phrase`cut ${many}, on the fold`
        : phrase`cut ${many}`;
  return [how, cloth];
}

/** The shapes of a piece's drawing with these lines written in its outline, the largest that is not there for context. */
export function withNotes(shapes: readonly Shape[], notes: readonly string[]): readonly Shape[] {
  const outlines = shapes.flatMap((shape) => (shape.kind === "outline" && !shape.context ? [shape] : []));
  const main = outlines.toSorted((a, b) => pieceArea(b.piece) - pieceArea(a.piece))[0];
  return main
    ? shapes.map((shape) => (shape === main ? { ...main, label: notes.join("\n") } : shape))
    : shapes;
}
