/** The grid of one page. */
import "handsontable/styles/handsontable.min.css";
import "./floating.css";
import "./grid.css";
import { useEffect, useRef, useState } from "react";
import type { Block, Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { ColumnForm } from "./ColumnForm.tsx";
import { listenToClipboard } from "./carry.ts";
import { handOf } from "./hand.ts";
import { addGridKeys, listenToUndo } from "./keys.ts";
import { NoteForm } from "./NoteForm.tsx";
import { OfferList } from "./OfferList.tsx";
import { RowsAndColumns } from "./RowsAndColumns.tsx";
import { Table } from "./table.ts";

interface Props {
  readonly store: Store;
  /** Which page of the book, counted from 0. */
  readonly page: number;
  /** The chosen cell; one of another page counts as the first cell of this one. */
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

interface Menu {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
}

export function Sheet({ store, page, place, onPlace }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const hand = handOf(store);
  const tell = useRef(onPlace);
  const at = place.page === page ? place : { page, row: 0, column: 0 };
  const start = useRef(at);
  const [menu, setMenu] = useState<Menu | null>(null);
  const [column, setColumn] = useState<Place | null>(null);
  const [noted, setNoted] = useState<Place | null>(null);

  useEffect(() => {
    tell.current = onPlace;
    start.current = at;
  });

  useEffect(() => {
    const host = root.current!;
    const table = new Table(host, hand, start.current, (next) => tell.current(next));
    const openMenu = (x: number, y: number) => {
      const block = table.block();
      if (block) setMenu({ x, y, block });
    };
    hand.table = table;
    hand.openMenu = openMenu;
    hand.openNote = setNoted;
    addGridKeys(
      table,
      () => openMenu(...table.corner()),
      () => setNoted(table.chosen()),
    );
    const onMenu = (event: MouseEvent) => {
      event.preventDefault();
      openMenu(event.clientX, event.clientY);
    };
    host.addEventListener("contextmenu", onMenu);
    const off = [listenToClipboard(table, hand), listenToUndo(hand)];
    // Before the book is put away with the page, what is half typed goes into it.
    const settle = () => hand.settle();
    addEventListener("pagehide", settle, true);
    // Before the library, which would put whatever is typed into the book at a click outside the grid.
    const onPress = (event: MouseEvent) => {
      const outside = event.target instanceof Element && !event.target.closest(".sheet");
      if (outside && hand.draft?.where === "cell") hand.leave();
    };
    document.addEventListener("mousedown", onPress, true);
    return () => {
      document.removeEventListener("mousedown", onPress, true);
      for (const stop of off) stop();
      removeEventListener("pagehide", settle, true);
      host.removeEventListener("contextmenu", onMenu);
      hand.table = null;
      hand.openMenu = null;
      hand.openNote = null;
      hand.clear();
      table.destroy();
    };
  }, [hand]);

  const { row, column: columnAt } = at;
  useEffect(() => {
    hand.table?.turnTo({ page, row, column: columnAt });
  }, [hand, page, row, columnAt]);

  const back = (to: Place) => hand.table?.take(to);
  return (
    <div className="sheet">
      <div className="sheet-grid" ref={root} />
      <OfferList hand={hand} />
      {menu && (
        <RowsAndColumns
          {...menu}
          hand={hand}
          onColumn={(index) => setColumn({ page, row: menu.block.top, column: index })}
          onNote={setNoted}
          onDone={(taken) => {
            setMenu(null);
            if (taken) back({ page, row: menu.block.top, column: menu.block.left });
          }}
        />
      )}
      {noted && (
        <NoteForm
          hand={hand}
          place={noted}
          onDone={() => {
            setNoted(null);
            back(noted);
          }}
        />
      )}
      {column && (
        <ColumnForm
          hand={hand}
          place={column}
          onDone={() => {
            setColumn(null);
            back(column);
          }}
        />
      )}
    </div>
  );
}
