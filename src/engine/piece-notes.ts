/** What stands on a pattern piece for whoever cuts it: its name, how many, of what cloth, for whom and of which day. */
import type { Shape } from "../../functions/drawing/shapes.ts";
import { pieceArea } from "../../functions/pieces/piece.ts";
import type { Place } from "../book/address.ts";
import { lookUp } from "../book/names.ts";
import type { Engine } from "./engine.ts";

/** The names that say whom a book is drawn for and on which day, where it has them. */
export const WEARER = "wearer";
const DAY = "today";

/** A column of a cut list by its heading; common practice names them so. */
const HEADINGS = {
  many: /^(how many|quantity|number|cut)$/i,
  pair: /\bpairs?\b/i,
  fold: /\bfold\b/i,
  cloth: /^(cloth|fabric|material)\b/i,
  wearer: /^(wearer|role)$/i,
} as const;

/** Lines of words, the piece's name first. `title` is what the piece is called where the cell has no name. */
export function pieceNotes(engine: Engine, place: Place, title: string): string[] {
  const cut = cutRow(engine, place);
  const shown = (name: string): string => {
    const at = lookUp(engine.book, name, place.page);
    const view = at && engine.view(at);
    return view && !view.problem ? view.shown : "";
  };
  const whose = [wearerBeside(engine, place) ?? shown(WEARER), shown(DAY)].filter(Boolean).join(", ");
  return [title, ...(cut ? cutWords(cut) : []), whose].filter(Boolean);
}

/** The wearer of a garment that stands in a table, one wearer a row; null on a page without such a column. */
function wearerBeside(engine: Engine, { page, row }: Place): string | null {
  const column = engine.book.pages[page]!.columns.findIndex(({ heading }) =>
    HEADINGS.wearer.test(heading.trim()),
  );
  return column < 0 ? null : engine.view({ page, row, column }).shown;
}

interface CutRow {
  readonly many: string;
  readonly pair: boolean;
  readonly fold: boolean;
  readonly cloth: string;
}

function cutWords({ many, pair, fold, cloth }: CutRow): string[] {
  if (many === "") return [cloth];
  const how = [pair ? "mirrored in pairs" : "", fold ? "on the fold" : ""].filter(Boolean).join(", ");
  return [`cut ${many}${how && `, ${how}`}`, cloth];
}

/** The first row of a cut list whose outline is this piece. */
function cutRow(engine: Engine, place: Place): CutRow | null {
  const value = engine.value(place);
  for (const [page, { columns, rows }] of engine.book.pages.entries()) {
    const column = (heading: RegExp) => columns.findIndex((one) => heading.test(one.heading?.trim() ?? ""));
    const many = column(HEADINGS.many);
    if (many < 0) continue;
    for (const [row, cells] of rows.entries()) {
      if (!cells.some((_, at) => engine.value({ page, row, column: at }) === value)) continue;
      const text = (at: number): string =>
        at < 0 ? "" : engine.view({ page, row, column: at }).shown.trim();
      const yes = (at: number): boolean => /^(yes|true|y|1)$/i.test(text(at));
      return {
        many: text(many),
        pair: yes(column(HEADINGS.pair)),
        fold: yes(column(HEADINGS.fold)),
        cloth: text(column(HEADINGS.cloth)),
      };
    }
  }
  return null;
}

/** The shapes of a piece's drawing with these lines written in its outline, the largest that is not there for context. */
export function withNotes(shapes: readonly Shape[], notes: readonly string[]): readonly Shape[] {
  const outlines = shapes.flatMap((shape) => (shape.kind === "outline" && !shape.context ? [shape] : []));
  const main = outlines.toSorted((a, b) => pieceArea(b.piece) - pieceArea(a.piece))[0];
  return main
    ? shapes.map((shape) => (shape === main ? { ...main, label: notes.join("\n") } : shape))
    : shapes;
}
