/**
 * The grid on the screen: Handsontable as a view that holds no truth. It reads the engine for what
 * it shows, turns every change into a command, and follows the store at once, outside React.
 */
import "./plugins.ts";
import Handsontable from "handsontable/base";
import type { Block, Place } from "../../book/address.ts";
import { type Column, MOST_COLUMNS, MOST_ROWS, type Page } from "../../book/shape.ts";
import type { CellView } from "../../engine/view.ts";
import { isKeyboardFree } from "../keyboard.ts";
import { Arrangement } from "./arrangement.ts";
import type { EditSession, ShownGrid } from "./edit-session.ts";
import { nameTable } from "./paint.ts";
import { Painting } from "./painting.ts";
import { settings } from "./settings.ts";
import { rowsShown, shape } from "./shown-size.ts";
import { blockEnd, TabRun } from "./steps-of-keys.ts";

const BLANK_PAGE: Page = { title: "", stage: "Draft", columns: [], rows: [], notes: {} };

const isField = (focused: Element | null): boolean =>
  focused instanceof HTMLInputElement || focused instanceof HTMLTextAreaElement;

export class GridView implements ShownGrid {
  readonly #hot: Handsontable;
  readonly #session: EditSession;
  readonly #onPlace: (place: Place) => void;
  readonly #off: (() => void)[];
  #columns: readonly Column[];
  readonly #arrangement = new Arrangement();
  readonly run = new TabRun();
  #inBar = false;
  /** The block that was drawn as cut. */
  #cut: Block | null = null;
  /** True while another page is put up: the library then chooses the old page's cell once more. */
  #turning = false;
  readonly #painting: Painting;
  /** Which of the books that were opened one after the other is on the screen. */
  readonly #openings: number;

