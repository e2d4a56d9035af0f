/** The lines written on a pattern piece for the cutter: its name, how many to cut, the cloth, the wearer and the day. */
import { headingText } from "../../functions/block.ts";
import type { Shape } from "../../functions/drawing/shapes.ts";
import { pieceArea } from "../../functions/pieces/piece.ts";
import { isWearerHeading } from "../../functions/wearers/chart.ts";
import type { Place } from "../book/address.ts";
import { lookUp } from "../book/names.ts";
import { type CutRow, cutRows } from "./cut-rows.ts";
import type { Engine } from "./engine.ts";

/** The names that say whom a book is drawn for and on which day, where it has them. */
export const WEARER = "wearer";
const DAY = "today";

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
  const shown = (name: string): string => {
    const at = lookUp(engine.book, name, place.page);
    const view = at && engine.view(at);
    return view && !view.problem ? view.shown : "";
  };
  const day = shown(DAY);
  const called = calledIn(cut) || title;
  if (cut.length > 1) {
    const lines = cut.map((one) => {
      const whose = wearerBeside(engine, one) ?? "";
      return `${one.called || title}: ${[...cutWords(one), whose].filter(Boolean).join(", ")}`;
    });
    const whose = cut.some((one) => wearerBeside(engine, one)) ? "" : shown(WEARER);
    return [called, ...lines, [whose, day].filter(Boolean).join(", ")].filter(Boolean);
  }
  const whose = [wearerBeside(engine, cut[0] ?? place) ?? wearerBeside(engine, place) ?? shown(WEARER), day]
    .filter(Boolean)
    .join(", ");
  return [called, ...(cut[0] ? cutWords(cut[0]) : []), whose].filter(Boolean);
}

/** What the rows call their piece, each name once; "" where none has a name. */
export const calledIn = (rows: readonly CutRow[]): string =>
  [...new Set(rows.map(({ called }) => called).filter(Boolean))].join(", ");

/** The wearer named in the row of a garment. Returns null on a page without a column of wearers. */
function wearerBeside(engine: Engine, { page, row }: Pick<Place, "page" | "row">): string | null {
  const column = engine.book.pages[page]!.columns.findIndex(({ heading }) =>
    isWearerHeading(headingText(heading)),
  );
  return column < 0 ? null : engine.view({ page, row, column }).shown;
}

function cutWords({ many, pair, fold, cloth }: CutRow): string[] {
  if (many === "") return [cloth];
  const how = [pair ? "mirrored in pairs" : "", fold ? "on the fold" : ""].filter(Boolean).join(", ");
  return [`cut ${many}${how && `, ${how}`}`, cloth];
}

/** The shapes of a piece's drawing with these lines written in its outline, the largest that is not there for context. */
export function withNotes(shapes: readonly Shape[], notes: readonly string[]): readonly Shape[] {
  const outlines = shapes.flatMap((shape) => (shape.kind === "outline" && !shape.context ? [shape] : []));
  const main = outlines.toSorted((a, b) => pieceArea(b.piece) - pieceArea(a.piece))[0];
  return main
    ? shapes.map((shape) => (shape === main ? { ...main, label: notes.join("\n") } : shape))
    : shapes;
}
