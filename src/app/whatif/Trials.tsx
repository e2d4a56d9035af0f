/** Trials: settings kept in the book under titles, side by side. */
import { phrase } from "../../../functions/phrase.ts";
import { isUnsure } from "../../engine/laid.ts";
import { titleText } from "../../engine/trial-titles.ts";
import { AS_IT_STANDS, type Comparison } from "../../engine/trials.ts";
import { handOn } from "../keyboard.ts";
import type { Asking } from "./asking.ts";
import { Calculating } from "./Calculating.tsx";
import { LaidNote } from "./LaidNote.tsx";
import { Overlay } from "./Overlay.tsx";
import { type TrialsState, useTrials } from "./useTrials.ts";

export function Trials(asking: Asking) {
  const trials = useTrials(asking);
  const { answer, comparison, refusal } = trials;
  return (
    <div className="trials">
      <SaveTrial trials={trials} />
      {[refusal, answer.problem].map(
        (sentence) =>
          sentence && (
            <p key={sentence} className="look" role="alert">
              {sentence}
            </p>
          ),
      )}
      {!trials.has && (
        <p className="empty">{phrase`No trials yet. Change a cell under Vary and give the change a title here: the trial is saved in the book; the book's own values stay as they are.`}</p>
      )}
      <Calculating answer={answer} late />
      {comparison && (
        <section
          className="compare"
          aria-label={phrase`Trials side by side`}
          aria-busy={answer.busy}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
          tabIndex={0}
        >
          <SideBySide comparison={comparison} trials={trials} />
          <LaidNote laid={answer.laid} refining={answer.refining} decimal={asking.store.shown.decimal} />
          <Unsure comparison={comparison} />
          {comparison.outputs
            .filter(({ kind }) => kind === "piece")
            .map(({ label, views }) => (
              <Overlay
                key={label}
                label={label}
                titles={comparison.titles.map(titleText)}
                pieces={views.map(({ value }) => value)}
              />
            ))}
        </section>
      )}
    </div>
  );
}

function SaveTrial({ trials: { title, setTitle, keep } }: { trials: TrialsState }) {
  return (
    <form
      className="acts"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <span className="choose">
        <label htmlFor="trial-title">{phrase`Title of the trial`}</label>
        <input
          id="trial-title"
          dir="auto"
          value={title}
          maxLength={200}
          placeholder={phrase`an inch deeper`}
          onChange={(event) => setTitle(event.target.value)}
        />
      </span>
      <button type="submit" className="keep">{phrase`Save as a trial`}</button>
    </form>
  );
}

/** The settings that differ, what comes of each, and what can be done with each trial. */
function SideBySide({ comparison, trials }: { comparison: Comparison; trials: TrialsState }) {
  const { titles, inputs, outputs } = comparison;
  return (
    <table className="figures-table">
      <thead>
        <tr>
          <td />
          {titles.map((one) => (
            <th key={one} scope="col">
              {titleText(one)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {inputs.map(({ label, typed }) => (
          <tr key={label} className="given">
            <th scope="row">{label}</th>
            {typed.map((text, i) => (
              <td key={titles[i]}>{text || phrase`blank`}</td>
            ))}
          </tr>
        ))}
        {outputs.map(({ label, views, answers }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            {views.map((view, i) => (
              <td
                key={titles[i]}
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
          {titles.map((one) => (
            <td key={one}>{one !== AS_IT_STANDS && <TrialActs title={one} trials={trials} />}</td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}

function TrialActs({ title, trials }: { title: string; trials: TrialsState }) {
  return (
    <span className="acts">
      <button
        type="button"
        onClick={() => {
          handOn(".trials");
          trials.adopt(title);
        }}
      >
        {phrase`Adopt`}
        <span className="unseen"> {title}</span>
      </button>
      <button
        type="button"
        onClick={() => {
          handOn(".trials");
          trials.remove(title);
        }}
      >
        {phrase`Delete`}
        <span className="unseen"> {title}</span>
      </button>
    </span>
  );
}

/** The differences that a longer search may take away. */
function Unsure({ comparison: { titles, outputs } }: { comparison: Comparison }) {
  const sentences = outputs.flatMap(({ label, views, origins }) =>
    views.flatMap(({ value }, i) =>
      i > 0 && isUnsure(views[0]!.value, value, [origins[0]!, origins[i]!])
        ? [
            phrase`${label}: the difference between “${titleText(titles[i]!)}” and “${titleText(titles[0]!)}” is smaller than what a longer search may change.`,
          ]
        : [],
    ),
  );
  return sentences.length === 0 ? null : (
    <ul className="unsure">
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
