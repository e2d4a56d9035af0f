/** The grid of one page. */
import "handsontable/styles/handsontable.min.css";
import "./floating.css";
import "./grid.css";
import { useEffect, useRef, useState } from "react";
import type { Block, Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { ColumnForm } from "./ColumnForm.tsx";
import { listenToClipboard } from "./copy-and-paste.ts";
import { sessionOf } from "./edit-session.ts";
import { GridView } from "./grid-view.ts";
import { addGridKeys, listenToUndo } from "./keys.ts";
import { NoteForm } from "./NoteForm.tsx";
import { OfferList } from "./OfferList.tsx";
import { RowsAndColumns } from "./RowsAndColumns.tsx";

interface Props {
  readonly store: Store;
  /** Which page of the book, counted from 0. */
  readonly page: number;
  /** The chosen cell; one of another page counts as the first cell of this one. */
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
  /** Hears why a step could not be undone or redone by its keys. */
  readonly onRefused: (sentence: string) => void;
}

interface Menu {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
}

export function Grid({ store, page, place, onPlace, onRefused }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const session = sessionOf(store);
  const tell = useRef(onPlace);
  const refuse = useRef(onRefused);
  const at = place.page === page ? place : { page, row: 0, column: 0 };
  const start = useRef(at);
  const [menu, setMenu] = useState<Menu | null>(null);
  const [column, setColumn] = useState<Place | null>(null);
  const [noted, setNoted] = useState<Place | null>(null);

  useEffect(() => {
    tell.current = onPlace;
    refuse.current = onRefused;
    start.current = at;
  });

  useEffect(() => {
    const host = root.current!;
    const grid = new GridView(host, session, start.current, (next) => tell.current(next));
    const openMenu = (x: number, y: number) => {
      const block = grid.block();
      if (block) setMenu({ x, y, block });
    };
    session.grid = grid;
    session.openMenu = openMenu;
    session.openNote = setNoted;
    addGridKeys(
      grid,
      () => openMenu(...grid.corner()),
      () => setNoted(grid.chosen()),
    );
    const onMenu = (event: MouseEvent) => {
      event.preventDefault();
      openMenu(event.clientX, event.clientY);
    };
    host.addEventListener("contextmenu", onMenu);
    const off = [
      listenToClipboard(grid, session),
      listenToUndo(session, (sentence) => refuse.current(sentence)),
    ];
    // Before the book is put away with the page, what is half typed goes into it.
    const settle = () => session.settle();
    addEventListener("pagehide", settle, true);
    // Before the library, which would put whatever is typed into the book at a click outside the grid.
    const onPress = (event: MouseEvent) => {
      const outside = event.target instanceof Element && !event.target.closest(".grid-page");
      if (outside && session.draft?.where === "cell") session.leave();
    };
    document.addEventListener("mousedown", onPress, true);
    return () => {
      document.removeEventListener("mousedown", onPress, true);
      for (const stop of off) stop();
      removeEventListener("pagehide", settle, true);
      host.removeEventListener("contextmenu", onMenu);
      session.grid = null;
      session.openMenu = null;
      session.openNote = null;
      session.clear();
      grid.destroy();
    };
  }, [session]);

  const { row, column: columnAt } = at;
  useEffect(() => {
    session.grid?.turnTo({ page, row, column: columnAt });
  }, [session, page, row, columnAt]);

  const back = (to: Place) => session.grid?.take(to);
  return (
    <div className="grid-page">
      <div className="grid-host" ref={root} />
      <OfferList session={session} />
      {menu && (
        <RowsAndColumns
          {...menu}
          session={session}
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
          session={session}
          place={noted}
          onDone={() => {
            setNoted(null);
            back(noted);
          }}
        />
      )}
      {column && (
        <ColumnForm
          session={session}
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
