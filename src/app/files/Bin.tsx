/** The bin: each book in it can be restored, or deleted permanently after a second press. */

import { useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";
import type { BookRecord } from "./shelf.ts";

interface Props {
  readonly records: readonly BookRecord[];
  readonly onBringBack: (id: string) => void;
  readonly onDelete: (id: string) => void;
}

export function Bin({ records, onBringBack, onDelete }: Props) {
  const [leaving, setLeaving] = useState<string | null>(null);
  const leave = (id: string | null) => {
    handOn("dialog");
    setLeaving(id);
  };
  if (records.length === 0) return null;
  return (
    <details className="bin">
      <summary>{phrase`Bin: ${plural(records.length, "1 book", "# books")}`}</summary>
      <p className="aside">{phrase`A book stays here until you delete it.`}</p>
      <ul>
        {records.map(({ id, title, binned }) => (
          <li key={id} className="book">
            <div className="book-open book-closed">
              <b dir="auto">{title}</b>
              <small>{phrase`moved to the bin ${new Date(binned!).toLocaleString()}`}</small>
            </div>
            {leaving === id ? (
              <span className="book-leaving">
                <button type="button" onClick={() => onDelete(id)}>
                  {phrase`Delete permanently`}
                  <span className="unseen"> {title}</span>
                </button>
                <button type="button" onClick={() => leave(null)}>{phrase`Cancel`}</button>
              </span>
            ) : (
              <span className="book-leaving">
                <button type="button" className="quiet" onClick={() => onBringBack(id)}>
                  {phrase`Restore`}
                  <span className="unseen"> {title}</span>
                </button>
                <button type="button" className="quiet" onClick={() => leave(id)}>
                  {phrase`Delete …`}
                  <span className="unseen"> {title}</span>
                </button>
              </span>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
