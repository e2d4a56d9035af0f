/** The photograph of one cell: chosen, described, changed or taken away. */

import { type FormEvent, useCallback, useEffect, useRef, useState } from "react";
import { phrase } from "../../../../functions/phrase.ts";
import { cellAddress, type Place } from "../../../book/address.ts";
import { LONGEST_PHOTOGRAPH_WORDS } from "../../../book/photographs.ts";
import { type Photograph, putPhotograph } from "../../../store/photograph.ts";
import type { EditSession } from "../edit-session.ts";
import { FormFoot } from "../FormFoot.tsx";
import { makeSmall } from "./make-small.ts";

interface Props {
  readonly session: EditSession;
  readonly place: Place;
  /** A picture that was dropped or pasted on the cell. */
  readonly file: File | undefined;
  readonly onDone: () => void;
}

export function PhotoForm({ session, place, file, onDone }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const { store } = session;
  const address = cellAddress(place.row, place.column);
  const kept = store.shown.pages[place.page]?.cells?.[address];
  const [image, setImage] = useState(kept?.photograph ?? "");
  const [words, setWords] = useState(kept?.photographWords ?? "");
  const [refusal, setRefusal] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => dialog.current?.showModal(), []);

  const take = useCallback(async (one: File) => {
    setBusy(true);
    const small = await makeSmall(one);
    setBusy(false);
    if ("refusal" in small) setRefusal(small.refusal);
    else {
      setRefusal(null);
      setImage(small.image);
    }
  }, []);
  useEffect(() => {
    if (file) void take(file);
  }, [file, take]);

  const save = (photograph: Photograph | null) => {
    const sentence = store.run(putPhotograph(place, photograph));
    setRefusal(sentence);
    if (sentence === null) dialog.current?.close();
  };
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    if (image === "") setRefusal(phrase`no picture is chosen: choose a JPEG, PNG or WebP picture`);
    else save({ image, words: words.trim() });
  };
  return (
    <dialog
      ref={dialog}
      className="column-form photo-form"
      aria-labelledby="photo-form-title"
      onClose={onDone}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <form onSubmit={onSubmit}>
        <h2 id="photo-form-title">{phrase`Photograph in ${address}`}</h2>
        {image !== "" && <img className="photo-form-picture" src={image} alt={words || phrase`photograph`} />}
        <label>
          <span>{phrase`Picture`}</span>
          <input
            type="file"
            accept="image/jpeg,image/png,image/webp"
            onChange={({ target }) => {
              const one = target.files?.[0];
              if (one) void take(one);
            }}
          />
        </label>
        <label>
          <span>{phrase`What it shows`}</span>
          <input
            dir="auto"
            value={words}
            placeholder={phrase`blue linen, 1 yd, a stain at one corner`}
            maxLength={LONGEST_PHOTOGRAPH_WORDS}
            onChange={(event) => setWords(event.target.value)}
          />
        </label>
        <p className="form-about">{phrase`The picture is made small and kept in the book, without the place and time that a camera writes into it. Screen readers say what it shows.`}</p>
        {kept?.photograph && (
          <button type="button" onClick={() => save(null)}>{phrase`Take the photograph away`}</button>
        )}
        <FormFoot act={phrase`Keep`} refusal={refusal} onCancel={() => dialog.current?.close()} />
      </form>
    </dialog>
  );
}
