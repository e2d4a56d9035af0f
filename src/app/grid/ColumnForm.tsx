/** Heading, kind and width of one column. */

import { type FormEvent, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { columnLetters, type Place } from "../../book/address.ts";
import { COLUMN_KINDS, type ColumnKind, LONGEST, WIDTHS } from "../../book/shape.ts";
import { changeColumn } from "../../store/commands.ts";
import type { EditSession } from "./edit-session.ts";
import { FormFoot } from "./FormFoot.tsx";

/** What a column of each kind holds, in words. */
export const KINDS: Record<ColumnKind, string> = {
  any: phrase`anything`,
  text: phrase`text, not used as numbers`,
  length: phrase`lengths`,
  number: phrase`numbers`,
  money: phrase`money`,
  date: phrase`dates`,
};

interface Props {
  readonly session: EditSession;
  readonly place: Place;
  readonly onDone: () => void;
}

export function ColumnForm({ session, place, onDone }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const column = session.store.shown.pages[place.page]?.columns[place.column];
  const [heading, setHeading] = useState(column?.heading ?? "");
  const [kind, setKind] = useState<ColumnKind>(column?.kind ?? "any");
  const [choices, setChoices] = useState(column?.choices ?? "");
  const [refusal, setRefusal] = useState<string | null>(null);
  const [width, setWidth] = useState(String(column?.width ?? ""));
  useEffect(() => dialog.current?.showModal(), []);

  const keep = (event: FormEvent) => {
    event.preventDefault();
    const change = { heading, kind, width: Number(width), choices: choices.trim() || undefined };
    const sentence = session.store.run(changeColumn(place.page, place.column, change));
    setRefusal(sentence);
    if (sentence === null) dialog.current?.close();
  };
  return (
    <dialog
      ref={dialog}
      className="column-form"
      aria-labelledby="column-form-title"
      onClose={onDone}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <form onSubmit={keep}>
        <h2 id="column-form-title">{phrase`Column ${columnLetters(place.column)}`}</h2>
        <label>
          <span>{phrase`Heading`}</span>
          <input
            dir="auto"
            value={heading}
            maxLength={LONGEST.heading}
            onChange={(event) => setHeading(event.target.value)}
          />
        </label>
        <label>
          <span>{phrase`Contents`}</span>
          <select value={kind} onChange={(event) => setKind(event.target.value as ColumnKind)}>
            {COLUMN_KINDS.map((one) => (
              <option key={one} value={one}>
                {KINDS[one]}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{phrase`Width on screen, in pixels`}</span>
          <input
            type="number"
            required
            min={WIDTHS[0]}
            max={WIDTHS[1]}
            value={width}
            onChange={(event) => setWidth(event.target.value)}
          />
        </label>
        <label>
          <span>{phrase`Choices, if its cells have any`}</span>
          <input
            dir="auto"
            value={choices}
            placeholder={phrase`box; knife, or =A2:A6`}
            maxLength={LONGEST.choices}
            onChange={(event) => setChoices(event.target.value)}
          />
        </label>
        <FormFoot act={phrase`Keep`} refusal={refusal} onCancel={() => dialog.current?.close()} />
      </form>
    </dialog>
  );
}
