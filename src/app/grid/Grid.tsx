/** The grid of one page. */
import { phrase } from "../../../functions/phrase.ts";
import "handsontable/styles/handsontable.min.css";
import "./floating.css";
import "./grid.css";
import { Suspense, useEffect, useRef, useState } from "react";
import type { Block, Place } from "../../book/address.ts";
import { hiddenRows } from "../../book/hidden-rows.ts";
import { BLANK_COLUMN } from "../../book/shape.ts";
import type { Store } from "../../store/store.ts";
import { Guard } from "../faults/Guard.tsx";
import { listenToClipboard } from "./copy-and-paste.ts";
import { sessionOf } from "./edit-session.ts";
import { fittingWidth } from "./fit.ts";
import type { OpenForm } from "./GridForm.tsx";
import { GridView } from "./grid-view.ts";
import { HiddenRows } from "./HiddenRows.tsx";
import { addGridKeys, listenToFind, listenToUndo } from "./keys.ts";
import { GridForm, RowsAndColumns, TypingHelp } from "./late-forms.ts";
import { PasteNotice } from "./PasteNotice.tsx";
import { listenToPhotographs } from "./photo/receive.ts";
import type { Form } from "./RowsAndColumns.tsx";

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

const blockOf = ({ page, row, column }: Place): Block => ({
  page,
  top: row,
  left: column,
  bottom: row,
  right: column,
});

export function Grid({ store, page, place, onPlace, onRefused }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const session = sessionOf(store);
  const tell = useRef(onPlace);
  const refuse = useRef(onRefused);
  const at = place.page === page ? place : { page, row: 0, column: 0 };
  const start = useRef(at);
  const [menu, setMenu] = useState<Menu | null>(null);
  const [form, setForm] = useState<OpenForm | null>(null);
  const view = useRef<GridView | null>(null);

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
    view.current = grid;
    session.openNote = (place) => setForm({ is: "note", block: blockOf(place) });
    const openForm = (is: Form) => setForm({ is, block: grid.block() ?? blockOf(start.current) });
    addGridKeys(grid, session, () => openMenu(...grid.corner()), openForm);
    const onKind = ({ target }: MouseEvent) => {
      const head = target instanceof Element ? target.closest("[data-kind-of]") : null;
      if (!(head instanceof HTMLElement)) return;
      const place = { page: grid.index, row: 0, column: Number(head.dataset.kindOf) };
      setForm({ is: "column", block: blockOf(place) });
    };
    host.addEventListener("click", onKind);
    const onMenu = (event: MouseEvent) => {
      // While a cell is typed in, the menu is the field's own: a finger that selects text asks for it.
      if (event.target instanceof HTMLTextAreaElement) return;
      event.preventDefault();
      // A finger that rests on a cell has not chosen it, as a mouse has by then.
      if (event instanceof PointerEvent && event.pointerType === "touch" && event.target instanceof Element)
        grid.chooseAt(event.target);
      openMenu(event.clientX, event.clientY);
    };
    host.addEventListener("contextmenu", onMenu);
    const off = [
      listenToPhotographs(host, grid, (block, file) => setForm({ is: "photo", block, file })),
      listenToClipboard(grid, session),
      listenToUndo(session, (sentence) => refuse.current(sentence)),
      listenToFind(() => openForm("find")),
      () => host.removeEventListener("click", onKind),
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

  const back = ({ page: on, top, left }: Block) => {
    // A row that was just hidden can't have the keyboard.
    const hidden = hiddenRows(store.shown.pages[on]!);
    let to = top;
    while (hidden.has(to)) to += 1;
    session.grid?.take({ page: on, row: to, column: left });
  };
  const done = () => {
    setForm(null);
    if (form) back(form.block);
  };
  return (
    <div className="grid-page">
      <div className="grid-host" ref={root} />
      <PasteNotice session={session} />
      <HiddenRows session={session} page={page} row={row} />
      <Suspense fallback={null}>
        <TypingHelp session={session} selected={at} />
      </Suspense>
      {menu && (
        <Guard name={phrase`The menu`} className="guard-over" onDone={() => setMenu(null)}>
          <Suspense fallback={null}>
            <RowsAndColumns
              {...menu}
              session={session}
              onForm={(is) => setForm({ is, block: menu.block })}
              fits={(one) => (view.current ? fittingWidth(view.current, one) : BLANK_COLUMN.width)}
              onDone={(taken) => {
                setMenu(null);
                if (taken) back(menu.block);
              }}
            />
          </Suspense>
        </Guard>
      )}
      {form && (
        <Guard name={phrase`The form`} className="guard-over" onDone={done}>
          <Suspense fallback={null}>
            <GridForm
              session={session}
              form={form}
              page={page}
              onGo={(to) => {
                setForm(null);
                tell.current(to);
                session.grid?.take(to);
              }}
              onDone={done}
            />
          </Suspense>
        </Guard>
      )}
    </div>
  );
}
