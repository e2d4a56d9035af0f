/** The menu of the selected cells, with rows, columns and the note: by right click, Shift+F10, or its button. */
import { type KeyboardEvent, useEffect, useLayoutEffect, useRef, useState } from "react";
import { type Block, cellAddress, columnLetters, type Place } from "../../book/address.ts";
import { insertColumns, insertRows, removeColumns, removeRows } from "../../store/commands.ts";
import type { Command } from "../../store/store.ts";
import type { EditSession } from "./edit-session.ts";

interface Props {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
  readonly session: EditSession;
  readonly onColumn: (column: number) => void;
  readonly onNote: (place: Place) => void;
  /** Called when the menu is to close; true when the grid is to have the keyboard again. */
  readonly onDone: (back: boolean) => void;
}

interface Item {
  readonly label: string;
  /** A command to run, or the form to open. */
  readonly does: Command | "column" | "note";
}

/** What can be done with the rows and columns of a block. Whole columns chosen by their head leave the rows alone, and the other way about. */
export function itemsFor(block: Block, whole: "rows" | "columns" | null): Item[] {
  const { page, top, left } = block;
  const tall = block.bottom - top + 1;
  const wide = block.right - left + 1;
  const rows = tall === 1 ? "row" : `${tall} rows`;
  const columns = wide === 1 ? "column" : `${wide} columns`;
  const items: Item[] = [];
  if (whole !== "columns") {
    items.push(
      { label: `Insert ${rows} above`, does: insertRows(page, top, tall) },
      { label: `Insert ${rows} below`, does: insertRows(page, block.bottom + 1, tall) },
      {
        label: `Delete ${rows}`,
        does: removeRows(page, top, tall),
      },
    );
  }
  if (whole !== "rows") {
    items.push(
      { label: `Insert ${columns} before`, does: insertColumns(page, left, wide) },
      { label: `Insert ${columns} after`, does: insertColumns(page, block.right + 1, wide) },
      {
        label: `Delete ${columns}`,
        does: removeColumns(page, left, wide),
      },
      { label: `Heading and kind of column ${columnLetters(left)}…`, does: "column" },
    );
  }
  if (!whole) items.push({ label: `Note on ${cellAddress(top, left)}…`, does: "note" });
  return items;
}

export function RowsAndColumns({ x, y, block, session, onColumn, onNote, onDone }: Props) {
  const list = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ left: x, top: y });
  const items = itemsFor(block, session.grid?.wholly ?? null);

  useLayoutEffect(() => {
    const { offsetWidth, offsetHeight } = list.current!;
    setPlace({
      left: Math.max(4, Math.min(x, window.innerWidth - offsetWidth - 4)),
      top: Math.max(4, Math.min(y, window.innerHeight - offsetHeight - 4)),
    });
  }, [x, y]);
  useEffect(() => (list.current?.firstElementChild as HTMLElement | null)?.focus(), []);

  const run = ({ does }: Item) => {
    const place = { page: block.page, row: block.top, column: block.left };
    if (does === "column") onColumn(block.left);
    else if (does === "note") onNote(place);
    else session.run(does, place);
    onDone(typeof does !== "string");
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    const all = [...list.current!.children] as HTMLElement[];
    const now = all.indexOf(document.activeElement as HTMLElement);
    const steps: Record<string, number> = {
      ArrowDown: (now + 1) % all.length,
      ArrowUp: (now + all.length - 1) % all.length,
      Home: 0,
      End: all.length - 1,
    };
    if (event.key in steps) all[steps[event.key]!]!.focus();
    else if (event.key === "Escape" || event.key === "Tab") onDone(true);
    else if (event.key === "Enter" || event.key === " ") run(items[now]!);
    else return;
    event.preventDefault();
  };

  return (
    <div
      ref={list}
      role="menu"
      aria-label="Rows and columns"
      tabIndex={-1}
      className="grid-menu"
      style={place}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) onDone(false);
      }}
      onKeyDown={onKeyDown}
    >
      {items.map((item) => (
        <button key={item.label} type="button" role="menuitem" tabIndex={-1} onClick={() => run(item)}>
          {item.label}
        </button>
      ))}
    </div>
  );
}
