/**
 * The grid on the screen: Handsontable as a view that holds no truth. It reads the engine for what
 * it shows, turns every change into a command, and follows the store at once, outside React.
 */
import Handsontable from "handsontable/base";
import { Autofill } from "handsontable/plugins/autofill";
import { HiddenRows } from "handsontable/plugins/hiddenRows";
import { ManualColumnMove } from "handsontable/plugins/manualColumnMove";
import { ManualColumnResize } from "handsontable/plugins/manualColumnResize";
import { ManualRowMove } from "handsontable/plugins/manualRowMove";
import { registerPlugin } from "handsontable/plugins/registry";
import { type Block, noteAt, type Place } from "../../book/address.ts";
import { type Column, MOST_COLUMNS, MOST_ROWS, type Page, typedAt } from "../../book/shape.ts";
import type { CellView } from "../../engine/view.ts";
import { typeCells } from "../../store/commands.ts";
import type { Command } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";
import { Arrangement } from "./arrangement.ts";
import type { EditSession, ShownGrid } from "./edit-session.ts";
import { drawnOut } from "./fill.ts";
import { drawCell, nameTable } from "./paint.ts";
import { settings } from "./settings.ts";
import { blockEnd, TabRun } from "./steps-of-keys.ts";

registerPlugin(Autofill);
registerPlugin(HiddenRows);
registerPlugin(ManualColumnMove);
registerPlugin(ManualRowMove);
registerPlugin(ManualColumnResize);

/** Blank rows below the page's own, at least; a page is shown with at least `FEWEST` rows. */
const SPARE = 10;
const FEWEST = 30;

/** How many rows are shown for a page of `rows` rows: in steps of ten, so that typing past the end seldom makes the grid anew. */
export const rowsShown = (rows: number): number =>
  Math.min(MOST_ROWS, Math.max(FEWEST, Math.ceil(rows / 10) * 10 + SPARE));

/** Only how tall and wide the page is. Frozen: a write past the hooks throws instead of becoming a second truth. */
function shape(tall: number, wide: number): null[][] {
  const row = Object.freeze(Array<null>(wide).fill(null)) as null[];
  return Array.from({ length: tall }, () => row);
}

const isIn = ({ page, row, column }: Place, block: Block | null): boolean =>
  block?.page === page &&
  row >= block.top && row <= block.bottom && column >= block.left && column <= block.right; // biome-ignore format: short

const BLANK_PAGE: Page = { title: "", stage: "Draft", columns: [], rows: [], notes: {} };

/** Whether nothing on the page has the keyboard. */
const isFree = (focused: Element | null): boolean => focused === null || focused === document.body;

const isField = (focused: Element | null): boolean =>
  focused instanceof HTMLInputElement || focused instanceof HTMLTextAreaElement;

export class GridView implements ShownGrid {
  readonly #hot: Handsontable;
  readonly #session: EditSession;
  readonly #onPlace: (place: Place) => void;
  readonly #off: (() => void)[];
  #page: number;
  #columns: readonly Column[];
  readonly #arrangement = new Arrangement();
  readonly #run = new TabRun();
  #inBar = false;
  /** The block that was drawn as cut. */
  #cut: Block | null = null;
  /** True while another page is put up: the library then chooses the old page's cell once more. */
  #turning = false;
  /** Views of cells of this page, remembered until the next revision. */
  readonly #views = new Map<number, CellView>();

