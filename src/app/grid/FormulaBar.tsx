/** The bar above the grid: which cell, its name, what is typed in it, and what there is to say of it. */
import "./bar.css";
import { type KeyboardEvent, type MouseEvent, useRef, useState, useSyncExternalStore } from "react";
import { cellAddress, type Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { CellMessage } from "./CellMessage.tsx";
import { samePlace, sessionOf } from "./edit-session.ts";
import { NameField } from "./NameField.tsx";

interface Props {
  readonly store: Store;
  readonly place: Place;
}

export function FormulaBar({ store, place }: Props) {
  const session = sessionOf(store);
  useSyncExternalStore(store.subscribe, () => store.revision);
  useSyncExternalStore(session.subscribe, session.version);
  const field = useRef<HTMLTextAreaElement>(null);
  const [asked, setAsked] = useState(false);
  const draft = session.draft && samePlace(session.draft.place, place) ? session.draft : null;
  const text = draft?.text ?? session.textAt(place);

  const write = () => {
    const { value, selectionStart } = field.current!;
    session.write({ place, text: value, caret: selectionStart, where: "bar", field: field.current! });
  };
  /** Keeps what is typed. The draft ends first, or the cell would go on showing it. */
  const keep = (): boolean => {
    const typed = field.current!.value;
    session.write(null);
    return session.type(place, typed);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation(); // or the grid, which listens again by then, would take the same key
    if (event.nativeEvent.isComposing) return;
    if (session.take(event.nativeEvent)) {
      event.preventDefault();
    } else if (event.key === "Escape") {
      event.preventDefault();
      session.write(null);
      session.drop(place);
      session.grid?.take(place);
    } else if (event.key === "Enter" && !event.altKey && !event.shiftKey) {
      event.preventDefault();
      if (keep()) session.grid?.take({ ...place, row: place.row + 1 });
    }
  };
  const openMenu = (event: MouseEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    session.openMenu?.(box.left, box.bottom + 2);
  };

  return (
    <div className="formula-bar">
      <output className="formula-place" aria-label="Selected cell">
        {cellAddress(place.row, place.column)}
      </output>
      <NameField store={store} place={place} key={`${place.page}.${place.row}.${place.column}`} />
      <textarea
        ref={field}
        className="formula-text"
        aria-label="Text or formula of the cell"
        aria-describedby="cell-message"
        aria-autocomplete="list"
        spellCheck={false}
        rows={2}
        value={text}
        onFocus={() => {
          session.grid?.leave();
          write();
        }}
        onChange={write}
        onSelect={() => {
          // Heard after the key that ended the draft too: only a draft has a caret to follow.
          if (session.draft?.where === "bar") write();
        }}
        onBlur={() => {
          if (session.draft?.where === "bar") keep();
        }}
        onKeyDown={onKeyDown}
      />
      <CellMessage session={session} place={place} exactly={asked} />
      <span className="formula-keys">
        <button type="button" aria-pressed={asked} onClick={() => setAsked(!asked)}>
          Full precision
        </button>
        <button type="button" aria-haspopup="dialog" onClick={() => session.openNote?.(place)}>
          Note
        </button>
        <button type="button" aria-haspopup="menu" onClick={openMenu}>
          Rows and columns
        </button>
      </span>
    </div>
  );
}
