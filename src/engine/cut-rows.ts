/** The rows of a book's cut lists that have a piece: what is cut, how often, of what cloth. */
import { headingText } from "../../functions/block.ts";
import { cutListColumns } from "../../functions/cutting/cut-list-block.ts";
import { rememberWithObjects } from "../../functions/memo.ts";
import { isFormula } from "../book/formula.ts";
import type { Engine } from "./engine.ts";
import { type Area, isIn } from "./references.ts";
import { sewnPieces } from "./sewn-pieces.ts";

export interface CutRow {
  readonly page: number;
  readonly row: number;
  /** What the list calls the piece; "" when the list gives no name. */
  readonly called: string;
  /** How many to cut, as shown; "" when the cell is blank. */
  readonly many: string;
  readonly pair: boolean;
  readonly fold: boolean;
  readonly cloth: string;
  /** The pieces of the row as text: several when other columns hold pieces too, and an empty list when the piece has an error. */
  readonly outlines: readonly string[];
  /** The formulas of the row without "=", in small letters: "skirt_cut" in a row that shows a piece of another cell. */
  readonly shown: readonly string[];
}

const isPiece = (value: unknown): value is string =>
  typeof value === "string" && /^\s*M[\s\d.+-]/i.test(value);

/** The drawing of each piece of one revision asks for the same rows. */
const rowsOf = rememberWithObjects<readonly CutRow[]>();

/**
 * Every row of a list whose headings, those of the page's columns or of the list's own first row, say how many to
 * cut. A list with headings of its own ends where a row has neither a piece nor a number to cut. The rows of a list of
 * pieces that seams are measured on are left out, because their outlines have no allowances.
 */
export const cutRows = (engine: Engine): readonly CutRow[] =>
  rowsOf([engine, engine.book], "", () => readCutRows(engine));

function readCutRows(engine: Engine): CutRow[] {
  const found: CutRow[] = [];
  let sewn: readonly Area[] | undefined;
  for (const [page, { columns, rows }] of engine.book.pages.entries()) {
    const ofPage = cutListColumns(columns.map(({ heading }) => headingText(heading ?? "")));
    let list = ofPage;
    for (const [row, cells] of rows.entries()) {
      const headings = cells.map((text) => (isFormula(text) ? "" : headingText(text)));
      // Headings within the page: "how many" in a cell of its own, beside another heading of a cut list.
      const within = cutListColumns(headings);
      if (within && within.size >= 2) {
        list = within;
        continue;
      }
      if (!list) continue;
      const values = cells.map((_, column) => engine.value({ page, row, column }));
      const outlines = values.filter(isPiece);
      const hasPiece =
        outlines.length > 0 || cells.some((_, column) => engine.kinds.of({ page, row, column }) === "piece");
      if (!hasPiece) {
        const count = values[list.get("quantities")!];
        const isOver =
          list !== ofPage && cells.some((text) => text.trim() !== "") && typeof count !== "number";
        if (isOver) list = ofPage;
        continue;
      }
      sewn ??= sewnPieces(engine.book);
      if (sewn.some((area) => cells.some((_, column) => isIn(area, { page, row, column })))) continue;
      const columnOf = list;
      const text = (role: "names" | "quantities" | "pairs" | "folds" | "cloths"): string => {
        const column = columnOf.get(role);
        return column === undefined || isPiece(values[column])
          ? ""
          : engine.view({ page, row, column }).shown.trim();
      };
      const yes = (role: "pairs" | "folds"): boolean => /^(yes|true|y|1)$/i.test(text(role));
      found.push({
        ...{ page, row, outlines, called: text("names"), many: text("quantities") },
        ...{ pair: yes("pairs"), fold: yes("folds"), cloth: text("cloths") },
        shown: cells.filter(isFormula).map((formula) => formula.slice(1).trim().toLowerCase()),
      });
    }
  }
  return found;
}

/** Whether a row says that something is cut: a row without a number, or with 0, cuts nothing. */
export const cutsSome = ({ many }: CutRow): boolean => many !== "" && many !== "0";
