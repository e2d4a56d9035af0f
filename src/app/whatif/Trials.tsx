/** Trials: settings kept in the book under titles, side by side. */
import { useMemo, useState } from "react";
import { isUnsure } from "../../engine/laid.ts";
import { AS_IT_STANDS, type Comparison, trialPlaces } from "../../engine/trials.ts";
import { typedFor } from "../../engine/varied-cell.ts";
import type { Command } from "../../store/store.ts";
import { adoptTrial, deleteTrial, keepTrial } from "../../store/trials.ts";
import type { Question } from "../../worker/question.ts";
import { searchesByItself } from "../lay/by-itself.ts";
import { keyOf } from "./choices.ts";
import { useEditedBook } from "./edited-book.ts";
import { LaidNote } from "./LaidNote.tsx";
import { Overlay } from "./Overlay.tsx";
import { useAnswer } from "./useAnswer.ts";
import type { Asking } from "./WhatIf.tsx";

export function Trials({ store, trying, client }: Asking) {
  const book = useEditedBook(store);
  const [title, setTitle] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const question = useMemo<Question | null>(
    () => (book.trials.length > 0 ? { is: "compare", refine: searchesByItself(), book } : null),
    [book],
  );
  const { comparison, busy, problem, seconds, refining } = useAnswer(client, question);
  const run = (command: Command) => {
    const sentence = store.run(command);
    setRefusal(sentence);
    return sentence === null;
  };
  const keep = () => {
    const tried = trying.changes.map(([cell, figure]) => ({
      ...cell.place,
      typed: typedFor(book, cell, figure),
    }));
    const known = new Set(tried.map((place) => keyOf(book, place)));
    // Cells that other trials set are kept as they stand, so that all trials can be told apart later.
    const others = trialPlaces(book).filter((place) => !known.has(keyOf(book, place)));
    if (run(keepTrial(title, [...tried, ...others]))) setTitle("");
  };
  return (
    <div className="trials">
      <form
        className="acts"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <span className="choose">
          <label htmlFor="trial-title">Title of the trial</label>
          <input
            id="trial-title"
            value={title}
            maxLength={200}
            placeholder="an inch deeper"
            onChange={(event) => setTitle(event.target.value)}
          />
        </span>
        <button type="submit" className="keep">
          Save as a trial
        </button>
      </form>
      {refusal && (
        <p className="look" role="alert">
          {refusal}
        </p>
      )}
      {problem && (
        <p className="look" role="alert">
          {problem}
        </p>
      )}
      {book.trials.length === 0 && (
        <p className="empty">
          No trials yet. Change a cell under Vary and give the change a title here: the trial is saved in the
          book; the book's own values stay as they are.
        </p>
      )}
      {question && comparison && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
        <section className="compare" aria-label="Trials side by side" aria-busy={busy} tabIndex={0}>
          <table className="figures-table">
            <thead>
              <tr>
                <td />
                {comparison.titles.map((one) => (
                  <th key={one} scope="col">
                    {one}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {comparison.inputs.map(({ label, typed }) => (
                <tr key={label} className="given">
                  <th scope="row">{label}</th>
                  {typed.map((text, i) => (
                    <td key={comparison.titles[i]}>{text || "blank"}</td>
                  ))}
                </tr>
              ))}
              {comparison.outputs.map(({ label, views, answers }) => (
                <tr key={label}>
                  <th scope="row">{label}</th>
                  {views.map((view, i) => (
                    <td
                      key={comparison.titles[i]}
                      className={view.problem ? "look" : undefined}
                      title={view.problem?.sentence}
                    >
                      {answers[i]}
                    </td>
                  ))}
                </tr>
              ))}
              <tr>
                <td />
                {comparison.titles.map((one) => (
                  <td key={one}>
                    {one !== AS_IT_STANDS && (
                      <span className="acts">
                        <button type="button" onClick={() => run(adoptTrial(one))}>
                          Adopt<span className="unseen"> {one}</span>
                        </button>
                        <button type="button" onClick={() => run(deleteTrial(one))}>
                          Delete<span className="unseen"> {one}</span>
                        </button>
                      </span>
                    )}
                  </td>
                ))}
              </tr>
            </tbody>
          </table>
          <LaidNote seconds={seconds} refining={refining} />
          <Unsure comparison={comparison} />
          {comparison.outputs
            .filter(({ kind }) => kind === "piece")
            .map(({ label, views }) => (
              <Overlay
                key={label}
                label={label}
                titles={comparison.titles}
                pieces={views.map(({ value }) => value)}
              />
            ))}
        </section>
      )}
    </div>
  );
}

/** The differences that a longer search may take away. */
function Unsure({ comparison: { titles, outputs } }: { comparison: Comparison }) {
  const told = outputs.flatMap(({ label, views, origins }) =>
    views.flatMap(({ value }, i) =>
      i > 0 && isUnsure(views[0]!.value, value, [origins[0]!, origins[i]!])
        ? [
            `${label}: the difference between “${titles[i]}” and “${titles[0]}” is smaller than what a longer search may change.`,
          ]
        : [],
    ),
  );
  return told.length === 0 ? null : (
    <ul className="unsure">
      {told.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
