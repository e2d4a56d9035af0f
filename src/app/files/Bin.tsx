/** The bin: each book in it can be restored, or deleted permanently after a second press. */
import { useState } from "react";
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
      <summary>Bin: {records.length === 1 ? "1 book" : `${records.length} books`}</summary>
      <p className="aside">A book stays here until you delete it.</p>
      <ul>
        {records.map(({ id, title, binned }) => (
          <li key={id} className="book">
            <div className="book-open book-closed">
              <b dir="auto">{title}</b>
              <small>moved to the bin {new Date(binned!).toLocaleString()}</small>
            </div>
            {leaving === id ? (
              <span className="book-leaving">
                <button type="button" onClick={() => onDelete(id)}>
                  Delete permanently<span className="unseen"> {title}</span>
                </button>
                <button type="button" onClick={() => leave(null)}>
                  Cancel
                </button>
              </span>
            ) : (
              <span className="book-leaving">
                <button type="button" className="quiet" onClick={() => onBringBack(id)}>
                  Restore<span className="unseen"> {title}</span>
                </button>
                <button type="button" className="quiet" onClick={() => leave(id)}>
                  Delete …<span className="unseen"> {title}</span>
                </button>
              </span>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
