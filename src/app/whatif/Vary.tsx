/** Vary one or two typed cells and see what becomes of the cells that are watched. */
import { useMemo, useState } from "react";
import { oddSteps } from "../../engine/odd-steps.ts";
import { Upstream } from "../../engine/references.ts";
import { type Span, sweepCsv, type Watched } from "../../engine/sweep.ts";
import { figureText, type VariedCell } from "../../engine/varied-cell.ts";
import type { Question } from "../../worker/question.ts";
import { searchesByItself } from "../lay/by-itself.ts";
import { Choose } from "./Choose.tsx";
import { keyOf, usualSpan, variedChoices, watchChoices } from "./choices.ts";
import { download, picture } from "./downloads.ts";
import { useEditedBook } from "./edited-book.ts";
import { Heat } from "./Heat.tsx";
import { LaidNote } from "./LaidNote.tsx";
import { Plot } from "./Plot.tsx";
import { RowsTable } from "./RowsTable.tsx";
import { Slider } from "./Slider.tsx";
import { useAnswer } from "./useAnswer.ts";
import { WatchTable } from "./WatchTable.tsx";
import type { Asking } from "./WhatIf.tsx";

/** More plots than these can't be taken in at once. */
const MOST_WATCHED = 6;
const FIRST_WATCHED = 3;

export function Vary({ store, place, trying, client }: Asking) {
  const book = useEditedBook(store);
  const [keys, setKeys] = useState(["", ""]);
  const [spans, setSpans] = useState<Readonly<Record<string, Span>>>({});
  const [chosen, setChosen] = useState<readonly string[] | null>(null);

  const choices = useMemo(() => variedChoices(book, place), [book, place]);
  const byKey = (key: string) => choices.find((one) => keyOf(book, one.place) === key);
  const first = byKey(keys[0]!) ?? byKey(keyOf(book, place)) ?? null;
  const second = (first && keys[1] && keys[1] !== keyOf(book, first.place) && byKey(keys[1])) || null;
  const varied = [first, second].filter((one): one is VariedCell => one !== null);
  const spanOf = (cell: VariedCell): Span =>
    spans[`${varied.length}${keyOf(book, cell.place)}`] ?? usualSpan(cell, varied.length > 1 ? 8 : 48);
  const setSpan = (cell: VariedCell, span: Span) =>
    setSpans({ ...spans, [`${varied.length}${keyOf(book, cell.place)}`]: span });

  const firstKey = first && keyOf(book, first.place);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the engine follows the book, and the varied cell is known by its key
  const following = useMemo(
    () =>
      first
        ? watchChoices(store.engine, place).filter((one) => new Upstream(book, [one.place]).has(first.place))
        : [],
    [book, place, firstKey],
  );
  const usual = following.filter(({ kind }) => kind !== "verdict").slice(-FIRST_WATCHED);
  const watched = chosen ? following.filter((one) => chosen.includes(keyOf(book, one.place))) : usual;
  const setWatched = (next: readonly Watched[]) => setChosen(next.map((one) => keyOf(book, one.place)));

  const asked = JSON.stringify([varied.map((cell) => [cell.place, spanOf(cell)]), watched]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `asked` tells all that is asked
  const question = useMemo<Question | null>(
    () =>
      varied.length > 0 && watched.length > 0
        ? {
            is: "sweep",
            refine: searchesByItself(),
            book,
            varied: varied.map((cell) => cell.place),
            spans: varied.map(spanOf),
            watched,
          }
        : null,
    [book, asked],
  );
  const answer = useAnswer(client, question);
  const { rows, thresholds, problem, busy, seconds, refining } = answer;
  const shown = answer.question?.is === "sweep" ? answer.question.watched : [];
  const jumps = thresholds.flatMap((one) =>
    one.tooMany
      ? [`${one.watched.label} jumps at more values than can be listed`]
      : one.jumps.map(({ sentence }) => sentence),
  );
  const odd = oddSteps({ book, varied }, rows);
  const name = `${book.title} ${varied.map(({ label }) => label).join(" ")}`;

  return (
    <div className="vary">
      <Choose
        book={book}
        label="Change"
        of={choices}
        value={keys[0]!}
        none="the selected cell"
        onChoose={(key) => setKeys([key, keys[1]!])}
      />
      {!first && (
        <p className="empty">Select a cell with a typed value in the grid, or choose one from this list.</p>
      )}
      {first && (
        <Slider
          book={book}
          cell={first}
          figure={trying.figure(first)}
          span={spanOf(first)}
          onFigure={(figure) => trying.set(first, figure)}
          onSpan={(span) => setSpan(first, span)}
          onDrop={trying.drop}
        />
      )}
      {first && (
        <Choose
          book={book}
          label="and"
          of={choices.filter((one) => one !== first)}
          value={second ? keys[1]! : ""}
          none="no other"
          onChoose={(key) => setKeys([keys[0]!, key])}
        />
      )}
      {second && (
        <Slider
          book={book}
          cell={second}
          figure={trying.figure(second)}
          span={spanOf(second)}
          onFigure={(figure) => trying.set(second, figure)}
          onSpan={(span) => setSpan(second, span)}
          onDrop={trying.drop}
        />
      )}
      {first && (
        <WatchTable
          store={store}
          watched={watched}
          following={following}
          most={MOST_WATCHED}
          onWatched={setWatched}
        />
      )}
      {problem && (
        <p className="look" role="alert">
          {problem}
        </p>
      )}
      <div className="plots" aria-busy={busy}>
        {rows.length > 0 &&
          shown.map((one, i) =>
            varied.length > 1 ? (
              <Heat key={one.label} book={book} varied={varied} watched={one} index={i} rows={rows} />
            ) : (
              <Plot
                key={one.label}
                book={book}
                cell={first!}
                watched={one}
                index={i}
                rows={rows}
                thresholds={thresholds[i] ?? null}
                at={trying.figure(first!)}
                target={null}
              />
            ),
          )}
      </div>
      <LaidNote seconds={seconds} refining={refining} />
      <div role="status">
        {odd.map((sentence) => (
          <p key={sentence} className="look">
            {sentence}
          </p>
        ))}
        {jumps.length > 0 && (
          <ul className="jumps">
            {jumps.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </div>
      {rows.length > 0 && varied.length > 0 && (
        <>
          <RowsTable book={book} varied={varied} watched={shown} rows={rows} />
          <div className="acts">
            <button
              type="button"
              onClick={() =>
                download(
                  `${name}.csv`,
                  new Blob([sweepCsv({ book, varied }, shown, rows)], { type: "text/csv" }),
                )
              }
            >
              Save as CSV
            </button>
            {varied.length === 1 && (
              <button
                type="button"
                onClick={async () =>
                  download(
                    `${name}.png`,
                    await picture(
                      `${name}, ${figureText(book, first!.kind, spanOf(first!).from)} to ${figureText(book, first!.kind, spanOf(first!).to)}`,
                    ),
                  )
                }
              >
                Save as a picture
              </button>
            )}
          </div>
        </>
      )}
    </div>
  );
}
