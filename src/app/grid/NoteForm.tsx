/** The note of one cell, to be written, read, changed or deleted. */

import { type FormEvent, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { cellAddress, fullAddress, noteAt, type Place } from "../../book/address.ts";
import { nameOf } from "../../book/names.ts";
import { noteCell } from "../../store/commands.ts";
import type { EditSession } from "./edit-session.ts";

interface Props {
  readonly session: EditSession;
  readonly place: Place;
  readonly onDone: () => void;
}

export function NoteForm({ session, place, onDone }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const { store } = session;
  const kept = noteAt(store.shown, place);
  const [text, setText] = useState(kept);
  const [refusal, setRefusal] = useState<string | null>(null);
  useEffect(() => dialog.current?.showModal(), []);

  const save = (note: string) => {
    const sentence = store.run(noteCell(place.page, cellAddress(place.row, place.column), note));
    setRefusal(sentence);
    if (sentence === null) dialog.current?.close();
  };
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    save(text.trim());
  };
  const name = nameOf(store.shown, place);
  return (
    <dialog
      ref={dialog}
      className="column-form note-form"
      aria-labelledby="note-form-title"
      onClose={onDone}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) save(text.trim());
      }}
    >
      <form onSubmit={onSubmit}>
        <h2 id="note-form-title">
          {phrase`Note on ${name ? `${name} (${fullAddress(store.shown, place)})` : fullAddress(store.shown, place)}`}
        </h2>
        <textarea
          dir="auto"
          aria-label={phrase`Note`}
          aria-describedby="note-form-keys"
          rows={6}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <p
          id="note-form-keys"
          className="note-form-about"
        >{phrase`A note is not part of any calculation. Ctrl Enter saves it, Escape cancels.`}</p>
        {refusal && (
          <p className="look" role="alert">
            {refusal}
          </p>
        )}
        <p className="column-form-keys">
          <button type="submit">{phrase`Save note`}</button>
          {kept !== "" && <button type="button" onClick={() => save("")}>{phrase`Delete note`}</button>}
          <button type="button" onClick={() => dialog.current?.close()}>{phrase`Cancel`}</button>
        </p>
      </form>
    </dialog>
  );
}
