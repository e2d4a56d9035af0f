/** Two cells varied at once: a table of what one watched cell holds, shaded, its least and greatest marked. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { numberOf } from "../../engine/question-engine.ts";
import { type Row, readingText, type Watched } from "../../engine/sweep.ts";
import { figureText, type VariedCell } from "../../engine/varied-cell.ts";

interface Props {
  readonly book: Book;
  readonly varied: readonly VariedCell[];
  readonly watched: Watched;
  readonly index: number;
  readonly rows: readonly Row[];
}

/** A wider or longer table can't be read beside the grid. */
const MOST = 40;

export function Heat({ book, varied, watched, index, rows }: Props) {
  const [down, across] = varied as [VariedCell, VariedCell];
  const unique = (i: number) => [...new Set(rows.map(({ figures }) => figures[i]!))].slice(0, MOST);
  const readings = new Map(rows.map(({ figures, readings: all }) => [figures.join(" "), all[index]!]));
  const numbers = rows.flatMap((row) => numberOf(row.readings[index]) ?? []);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return (
    <section
      className="heat"
      aria-label={phrase`${watched.label} by ${down.label} and ${across.label}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
      tabIndex={0}
    >
      <table className="figures-table">
        <caption>
          {phrase`${watched.label}: ${down.label} in rows, ${across.label} in columns; ▾ smallest, ▴ largest`}
        </caption>
        <thead>
          <tr>
            <td />
            {unique(1).map((figure) => (
              <th key={figure} scope="col">
                {figureText(book, across.kind, figure)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {unique(0).map((figure) => (
            <tr key={figure}>
              <th scope="row">{figureText(book, down.kind, figure)}</th>
              {unique(1).map((other) => {
                const reading = readings.get(`${figure} ${other}`);
                const value = numberOf(reading);
                const share = value === null || most === least ? 0 : (value - least) / (most - least);
                const end =
                  value === null || most === least ? "" : value === least ? " ▾" : value === most ? " ▴" : "";
                return (
                  <td
                    key={other}
                    className={reading && "sentence" in reading ? "heat-look" : undefined}
                    title={reading && "sentence" in reading ? reading.sentence : undefined}
                    style={{
                      background: `color-mix(in srgb, var(--accent) ${Math.round(28 * share)}%, var(--paper))`,
                    }}
                  >
                    {reading && ("sentence" in reading ? phrase`error` : readingText(book, watched, reading))}
                    {end}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
