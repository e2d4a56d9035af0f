/** The rows of a sweep in words, for who would rather read than look. */
import { memo } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { oddAt } from "../../engine/odd-steps.ts";
import { type Row, readingText, type Watched } from "../../engine/sweep.ts";
import { figureText, type VariedCell } from "../../engine/varied-cell.ts";

interface Props {
  readonly book: Book;
  readonly varied: readonly VariedCell[];
  readonly watched: readonly Watched[];
  readonly rows: readonly Row[];
  /** Whether more rows are awaited. */
  readonly busy: boolean;
  /** Whether the calculation was stopped before the last row. */
  readonly stopped: boolean;
}

/** A longer table is for the file. */
const MOST_ROWS = 500;

export const RowsTable = memo(function RowsTable({ book, varied, watched, rows, busy, stopped }: Props) {
  const count = rows.length;
  const odd = rows.some((row) => row.odd);
  return (
    <details className="rows">
      <summary>
        {busy
          ? phrase`The ${count} steps calculated so far, as a table`
          : stopped
            ? phrase`The first ${count} steps as a table: the calculation was stopped`
            : phrase`All ${count} steps as a table`}
      </summary>
      <table className="figures-table">
        <thead>
          <tr>
            {[...varied, ...watched].map(({ label }) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
            {odd && <th scope="col">{phrase`unusual`}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_ROWS).map((row) => (
            <tr key={row.figures.join(" ")}>
              {varied.map((cell, i) => (
                <th key={cell.label} scope="row">
                  {figureText(book, cell.kind, row.figures[i]!)}
                </th>
              ))}
              {row.readings.map((reading, i) =>
                watched[i] ? (
                  <td key={watched[i].label} className={"sentence" in reading ? "look" : undefined}>
                    {readingText(book, watched[i], reading)}
                  </td>
                ) : null,
              )}
              {odd && <td className="look">{oddAt(row)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > MOST_ROWS && <p className="aside">{phrase`The CSV file has all of them.`}</p>}
    </details>
  );
});