  constructor(root: HTMLElement, session: EditSession, place: Place, onPlace: (place: Place) => void) {
    this.#session = session;
    this.#openings = session.store.openings;
    this.#painting = new Painting(session, place.page);
    this.#onPlace = onPlace;
    this.#columns = this.page.columns;
    const { tall, wide } = this.#size();
    this.#hot = new Handsontable(root, {
      ...settings(this, session),
      data: shape(tall, wide),
      fixedColumnsStart: this.#arrangement.begin(this.page, wide),
    });
    this.#arrange(true);
    nameTable(this.#hot, this.page.title);
    root.addEventListener("focusin", this.#onFocus);
    if (isKeyboardFree()) this.take(place);
    else this.select(place);
    this.#off = [
      () => root.removeEventListener("focusin", this.#onFocus),
      session.store.subscribe(() => this.#follow()),
      session.subscribe(() => this.#followBar()),
    ];
  }

  destroy(): void {
    for (const off of this.#off) off();
    this.#hot.destroy();
  }

  get hot(): Handsontable {
    return this.#hot;
  }

  get index(): number {
    return this.#painting.page;
  }

  get page(): Page {
    return this.#session.store.shown.pages[this.index] ?? BLANK_PAGE;
  }

  #size() {
    return { tall: rowsShown(this.page.rows.length), wide: Math.max(1, this.page.columns.length) };
  }

  place(row: number, column: number): Place {
    return { page: this.index, row: Math.max(row, 0), column: Math.max(column, 0) };
  }

  view(row: number, column: number): CellView {
    return this.#painting.view(row, column);
  }

  draftAt(row: number, column: number): string | null {
    return this.#painting.draftAt(row, column);
  }

  draw(td: HTMLElement, row: number, column: number): void {
    this.#painting.draw(td, row, column);
  }

  #paint(): void {
    this.#painting.paint(this.#hot, this.#arrangement.frozen);
  }

  /** Arranges frozen columns and hidden rows as the page says; true when the grid was drawn. */
  #arrange(anew: boolean): boolean {
    if (!this.#arrangement.apply(this.#hot, this.page, anew)) return false;
    this.#hot.render();
    nameTable(this.#hot, this.page.title);
    return true;
  }

  /** The page makes a grid of its own for each book that is opened. The grid of the book before may still hear of changes, off the page, where it cannot be drawn. */
  #isGone(): boolean {
    return this.#hot.isDestroyed || this.#session.store.openings !== this.#openings;
  }

  #follow(): void {
    if (this.#isGone()) return;
    this.#painting.forget();
    if (!this.#session.store.shown.pages[this.index]) return;
    const { tall, wide } = this.#size();
    const before = this.#columns;
    this.#columns = this.page.columns;
    if (this.#hot.countSourceRows() !== tall || this.#hot.countSourceCols() !== wide) {
      this.#hot.updateData(shape(tall, wide));
      this.#arrange(true);
      nameTable(this.#hot, this.page.title);
    } else if (this.#arrange(false)) return;
    else if (before !== this.#columns) this.#hot.render();
    else this.#paint();
  }

  #followBar(): void {
    if (this.#isGone()) return;
    const inBar = this.#session.draft?.where === "bar";
    const cut = this.#session.cutBlock;
    if (inBar || this.#inBar || cut !== this.#cut) this.#paint();
    this.#inBar = inBar;
    this.#cut = cut;
  }

  /** Shows another page, or another place of this one. */
  turnTo(place: Place): void {
    if (place.page !== this.index) {
      this.#session.leave();
      this.#painting.page = place.page;
      this.#painting.forget();
      this.#columns = this.page.columns;
      const { tall, wide } = this.#size();
      this.#turning = true;
      this.#hot.updateData(shape(tall, wide));
      this.#arrange(true);
      nameTable(this.#hot, this.page.title);
      // The page before may be slid far away, and a selected cell in a column that is kept in sight slides nothing back.
      this.#hot.scrollViewportTo({
        row: 0,
        col: this.#arrangement.frozen,
        verticalSnap: "top",
        horizontalSnap: "start",
      });
      this.select(place);
      this.#turning = false;
      // An unfinished formula keeps the keyboard: cells of this page can be pointed at.
      if (this.#session.draft?.where === "bar") this.#session.resume();
      else this.take(place, true);
      return;
    }
    // Rows and columns selected by their heads begin at -1, and stay selected.
    const { row, column } = this.chosen();
    if (!this.#hot.getSelectedLast() || row !== place.row || column !== place.column) this.select(place);
  }

  /** Marks a cell without taking the keyboard. */
  select({ row, column }: Place): void {
    const { tall, wide } = this.#size();
    this.#hot.selectCell(
      Math.min(row, tall - 1),
      Math.min(column, wide - 1),
      undefined,
      undefined,
      true,
      false,
    );
  }

  selectBlock(block: Block): void {
    this.#hot.selectCell(block.top, block.left, block.bottom, block.right, false);
  }

  /** Marks what a right click there marks: the cell, the row or the column of an element; what is marked already stays. */
  chooseAt(element: Element): void {
    const cell = element.closest("td, th");
    const at = cell && this.#hot.getCoords(cell as HTMLTableCellElement);
    if (!at || at.row === null || at.col === null) return;
    const { row, col } = at;
    const block = this.block();
    const isWithin = (one: number, from: number, to: number) => one >= from && one <= to;
    if (block && isWithin(row, block.top, block.bottom) && isWithin(col, block.left, block.right)) return;
    if (row < 0 && col >= 0) this.#hot.selectColumns(col);
    else if (col < 0 && row >= 0) this.#hot.selectRows(row);
    else if (row >= 0 && col >= 0) this.#hot.selectCell(row, col);
  }

  /**
   * Marks a cell and gives the grid the keyboard. Late, because the library lets go of the keyboard at
   * each click outside itself, and the click that led here has yet to reach it. With `unlessTyping` a
   * field that has the keyboard by then keeps it: the title of a page just added, for one.
   */
  take({ row, column }: Place, unlessTyping = false): void {
    setTimeout(() => {
      if (this.#hot.isDestroyed || (unlessTyping && isField(document.activeElement))) return;
      const { tall, wide } = this.#size();
      this.#hot.selectCell(Math.min(Math.max(row, 0), tall - 1), Math.min(Math.max(column, 0), wide - 1));
      this.#hot.getFocusScopeManager().activateScope("grid");
      this.#hot.listen();
    });
  }

  /** Gives the grid the keyboard at the chosen cell; the selection stays. */
  takeBack(): void {
    this.#hot.getFocusScopeManager().activateScope("grid");
    this.#hot.listen();
    this.#hot.getFocusManager().focusOnHighlightedCell();
  }

  /** Goes to the end of the block of filled cells, or extends the selection to it. */
  goFar(down: -1 | 0 | 1, across: -1 | 0 | 1, longer: boolean): void {
    const range = this.#hot.getSelectedLast();
    if (!range) return;
    const [top, left, row, column] = range.map((line) => Math.max(line, 0)) as [
      number,
      number,
      number,
      number,
    ];
    const end = longer ? this.place(row, column) : this.chosen();
    const to = blockEnd(this.#session.store.shown, end, down, across, this.#size());
    if (longer) this.#hot.selectCell(top, left, to.row, to.column);
    else this.#hot.selectCell(to.row, to.column);
  }

  /** A key before the library hears it: Tab begins a run along the row. True when Enter led back to where the run began. */
  endsRun(event: KeyboardEvent): boolean {
    const { row, column } = this.chosen();
    if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.isComposing) return false;
    const typing = this.#hot.getActiveEditor()?.isOpened() === true;
    if (event.key === "Tab") this.run.tab(row, column, typing && column === this.#hot.countCols() - 1);
    if (event.key !== "Enter" || typing) return false;
    const start = this.run.startFor(row, column);
    if (start === null) return false;
    this.#hot.selectCell(row + 1, start);
    return true;
  }

  /** Where a cell is on the screen; null for one of another page, or one that is scrolled out of sight. */
  boxOf({ page, row, column }: Place): DOMRect | null {
    if (page !== this.index) return null;
    return this.#hot.getCell(row, column, true)?.getBoundingClientRect() ?? null;
  }

  /** Opens the editor of the chosen cell, with its choices. */
  edit(): void {
    const editor = this.#hot.getActiveEditor();
    editor?.enableFullEditMode();
    editor?.beginEditing();
  }

  /** Ends what is being typed in a cell, as Enter would. */
  finish(): void {
    this.#hot.getActiveEditor()?.finishEditing();
  }

  /** Closes the editor of a cell without typing its text into the book. */
  closeEditor(): void {
    this.#hot.getActiveEditor()?.finishEditing(true);
  }

  /** Leaves the keyboard to another field. */
  leave(): void {
    this.#session.leave();
    this.#hot.unlisten();
  }

  /** The grid hears keys whenever one of its cells or a cell's editor has the focus, however the focus came there. */
  readonly #onFocus = ({ target }: FocusEvent): void => {
    const typing = target instanceof HTMLTextAreaElement && this.#hot.getActiveEditor()?.isOpened();
    if (this.#hot.isListening() || !(typing || target instanceof HTMLTableCellElement)) return;
    this.#hot.getFocusScopeManager().activateScope("grid");
    this.#hot.listen();
    if (typing) this.#hot.getShortcutManager().setActiveContextName("editor");
  };

  /** The chosen block, both corners included. */
  block(): Block | null {
    const range = this.#hot.getSelectedRangeLast();
    if (!range) return null;
    const [from, to] = [range.getTopStartCorner(), range.getBottomEndCorner()];
    return {
      page: this.index,
      top: Math.max(from.row ?? 0, 0),
      left: Math.max(from.col ?? 0, 0),
      bottom: Math.max(to.row ?? 0, 0),
      right: Math.max(to.col ?? 0, 0),
    };
  }

  /** The selected cell: of a block, the one it was begun at. */
  chosen(): Place {
    const [row = 0, column = 0] = this.#hot.getSelectedLast() ?? [];
    return this.place(row, column);
  }

  /** Whether whole rows or whole columns were chosen by their heads. */
  get wholly(): "rows" | "columns" | null {
    const { selection } = this.#hot;
    return selection.isSelectedByRowHeader()
      ? "rows"
      : selection.isSelectedByColumnHeader()
        ? "columns"
        : null;
  }

  /** Where the chosen cell ends on the screen: its lower left corner. */
  corner(): readonly [number, number] {
    const [row = 0, column = 0] = this.#hot.getSelectedLast() ?? [];
    const box = (
      this.#hot.getCell(Math.max(row, 0), Math.max(column, 0)) ?? this.#hot.rootElement
    ).getBoundingClientRect();
    return [box.left + 8, box.bottom];
  }

  chose(row: number, column: number): void {
    if (this.#turning) return;
    const block = this.block();
    const whole = {
      columns: { top: 0, bottom: MOST_ROWS - 1 },
      rows: { left: 0, right: MOST_COLUMNS - 1 },
    };
    this.#session.selected = block && { ...block, ...(this.wholly && whole[this.wholly]) };
    this.#onPlace(this.place(row, column));
  }
}
