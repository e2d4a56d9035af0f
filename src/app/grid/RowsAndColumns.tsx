/** The menu of the selected cells, with rows, columns and the note: by right click, Shift+F10, or its button. */
import { phrase, plural } from "../../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters } from "../../book/address.ts";
import { hiddenRows } from "../../book/hidden-rows.ts";
import { MOST_FROZEN, type Page } from "../../book/shape.ts";
import {
  fitColumns,
  freezeColumns,
  hideRows,
  moveColumns,
  moveRows,
  showRows,
} from "../../store/arranging.ts";
import { insertColumns, insertRows, removeColumns, removeRows } from "../../store/commands.ts";
import type { Command } from "../../store/store.ts";
import { Menu } from "../menu/Menu.tsx";
import { saidIfLarge } from "../progress/large-steps.ts";
import { freezeLabel } from "./arrangement.ts";
import type { EditSession } from "./edit-session.ts";

interface Props {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
  readonly session: EditSession;
  /** Opens a form for the block. */
  readonly onForm: (form: Form) => void;
  /** The width at which a column shows all that it holds, in pixels. */
  readonly fits: (column: number) => number;
  /** Called when the menu is to close; true when the grid is to have the keyboard again. */
  readonly onDone: (back: boolean) => void;
}

/** The forms that the menu opens. */
export type Form = "column" | "note" | "sort" | "cells" | "names" | "find" | "photo";

interface Item {
  readonly label: string;
  /** A command to run, or the form to open. */
  readonly does: Command | Form;
  /** Whether a line stands above it: the first of its kind. */
  readonly apart?: true;
}

/** What can be done with the rows and columns of a block. Whole columns chosen by their head leave the rows alone, and the other way about. */
export function itemsFor(
  block: Block,
  whole: "rows" | "columns" | null,
  shownPage: Page,
  fits: (column: number) => number,
): Item[] {
  const { page, top, left } = block;
  const tall = block.bottom - top + 1;
  const wide = block.right - left + 1;
  const rows = phrase`${plural(tall, "row", "# rows")}`;
  const columns = phrase`${plural(wide, "column", "# columns")}`;
  const items: Item[] = [];
  if (whole !== "columns") {
    items.push(
      { label: phrase`Insert ${rows} above`, does: insertRows(page, top, tall) },
      { label: phrase`Insert ${rows} below`, does: insertRows(page, block.bottom + 1, tall) },
      {
        label: phrase`Delete ${rows}`,
        does: removeRows(page, top, tall),
      },
    );
    if (top > 0) items.push({ label: phrase`Move ${rows} up`, does: moveRows(page, top, tall, top - 1) });
    items.push(
      { label: phrase`Move ${rows} down`, does: moveRows(page, top, tall, block.bottom + 2) },
      { label: phrase`Hide ${rows}`, does: hideRows(page, top, tall) },
    );
    // Rows beside hidden ones stand for them: the hidden ones can't be chosen.
    const hidden = hiddenRows(shownPage);
    let [from, to] = [top, block.bottom];
    while (hidden.has(from - 1)) from -= 1;
    while (hidden.has(to + 1)) to += 1;
    if (Array.from({ length: to - from + 1 }, (_, i) => from + i).some((row) => hidden.has(row)))
      items.push({ label: phrase`Show hidden rows here`, does: showRows(page, from, to - from + 1) });
  }
  if (whole !== "rows") {
    items.push(
      { label: phrase`Insert ${columns} before`, apart: true, does: insertColumns(page, left, wide) },
      { label: phrase`Insert ${columns} after`, does: insertColumns(page, block.right + 1, wide) },
      {
        label: phrase`Delete ${columns}`,
        does: removeColumns(page, left, wide),
      },
      ...(left > 0
        ? [{ label: phrase`Move ${columns} left`, does: moveColumns(page, left, wide, left - 1) }]
        : []),
      { label: phrase`Move ${columns} right`, does: moveColumns(page, left, wide, block.right + 2) },
      {
        label: phrase`Fit ${columns} to what ${plural(wide, "it holds", "they hold")}`,
        does: {
          label: phrase`fit columns`,
          edit: (book) =>
            fitColumns(
              page,
              new Map(Array.from({ length: wide }, (_, i) => [left + i, fits(left + i)] as const)),
            ).edit(book),
        },
      },
      ...(shownPage.frozen === undefined
        ? []
        : [{ label: phrase`Let all columns scroll`, does: freezeColumns(page, 0) }]),
      ...(shownPage.frozen === block.right + 1 || block.right >= MOST_FROZEN
        ? []
        : [{ label: freezeLabel(block.right), does: freezeColumns(page, block.right + 1) }]),
      { label: phrase`Heading and kind of column ${columnLetters(left)}…`, does: "column" },
    );
  }
  items.push(
    { label: phrase`Sort…`, does: "sort", apart: true },
    { label: phrase`Choices, decimals, unit and fittings…`, does: "cells" },
  );
  items.push({ label: phrase`Names from labels…`, does: "names" });
  if (!whole)
    items.push(
      { label: phrase`Note on ${cellAddress(top, left)}…`, does: "note" },
      { label: phrase`Photograph in ${cellAddress(top, left)}…`, does: "photo" },
    );
  items.push({ label: phrase`Find and replace…`, does: "find" });
  return items;
}

export function RowsAndColumns({ x, y, block, session, onForm, fits, onDone }: Props) {
  const items = itemsFor(block, session.grid?.wholly ?? null, session.store.shown.pages[block.page]!, fits);
  const run = ({ does }: Item) => {
    if (typeof does === "string") onForm(does);
    else {
      const at = { page: block.page, row: block.top, column: block.left };
      const { store } = session;
      saidIfLarge(store, store.shown.pages[block.page], does.label, () => session.run(does, at));
    }
    return typeof does === "string";
  };
  return (
    <Menu
      name={phrase`Rows and columns`}
      x={x}
      y={y}
      items={items.map((item) => ({ label: item.label, apart: item.apart, act: () => run(item) }))}
      onDone={onDone}
    />
  );
}
