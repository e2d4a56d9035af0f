/** The bin: each book in it can be restored, or deleted permanently after a second press. */
import { useState } from "react";
import type { Spine } from "./shelf.ts";

interface Props {
  readonly spines: readonly Spine[];
  readonly onBringBack: (id: string) => void;
  readonly onDelete: (id: string) => void;
}

export function Bin({ spines, onBringBack, onDelete }: Props) {
  const [leaving, setLeaving] = useState<string | null>(null);
  if (spines.length === 0) return null;
  return (
    <details className="bin">
      <summary>Bin: {spines.length === 1 ? "1 book" : `${spines.length} books`}</summary>
      <p className="aside">A book stays here until you delete it.</p>
      <ul>
        {spines.map(({ id, title, binned }) => (
          <li key={id} className="book">
            <div className="book-open book-closed">
              <b>{title}</b>
              <small>moved to the bin {new Date(binned!).toLocaleString()}</small>
            </div>
            {leaving === id ? (
              <span className="book-leaving">
                <button type="button" onClick={() => onDelete(id)}>
                  Delete permanently<span className="unseen"> {title}</span>
                </button>
                <button type="button" onClick={() => setLeaving(null)}>
                  Cancel
                </button>
              </span>
            ) : (
              <span className="book-leaving">
                <button type="button" className="quiet" onClick={() => onBringBack(id)}>
                  Restore<span className="unseen"> {title}</span>
                </button>
                <button type="button" className="quiet" onClick={() => setLeaving(id)}>
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
