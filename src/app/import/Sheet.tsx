/** A sheet of the file: whether it becomes a page, its headings, the kinds of its columns, and its first rows. */

import { useId } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { columnLetters } from "../../book/address.ts";
import { COLUMN_KINDS, type ColumnKind, type Page } from "../../book/shape.ts";
import type { SheetForm, UnderstoodSheet } from "../../exchange/table-form.ts";
import { KINDS } from "../grid/ColumnForm.tsx";

/** How many rows and columns are shown; the page itself has them all. */
const SHOWN_ROWS = 6;
const SHOWN_COLUMNS = 40;

interface Props {
  readonly sheet: UnderstoodSheet;
  readonly page: Page | null;
  /** Whether the file has no other sheet. */
  readonly only: boolean;
  /** The kinds and headings that were chosen, by column. */
  readonly kinds: SheetForm["kinds"];
  readonly chosen: SheetForm["called"];
  readonly onChange: (change: SheetForm) => void;
}

export function Sheet({ sheet, page, only, kinds, chosen, onChange }: Props) {
  const id = useId();
  const { title, rows, columns, headings, said, take, called = {} } = sheet;
  const more = page ? page.rows.length - SHOWN_ROWS : 0;
  return (
    <section className="import-sheet" aria-labelledby={id}>
      <h3 id={id}>{only ? phrase`The page ${title}` : title}</h3>
      <div className="import-choices">
        <span>
          {rows.toLocaleString("en")} {phrase`${plural(rows, "row", "rows")}`}, {columns.toLocaleString("en")}{" "}
          {phrase`${plural(columns, "column", "columns")}`}
        </span>
        {!only && (
          <label>
            <input
              type="checkbox"
              checked={take}
              onChange={(event) => onChange({ take: event.target.checked })}
            />
            <span>{phrase`Take this sheet`}</span>
          </label>
        )}
        {page && (
          <label>
            <input
              type="checkbox"
              checked={headings}
              onChange={(event) =>
                onChange({ headings: event.target.checked, kinds: undefined, called: undefined })
              }
            />
            <span>{phrase`Its first line holds the headings`}</span>
          </label>
        )}
      </div>
      <ul className="import-said">
        {said.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {page && (
        <section className="import-table" aria-label={phrase`The first rows of ${title}`}>
          <table>
            <thead>
              <tr>
                <th scope="col">
                  <span className="unseen">{phrase`Row`}</span>
                </th>
                {page.columns.slice(0, SHOWN_COLUMNS).map(({ heading, kind }, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their place
                  <th scope="col" key={i}>
                    <span className="import-heading">{heading || columnLetters(i)}</span>
                    {called[i] && (
                      <select
                        aria-label={phrase`Heading of column ${columnLetters(i)}`}
                        value={called[i].is ?? ""}
                        onChange={(event) => onChange({ called: { ...chosen, [i]: event.target.value } })}
                      >
                        <option value="">{phrase`“${called[i].heading}”, as it is`}</option>
                        {called[i].may.map((one) => (
                          <option key={one}>{one}</option>
                        ))}
                      </select>
                    )}
                    <select
                      aria-label={phrase`Contents of column ${columnLetters(i)}`}
                      value={kind}
                      onChange={(event) =>
                        onChange({ kinds: { ...kinds, [i]: event.target.value as ColumnKind } })
                      }
                    >
                      {COLUMN_KINDS.map((one) => (
                        <option key={one} value={one}>
                          {KINDS[one]}
                        </option>
                      ))}
                    </select>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {page.rows.slice(0, SHOWN_ROWS).map((row, r) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows are known by their place
                <tr key={r}>
                  <th scope="row">{r + 1}</th>
                  {page.columns.slice(0, SHOWN_COLUMNS).map((_, c) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: cells are known by their place
                    <td key={c}>{(row[c] ?? "").slice(0, 60)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          {(more > 0 || page.columns.length > SHOWN_COLUMNS) && (
            <p className="aside">
              {more > 0 && phrase`${more.toLocaleString("en")} more rows. `}
              {page.columns.length > SHOWN_COLUMNS &&
                phrase`${page.columns.length - SHOWN_COLUMNS} more columns.`}
            </p>
          )}
        </section>
      )}
    </section>
  );
}
