/** The bar above the grid: which cell, its name, what is typed in it, and what there is to say of it. */
import { phrase } from "../../../functions/phrase.ts";
import "./bar.css";
import {
  type KeyboardEvent,
  type MouseEvent,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import { cellAddress, fullAddress, type Place } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import type { Store } from "../../store/store.ts";
import { CellMessage } from "./CellMessage.tsx";
import { samePlace, sessionOf } from "./edit-session.ts";
import { blockToName, NameField } from "./NameField.tsx";

interface Props {
  readonly store: Store;
  /** The selected cell. */
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export function FormulaBar({ store, place: selected, onPlace }: Props) {
  const session = sessionOf(store);
  useSyncExternalStore(store.subscribe, () => store.revision);
  useSyncExternalStore(session.subscribe, session.version);
  const field = useRef<HTMLTextAreaElement>(null);
  const [asked, setAsked] = useState(false);
  const { draft } = session;
  // A formula that is being typed here stays, whatever cell is selected meanwhile.
  const place = draft?.where === "bar" ? draft.place : selected;
  const away = !samePlace(place, selected);
  const text = draft && samePlace(draft.place, place) ? draft.text : session.textAt(place);
  useEffect(() => {
    session.bar = field.current;
    return () => {
      session.bar = null;
    };
  }, [session]);

  const write = () => {
    const { value, selectionStart } = field.current!;
    const place = session.draft?.where === "bar" ? session.draft.place : selected;
    session.write({ place, text: value, caret: selectionStart, where: "bar", field: field.current! });
  };
  /** Keeps what is typed. The draft ends first, or the cell would go on showing it. */
  const keep = (): boolean => {
    const typed = field.current!.value;
    session.write(null);
    return session.type(place, typed);
  };
  const goTo = (to: Place) => {
    if (away) onPlace(to);
    session.grid?.take(to);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation(); // or the grid, which listens again by then, would take the same key
    if (event.nativeEvent.isComposing) return;
    if (session.offers.take(event.nativeEvent)) {
      event.preventDefault();
    } else if (event.key === "Escape") {
      event.preventDefault();
      session.write(null);
      session.drop(place);
      goTo(place);
    } else if (event.key === "Enter" && !event.altKey && !event.shiftKey) {
      event.preventDefault();
      if (keep()) goTo({ ...place, row: place.row + 1 });
    }
  };
  const openMenu = (event: MouseEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    session.openMenu?.(box.left, box.bottom + 2);
  };

  return (
    <div className="formula-bar">
      <output
        className="formula-place"
        aria-label={away ? phrase`Cell of the formula` : phrase`Selected cell`}
        aria-live={away ? "polite" : "off"}
      >
        {away ? fullAddress(store.shown, place) : cellAddress(place.row, place.column)}
      </output>
      <NameField store={store} place={place} key={JSON.stringify(blockToName(session.selected, place))} />
      <textarea
        ref={field}
        className="formula-text"
        dir={isFormula(text) ? "ltr" : "auto"}
        aria-label={phrase`Text or formula of the cell`}
        aria-describedby="cell-message argument-hint"
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
          // A dialog gives the keyboard back when it closes.
          if (!document.querySelector("dialog[open]")) session.leave();
        }}
        onKeyDown={onKeyDown}
      />
      <CellMessage session={session} place={place} away={away} exactly={asked} />
      <span className="formula-keys">
        <button
          type="button"
          aria-pressed={asked}
          onClick={() => setAsked(!asked)}
        >{phrase`Full precision`}</button>
        <button
          type="button"
          aria-haspopup="dialog"
          onClick={() => session.openNote?.(place)}
        >{phrase`Note`}</button>
        <button type="button" aria-haspopup="menu" onClick={openMenu}>{phrase`Rows and columns`}</button>
      </span>
    </div>
  );
}