  constructor(root: HTMLElement, session: EditSession, place: Place, onPlace: (place: Place) => void) {
    this.#session = session;
    this.#page = place.page;
    this.#onPlace = onPlace;
    this.#columns = this.page.columns;
    const { tall, wide } = this.#size();
    this.#hot = new Handsontable(root, { ...settings(this, session), data: shape(tall, wide) });
    this.#arrange(true);
    nameTable(this.#hot, this.page.title);
    root.addEventListener("focusin", this.#onFocus);
    if (isFree(document.activeElement)) this.take(place);
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
    return this.#page;
  }

  get page(): Page {
    return this.#session.store.shown.pages[this.#page] ?? BLANK_PAGE;
  }

  #size() {
    return { tall: rowsShown(this.page.rows.length), wide: Math.max(1, this.page.columns.length) };
  }

  place(row: number, column: number): Place {
    return { page: this.#page, row: Math.max(row, 0), column: Math.max(column, 0) };
  }

  view(row: number, column: number): CellView {
    const key = row * 1024 + column;
    let view = this.#views.get(key);
    if (!view) {
      view = this.#look({ page: this.#page, row, column });
      this.#views.set(key, view);
    }
    return view;
  }

  /** A cell that can't be looked at is an error in its own place; the others are shown. */
  #look(place: Place): CellView {
    const { engine, shown: book } = this.#session.store;
    try {
      return engine.view(place);
    } catch (fault) {
      const sentence = `this cell can't be shown (${reasonOf(fault)})`;
      return {
        typed: typedAt(book, place.page, place.row, place.column),
        shown: "error",
        value: null,
        kind: "text",
        origin: null,
        worked: true,
        problem: { is: "error", sentence, from: place },
        name: undefined,
      };
    }
  }

  /** The draft of the bar stands in its cell while it is typed. */
  draftAt(row: number, column: number): string | null {
    const draft = this.#session.draft;
    if (draft?.where !== "bar" || draft.place.page !== this.#page) return null;
    return draft.place.row === row && draft.place.column === column ? draft.text : null;
  }

  draw(td: HTMLElement, row: number, column: number): void {
    const place = { page: this.#page, row, column };
    const cut = this.#session.cutBlock;
    const book = this.#session.store.shown;
    drawCell(
      td,
      this.view(row, column),
      place,
      book,
      noteAt(book, place),
      this.draftAt(row, column),
      isIn(place, cut),
    );
  }

  /** Draws the cells that are on the screen and nothing else; sizes, selection and focus stay as they are. */
  #paint(): void {
    const hot = this.#hot;
    const bottom = hot.getLastRenderedVisibleRow() ?? -1;
    const right = hot.getLastRenderedVisibleColumn() ?? -1;
    for (let row = hot.getFirstRenderedVisibleRow() ?? 0; row <= bottom; row += 1) {
      for (let column = hot.getFirstRenderedVisibleColumn() ?? 0; column <= right; column += 1) {
        const td = hot.getCell(row, column);
        if (td) this.draw(td, row, column);
      }
      for (let column = 0; column < (this.page.frozen ?? 0); column += 1) {
        const td = hot.getCell(row, column, true);
        if (td) this.draw(td, row, column);
      }
    }
  }

  /** Arranges frozen columns and hidden rows as the page says; true when the grid was drawn. */
  #arrange(anew: boolean): boolean {
    if (!this.#arrangement.apply(this.#hot, this.page, anew)) return false;
    this.#hot.render();
    nameTable(this.#hot, this.page.title);
    return true;
  }

  #follow(): void {
    this.#views.clear();
    if (!this.#session.store.shown.pages[this.#page]) return;
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
    const inBar = this.#session.draft?.where === "bar";
    const cut = this.#session.cutBlock;
    if (inBar || this.#inBar || cut !== this.#cut) this.#paint();
    this.#inBar = inBar;
    this.#cut = cut;
  }

  /** Shows another page, or another place of this one. */
  turnTo(place: Place): void {
    if (place.page !== this.#page) {
      this.#session.leave();
      this.#page = place.page;
      this.#views.clear();
      this.#columns = this.page.columns;
      const { tall, wide } = this.#size();
      this.#turning = true;
      this.#hot.updateData(shape(tall, wide));
      this.#arrange(true);
      nameTable(this.#hot, this.page.title);
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
    if (event.key === "Tab") this.#run.tab(row, column);
    if (event.key !== "Enter" || this.#hot.getActiveEditor()?.isOpened()) return false;
    const start = this.#run.startFor(row, column);
    if (start === null) return false;
    this.#hot.selectCell(row + 1, start);
    return true;
  }

  /** Where Enter leads from a cell that was edited. */
  enterMoves(): { row: number; col: number } {
    const { row, column } = this.chosen();
    return { row: 1, col: (this.#run.startFor(row, column) ?? column) - column };
  }

  /** Where a cell is on the screen; null for one of another page, or one that is scrolled out of sight. */
  boxOf({ page, row, column }: Place): DOMRect | null {
    if (page !== this.#page) return null;
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
      page: this.#page,
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

  /** What was typed in the grid's own editor, or emptied. False: the grid keeps nothing itself. */
  change(changes: readonly (readonly [number, string | number, unknown, unknown] | null)[]): false {
    const typings = changes.flatMap((change) => {
      if (!change) return [];
      const [row, column, , text] = change;
      const typing = { page: this.#page, row, column: Number(column), typed: String(text ?? "") };
      return this.#session.isKept(typing, typing.typed) ? [] : [typing];
    });
    const first = typings[0];
    if (!first) return false;
    const single = typings.length === 1;
    const kept = this.#session.run(typeCells(typings), first, single ? first.typed : null);
    if (!kept && single) this.take(first);
    return false;
  }

  /** Moves dragged rows or columns before line `to` as one step, and chooses them where they came to. */
  drag(
    what: "rows" | "columns",
    lines: readonly number[],
    to: number | undefined,
    move: (page: number, at: number, count: number, to: number) => Command,
  ): void {
    const [at, count] = [Math.min(...lines), lines.length];
    if (to === undefined || (to >= at && to <= at + count)) return;
    const isOne = Math.max(...lines) - at + 1 === count;
    const step: Command = isOne
      ? move(this.#page, at, count, to)
      : {
          label: "move",
          edit: () => ({ refusal: `only ${what} that lie side by side can be moved together` }),
        };
    if (!this.#session.run(step, this.place(0, 0))) return;
    const first = to > at ? to - count : to;
    if (what === "rows") this.#hot.selectRows(first, first + count - 1);
    else this.#hot.selectColumns(first, first + count - 1);
  }

  /** Draws `source` out over `target` as one step. */
  fill(source: Block, target: Block): void {
    const { book } = this.#session.store;
    const whole: Block = {
      page: this.#page,
      top: Math.min(source.top, target.top),
      left: Math.min(source.left, target.left),
      bottom: Math.max(source.bottom, target.bottom),
      right: Math.max(source.right, target.right),
    };
    const step = { ...typeCells(drawnOut(book, source, target)), label: "fill cells" };
    this.#session.run(step, this.place(whole.top, whole.left));
    this.selectBlock(whole);
  }
}
