/** The pages of an earlier version, to look at: nothing in them can be changed. */

import { useEffect, useState } from "react";
import { phrase } from "../../../../functions/phrase.ts";
import type { Reading } from "../../../book/read.ts";
import type { Book } from "../../../book/shape.ts";
import { Engine } from "../../../engine/engine.ts";
import { layDesk } from "../../../lay/desk.ts";
import { reasonOf } from "../../faults/in-time.ts";

/** The most rows of a page that are shown; the rest is counted. */
const SHOWN = 500;

export function VersionPages({ read }: { readonly read: () => Promise<Reading> }) {
  const [reading] = useState(read);
  const [seen, setSeen] = useState<{ book: Book; engine: Engine } | string | null>(null);
  const [page, setPage] = useState(0);
  useEffect(() => {
    let gone = false;
    let engine: Engine | null = null;
    reading
      .then((given) => {
        if (gone) return;
        if ("reason" in given) return setSeen(given.reason);
        engine = new Engine(given.book, layDesk);
        setSeen({ book: given.book, engine });
      })
      .catch((fault) => setSeen(reasonOf(fault)));
    return () => {
      gone = true;
      engine?.destroy();
    };
  }, [reading]);

  if (seen === null) return <p role="status">{phrase`The version is being read …`}</p>;
  if (typeof seen === "string")
    return <p className="look">{phrase`This version can't be shown: ${seen}.`}</p>;
  const { book, engine } = seen;
  const { title, columns, rows } = book.pages[page]!;
  const last = rows.findLastIndex((cells) => cells.some((typed) => typed !== ""));
  const shown = rows.slice(0, Math.min(last + 1, SHOWN));
  return (
    <section className="version-pages" aria-label={phrase`The version's pages`}>
      <label>
        {phrase`Page `}
        <select value={page} onChange={(event) => setPage(Number(event.target.value))}>
          {book.pages.map((one, i) => (
            <option key={one.title} value={i}>
              {one.title}
            </option>
          ))}
        </select>
      </label>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and the keyboard has to reach it */}
      <section className="compared" aria-label={phrase`The version's page ${title}`} tabIndex={0}>
        <table>
          <thead>
            <tr>
              {columns.map(({ heading }, c) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its place
                <th key={c} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((_, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
              <tr key={row}>
                {columns.map((__, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a cell is known by its place
                  <td key={column}>{engine.view({ page, row, column }).shown}</td>
                ))}
              </tr>
            ))}
          </tbody>
          {last >= SHOWN && (
            <tfoot>
              <tr>
                <td
                  colSpan={columns.length}
                >{phrase`and ${last + 1 - SHOWN} more rows; open it as a copy to see them`}</td>
              </tr>
            </tfoot>
          )}
        </table>
      </section>
    </section>
  );
}
