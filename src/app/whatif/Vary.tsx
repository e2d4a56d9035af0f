/** Vary one or two typed cells and see what becomes of the cells that are watched. */
import { phrase } from "../../../functions/phrase.ts";
import { oddSteps } from "../../engine/odd-steps.ts";
import { sweepCsv } from "../../engine/sweep.ts";
import { figureText, type VariedCell } from "../../engine/varied-cell.ts";
import { Guard } from "../faults/Guard.tsx";
import type { Asking } from "./asking.ts";
import { Calculating } from "./Calculating.tsx";
import { Choose } from "./Choose.tsx";
import { download, picture } from "./downloads.ts";
import { Heat } from "./Heat.tsx";
import { LaidNote } from "./LaidNote.tsx";
import { Plot } from "./Plot.tsx";
import { RowsTable } from "./RowsTable.tsx";
import { Slider } from "./Slider.tsx";
import type { Trying } from "./trying.ts";
import { useVary, type VaryState } from "./useVary.ts";
import { WatchTable } from "./WatchTable.tsx";

/** More plots than these can't be taken in at once. */
const MOST_WATCHED = 6;

export function Vary(asking: Asking) {
  const { store, trying } = asking;
  const vary = useVary(asking);
  const { book, choices, first, second, answer } = vary;
  return (
    <div className="vary">
      <Choose
        book={book}
        label={phrase`Change`}
        of={choices}
        value={vary.chosenKeys[0]!}
        none={phrase`the selected cell`}
        onChoose={vary.chooseFirst}
      />
      {!first && (
        <p className="empty">{phrase`Select a cell with a typed value in the grid, or choose one from this list.`}</p>
      )}
      {first && <CellSlider cell={first} vary={vary} trying={trying} />}
      {first && (
        <Choose
          book={book}
          label={phrase`and`}
          of={choices.filter((one) => one !== first)}
          value={second ? vary.chosenKeys[1]! : ""}
          none={phrase`no other`}
          onChoose={vary.chooseSecond}
        />
      )}
      {second && <CellSlider cell={second} vary={vary} trying={trying} />}
      {first && (
        <WatchTable
          store={store}
          watched={vary.watched}
          following={vary.following}
          most={MOST_WATCHED}
          onWatched={vary.setWatched}
        />
      )}
      {answer.problem && (
        <p className="look" role="alert">
          {answer.problem}
        </p>
      )}
      <Plots vary={vary} trying={trying} />
      <LaidNote laid={answer.laid} refining={answer.refining} decimal={book.decimal} />
      <Sentences vary={vary} />
      <Files vary={vary} />
    </div>
  );
}

interface Part {
  readonly vary: VaryState;
}

function CellSlider({ cell, vary, trying }: Part & { cell: VariedCell; trying: Trying }) {
  return (
    <Slider
      book={vary.book}
      cell={cell}
      figure={trying.figure(cell)}
      span={vary.spanOf(cell)}
      onFigure={(figure) => trying.set(cell, figure)}
      onSpan={(span) => vary.setSpan(cell, span)}
      onDrop={trying.drop}
    />
  );
}

/** A plot of each watched cell, or a table of it when two cells are varied. */
function Plots({ vary, trying }: Part & { trying: Trying }) {
  const { book, answered, shown, answer } = vary;
  const { rows, thresholds, busy } = answer;
  const [first] = answered;
  return (
    <div className="plots" aria-busy={busy}>
      <Calculating answer={answer} late />
      {first &&
        rows.length > 0 &&
        shown.map((one, i) => (
          <Guard key={one.label} name={phrase`The plot of ${one.label}`} of={rows}>
            {answered.length > 1 ? (
              <Heat book={book} varied={answered} watched={one} index={i} rows={rows} />
            ) : (
              <Plot
                book={book}
                cell={first}
                watched={one}
                index={i}
                rows={rows}
                thresholds={thresholds[i] ?? null}
                at={trying.figure(first)}
                target={null}
              />
            )}
          </Guard>
        ))}
    </div>
  );
}

/** Where something is unusual, and where the watched cells jump. */
function Sentences({ vary: { book, answered, answer } }: Part) {
  const jumps = answer.thresholds.flatMap((one) =>
    one.tooMany
      ? [phrase`${one.watched.label} jumps at more values than can be listed`]
      : one.jumps.map(({ sentence }) => sentence),
  );
  return (
    <div role="status">
      {oddSteps({ book, varied: answered }, answer.rows).map((sentence) => (
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
  );
}

/** The rows as a table, and the files to save once all are there; of a calculation that was stopped, those that are. */
function Files({ vary }: Part) {
  const { book, answered, spans, shown } = vary;
  const { rows, busy, isStopped } = vary.answer;
  const [first] = answered;
  const [span] = spans;
  if (rows.length === 0 || !first || !span) return null;
  const ended = isStopped ? `, ${phrase`the first ${rows.length} steps`}` : "";
  const name = `${book.title} ${answered.map(({ label }) => label).join(" ")}${ended}`;
  const saveTable = () => {
    const text = sweepCsv({ book, varied: answered }, shown, rows);
    if (!busy) download(`${name}.csv`, new Blob([text], { type: "text/csv" }));
  };
  const savePicture = async () => {
    if (busy) return;
    const { from, to } = span;
    const range = [from, to].map((figure) => figureText(book, first.kind, figure)).join(" to ");
    download(`${name}.png`, await picture(`${name}, ${range}`));
  };
  return (
    <>
      <RowsTable book={book} varied={answered} watched={shown} rows={rows} busy={busy} stopped={isStopped} />
      <div className="acts">
        <button type="button" aria-disabled={busy} onClick={saveTable}>{phrase`Save as CSV`}</button>
        {answered.length === 1 && (
          <button
            type="button"
            aria-disabled={busy}
            onClick={savePicture}
          >{phrase`Save as a picture`}</button>
        )}
      </div>
    </>
  );
}
