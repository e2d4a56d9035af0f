/** Puts the cells of one page on the screen, as the engine has them and the session is changing them. */
import type Handsontable from "handsontable/base";
import { type Block, noteAt, type Place } from "../../book/address.ts";
import { estimateText } from "../../engine/estimates.ts";
import { fittedText } from "../../engine/fitted-text.ts";
import type { CellView } from "../../engine/view.ts";
import { CellViews } from "./cell-views.ts";
import type { EditSession } from "./edit-session.ts";
import { type Beside, type Looks, looksOf, sameLooks } from "./looks.ts";
import { drawCell } from "./paint.ts";

const isIn = ({ page, row, column }: Place, block: Block | null): boolean =>
  block?.page === page &&
  row >= block.top && row <= block.bottom && column >= block.left && column <= block.right; // biome-ignore format: short

export class Painting {
  readonly #session: EditSession;
  readonly #views: CellViews;
  /** How each element on the screen was drawn last. */
  readonly #drawn = new WeakMap<HTMLElement, Looks>();
  /** Which page is on the screen. */
  page: number;

  constructor(session: EditSession, page: number) {
    this.#session = session;
    this.#views = new CellViews(session.store);
    this.page = page;
  }

  view(row: number, column: number): CellView {
    return this.#views.at(this.page, row, column);
  }

  /** The book or the page is another one: what was read before is read anew. */
  forget(): void {
    this.#views.clear();
  }

  /** The draft of the bar stands in its cell while it is typed. */
  draftAt(row: number, column: number): string | null {
    const draft = this.#session.draft;
    if (draft?.where !== "bar" || draft.place.page !== this.page) return null;
    return draft.place.row === row && draft.place.column === column ? draft.text : null;
  }

  /** What the rest of the book says about a cell; a cell that can't be asked about has nothing said. */
  #elsewhere(place: Place): Pick<Beside, "said" | "estimate" | "fitted"> {
    const { engine } = this.#session.store;
    try {
      return {
        said: engine.saidOf(place),
        estimate: estimateText(engine, place),
        fitted: fittedText(engine, place),
      };
    } catch {
      return { said: [], estimate: "", fitted: "" };
    }
  }

  #looks(row: number, column: number): Looks {
    const place = { page: this.page, row, column };
    const book = this.#session.store.shown;
    return looksOf(this.view(row, column), place, book, {
      note: noteAt(book, place),
      draft: this.draftAt(row, column),
      ...this.#elsewhere(place),
      cut: isIn(place, this.#session.cutBlock),
    });
  }

  /** Draws a cell into an element in which the library has left anything. */
  draw(td: HTMLElement, row: number, column: number): void {
    const looks = this.#looks(row, column);
    drawCell(td, looks);
    this.#drawn.set(td, looks);
  }

  /** Draws a cell of which the library has changed nothing since it was drawn, where it looks otherwise now. */
  #redraw(td: HTMLElement, row: number, column: number): void {
    const looks = this.#looks(row, column);
    const before = this.#drawn.get(td);
    if (before && sameLooks(before, looks)) return;
    drawCell(td, looks, before);
    this.#drawn.set(td, looks);
  }

  /** Draws the cells on the screen that look otherwise now, and nothing else; sizes, selection and focus stay as they are. */
  paint(hot: Handsontable, frozen: number): void {
    const bottom = hot.getLastRenderedVisibleRow() ?? -1;
    const right = hot.getLastRenderedVisibleColumn() ?? -1;
    for (let row = hot.getFirstRenderedVisibleRow() ?? 0; row <= bottom; row += 1) {
      for (let column = hot.getFirstRenderedVisibleColumn() ?? 0; column <= right; column += 1) {
        const td = hot.getCell(row, column);
        if (td) this.#redraw(td, row, column);
      }
      for (let column = 0; column < frozen; column += 1) {
        const td = hot.getCell(row, column, true);
        if (td) this.#redraw(td, row, column);
      }
    }
  }
}
