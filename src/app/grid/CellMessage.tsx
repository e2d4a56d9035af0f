/** The line under the formula: why an edit was refused, which cell a formula belongs to, the cell's problem, its value at full precision. */
import { phrase, plural } from "../../../functions/phrase.ts";
import {
  type Block,
  cellAddress,
  columnLetters,
  fullAddress,
  noteAt,
  type Place,
  placeKey,
} from "../../book/address.ts";
import { settingsAt } from "../../book/cell-marks.ts";
import type { Book } from "../../book/shape.ts";
import { besideText } from "../../engine/beside-answer.ts";
import { estimateText } from "../../engine/estimates.ts";
import { fittedText } from "../../engine/fitted-text.ts";
import { cellText, labelOf } from "../../engine/label.ts";
import { laidText } from "../../engine/laid.ts";
import { laysBelowText } from "../../engine/lays-below.ts";
import { saidTexts } from "../../engine/pointed.ts";
import { hasAnswer } from "../../engine/sentences.ts";
import { exact } from "../../engine/show.ts";
import type { CellView } from "../../engine/view.ts";
import { countColumn } from "../../store/commands.ts";
import { lengthenList } from "../../store/names.ts";
import type { Command } from "../../store/store.ts";
import { handOn } from "../keyboard.ts";
import { type EditSession, samePlace } from "./edit-session.ts";

interface Props {
  readonly session: EditSession;
  readonly place: Place;
  /** Whether another cell is selected while the formula of this one is being typed. */
  readonly away: boolean;
  readonly exactly: boolean;
}

export function CellMessage(props: Props) {
  const { session, place, away } = props;
  // What the grid says of the chosen cell anyway is not read aloud a second time.
  const news = away || session.refusedAt(place) || session.cutBlock;
  return (
    <div className="cell-message">
      <p id="cell-message" role="status" aria-live={news ? "polite" : "off"}>
        {messageOf(props)}
        <Note {...props} />
        <Photo {...props} />
      </p>
    </div>
  );
}

function messageOf({ session, place, away, exactly }: Props) {
  const { shown: book, engine } = session.store;
  const refused = session.refusedAt(place);
  if (refused) return <span className="cell-message-problem">{refused.sentence}</span>;
  if (away) {
    return (
      <span className="cell-message-about">{phrase`Enter puts this into ${fullAddress(book, place)}, Escape drops it.`}</span>
    );
  }
  if (session.caret?.call) return null;
  if (session.cutBlock) {
    return (
      <span className="cell-message-about">
        {phrase`${blockText(session.cutBlock)} is cut: select a cell and paste to move it there, or press Escape to cancel.`}
      </span>
    );
  }
  const view = engine.view(place);
  if (view.problem) {
    const waits = !samePlace(view.problem.from, place);
    return (
      <span className={view.problem.is === "pending" ? "cell-message-about" : "cell-message-problem"}>
        {waits && phrase`waits for ${cellText(book, view.problem.from)}: `}
        {view.problem.sentence}
        {hasAnswer(view.problem) && <Beside text={besideText(engine, place)} />}
        <CountKeys session={session} place={place} />
      </span>
    );
  }
  const said = saidTexts(book, engine.saidOf(place));
  if (said.length > 0) {
    const more = said.length - 1;
    return (
      <span className="cell-message-problem">
        {more === 0
          ? said[0]
          : phrase`${said[0]!}; ${plural(more, "# more problem is", "# more problems are")} about this cell`}
      </span>
    );
  }
  const parts = besideText(engine, place);
  const laid = view.origin ? laidText(view.origin) : laysBelowText(engine, place);
  const estimate = estimateText(engine, place);
  const fitted = fittedText(engine, place);
  return (
    <>
      {exactly && (
        <span className="cell-message-exact">
          {phrase`full precision: ${exact(view.value, view.kind, book) || phrase`blank`}`}
        </span>
      )}
      {exactly && (parts || laid || estimate || fitted) && " "}
      {parts && <span className="cell-message-about">{parts}</span>}
      {parts && (laid || estimate || fitted) && "; "}
      {laid && <span className="cell-message-about">{laid}</span>}
      {estimate && <span className="cell-message-about">{estimate}</span>}
      {fitted && <span className="cell-message-about">{fitted}</span>}
      {!(exactly || parts || laid || estimate || fitted) &&
        (isCutOff(book, place, view) ? (
          <span className="cell-message-about" dir="auto">
            {view.shown}
          </span>
        ) : (
          <RowLabel book={book} place={place} />
        ))}
    </>
  );
}

/** About the least width of a letter in a cell, and what a cell has beside its text, in pixels. */
const [LETTER, AROUND] = [5.5, 28];

/** Whether a text that a formula gives, such as a list of names, is likely longer than its cell. */
const isCutOff = (book: Book, { page, column }: Place, { worked, kind, value, shown }: CellView): boolean =>
  worked &&
  typeof value === "string" &&
  kind !== "piece" &&
  LETTER * shown.length + AROUND > (book.pages[page]!.columns[column]?.width ?? 0);

/** What stands beside an answer that has a problem as well. */
const Beside = ({ text }: { readonly text: string }) =>
  text && <span className="cell-message-about"> {text}</span>;

/** What the row of the cell is called by, on a page that may be slid away from it. */
function RowLabel({ book, place }: { readonly book: Book; readonly place: Place }) {
  const label = place.column > 0 && !book.pages[place.page]?.frozen && labelOf(book, place);
  return label ? (
    <span className="cell-message-label" dir="auto">
      {label}
    </span>
  ) : null;
}

/** The note of the cell, except while a formula or a refused edit needs the line. */
function Note({ session, place }: Props) {
  const note = noteAt(session.store.shown, place);
  if (note === "" || session.refusedAt(place) || session.caret?.call) return null;
  return (
    <span className="cell-message-note">
      {phrase`Note: `}
      <span dir="auto">{note}</span>
    </span>
  );
}

/** The photograph of the cell, larger than in the cell itself. */
function Photo({ session, place }: Props) {
  const { photograph, photographWords = "" } = settingsAt(session.store.shown, place) ?? {};
  if (!photograph || session.refusedAt(place) || session.caret?.call) return null;
  return <img className="cell-message-photo" src={photograph} alt={photographWords || phrase`photograph`} />;
}

/** "B1", or "B1:C4". */
function blockText({ top, left, bottom, right }: Block): string {
  const [from, to] = [cellAddress(top, left), cellAddress(bottom, right)];
  return from === to ? from : `${from}:${to}`;
}

/** The buttons that let formulas use what the cell holds: the numbers of a column of text, or what is typed directly beneath a list. */
function CountKeys({ session, place }: Pick<Props, "session" | "place">) {
  const { column, beneath } = session.store.engine.uncounted.get(placeKey(place)) ?? {};
  const key = (label: string, command: Command) => (
    <button
      type="button"
      className="cell-message-act"
      onClick={() => {
        handOn(".cell-message", () => session.takeBack());
        session.run(command, place);
      }}
    >
      {label}
    </button>
  );
  return (
    <>
      {column &&
        key(
          phrase`Calculate with column ${columnLetters(column.column)}`,
          countColumn(column.page, column.column),
        )}
      {beneath &&
        key(
          phrase`Lengthen ${beneath.list.name} to row ${beneath.to + 1}`,
          lengthenList(beneath.list.name, beneath.list.of, beneath.to),
        )}
    </>
  );
}
