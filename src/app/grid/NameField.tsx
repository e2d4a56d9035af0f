/** The name of the chosen cell, to be given, changed or taken away. */
import { type KeyboardEvent, useId, useState } from "react";
import type { Place } from "../../book/address.ts";
import { nameOf } from "../../book/names.ts";
import { nameCell } from "../../store/names.ts";
import type { Store } from "../../store/store.ts";
import { sessionOf } from "./edit-session.ts";

export function NameField({ store, place }: { readonly store: Store; readonly place: Place }) {
  const kept = nameOf(store.shown, place) ?? "";
  const [text, setText] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();

  const keep = (): boolean => {
    if (text === null || text.trim() === kept) {
      setText(null);
      setRefusal(null);
      return true;
    }
    const sentence = store.run(nameCell(place, text.trim()));
    setRefusal(sentence);
    if (sentence === null) setText(null);
    return sentence === null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === "Enter") {
      event.preventDefault();
      if (keep()) sessionOf(store).grid?.take(place);
    } else if (event.key === "Escape") {
      event.preventDefault();
      setText(null);
      setRefusal(null);
      sessionOf(store).grid?.take(place);
    }
  };
  return (
    <span className="name-field">
      <input
        aria-label="Name of the cell"
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : id}
        placeholder="no name"
        spellCheck={false}
        value={text ?? kept}
        onFocus={() => sessionOf(store).grid?.leave()}
        onChange={(event) => setText(event.target.value)}
        onBlur={keep}
        onKeyDown={onKeyDown}
      />
      {refusal !== null && (
        <span className="name-refusal" id={id} role="alert">
          {refusal}
        </span>
      )}
    </span>
  );
}
