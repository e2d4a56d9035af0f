/** The top of the page: the book's title, its unit and finest mark, undo and redo, the way to other books. */

import { phrase } from "../../../functions/phrase.ts";
import { UNIT_WORDS } from "../../book/unit-words.ts";
import "./top.css";
import { useState } from "react";
import type { Decimal } from "../../../functions/decimal.ts";
import type { TapeMark } from "../../../functions/fractions.ts";
import { BOOK_UNITS, UNITS, type Unit } from "../../../functions/units.ts";
import { changeDecimal, changeMark, retitle } from "../../store/commands.ts";
import type { Command, Store } from "../../store/store.ts";
import { copyText, lastCopy } from "../files/copies.ts";
import type { Keeping } from "../files/keeping.ts";
import { whenText } from "../files/when.ts";
import { language, setLanguage } from "../language/language.ts";
import { saidIfMany, takeStep } from "../progress/large-steps.ts";
import { useSaid } from "../spoken.ts";

interface Props {
  readonly store: Store;
  readonly keeping: Keeping;
  readonly onNew: () => void;
  readonly onBooks: () => void;
  readonly onSave: () => void;
  readonly onPrint: () => void;
  readonly onHelp: () => void;
  readonly onRefused: (sentence: string) => void;
}

export function Top({ store, keeping, onNew, onBooks, onSave, onPrint, onHelp, onRefused }: Props) {
  const { unit, mark, decimal = "point" } = store.shown;
  const report = (refusal: string | null) => {
    if (refusal) onRefused(refusal);
  };
  const run = (command: Command) => {
    report(store.run(command));
  };
  /** In a large book every cell is calculated again, which takes a while: what goes on is said first. */
  const runAll = (command: Command, what: string) => {
    const cells = store.book.pages.reduce((sum, { rows, columns }) => sum + rows.length * columns.length, 0);
    saidIfMany(
      store,
      cells,
      () => what,
      () => run(command),
    );
  };
  const own: readonly TapeMark[] = BOOK_UNITS[unit].marks;
  const marks = own.includes(mark) ? own : [mark, ...own];
  return (
    <header className="top">
      <h1 className="brand">Ellwand</h1>
      <Title title={store.shown.title} onTitle={(title) => run(retitle(title))} />
      <span className="keeping" title={copyText(keeping)}>
        <span>
          <Kept state={keeping.state} />
          <span className={keeping.state === "unsaved" ? "kept look" : "kept"}>{STATES[keeping.state]}</span>
          {keeping.state === "saved" && keeping.keptAt && (
            <span className="copied"> {whenText(keeping.keptAt)}</span>
          )}
        </span>
        <span className="copied">{lastCopy(keeping)}</span>
      </span>
      <div className="top-acts">
        <div className="top-group">
          <button type="button" onClick={onNew}>{phrase`New`}</button>
          <button type="button" onClick={onBooks}>{phrase`Books`}</button>
          <button type="button" onClick={onSave}>{phrase`Save a file`}</button>
          <button type="button" onClick={onPrint}>{phrase`Print`}</button>
        </div>
        <div className="top-group">
          <button
            type="button"
            // It keeps the keyboard when nothing is left to undo.
            aria-disabled={!store.undoable}
            title={store.undoable && phrase`Undo: ${store.undoable}`}
            onClick={() => takeStep(store, false, onRefused)}
          >{phrase`Undo`}</button>
          <button
            type="button"
            aria-disabled={!store.redoable}
            title={store.redoable && phrase`Redo: ${store.redoable}`}
            onClick={() => takeStep(store, true, onRefused)}
          >{phrase`Redo`}</button>
        </div>
        <button type="button" onClick={onHelp}>{phrase`Help`}</button>
        <div className="top-group">
          <label>
            <span>{phrase`Unit`}</span>
            <select
              value={unit}
              onChange={async (event) => {
                const to = event.target.value as Unit;
                const { changeUnit } = await import("../../store/change-unit.ts");
                runAll(changeUnit(to), phrase`Changing the unit to ${UNIT_WORDS[to]}`);
              }}
            >
              {UNITS.map((one) => (
                <option key={one} value={one}>
                  {UNIT_WORDS[one]}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>{phrase`Round to`}</span>
            <select
              value={mark}
              aria-label={phrase`Round lengths to`}
              onChange={(event) => run(changeMark(event.target.value as TapeMark))}
            >
              {marks.map((one) => (
                <option key={one} value={one}>
                  {one.includes("/") ? phrase`${one} in` : one}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>{phrase`Decimals`}</span>
            <select
              value={decimal}
              aria-label={phrase`Decimal mark`}
              onChange={(event) =>
                runAll(changeDecimal(event.target.value as Decimal), phrase`Changing the decimal mark`)
              }
            >
              <option value="point">28.5</option>
              <option value="comma">28,5</option>
            </select>
          </label>
          {language.all.length > 1 && (
            <label>
              <span>{phrase`Language`}</span>
              <select value={language.tag} onChange={(event) => setLanguage(event.target.value)}>
                {language.all.map(({ tag, name }) => (
                  <option key={tag} value={tag} lang={tag}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      </div>
    </header>
  );
}

const STATES = {
  saved: phrase`Saved in this browser`,
  saving: phrase`Saving …`,
  unsaved: phrase`Not saved`,
} as const;

/** Whether the book is saved, read aloud when saving fails and when it succeeds again, not after every key. */
function Kept({ state }: Pick<Keeping, "state">) {
  const [failed, setFailed] = useState(state === "unsaved");
  if (state !== "saving" && failed !== (state === "unsaved")) setFailed(state === "unsaved");
  const said = useSaid(failed ? STATES.unsaved : STATES.saved);
  return (
    <span className="unseen" role="status">
      {said}
    </span>
  );
}

function Title({ title, onTitle }: { title: string; onTitle: (title: string) => void }) {
  const [draft, setDraft] = useState<string | null>(null);
  const keep = () => {
    if (draft !== null && draft.trim() !== title) onTitle(draft.trim());
    setDraft(null);
  };
  return (
    <input
      className="title"
      dir="auto"
      aria-label={phrase`Title of the book`}
      maxLength={200}
      value={draft ?? title}
      onChange={(event) => setDraft(event.target.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === "Enter") keep();
        if (event.key === "Escape") setDraft(null);
      }}
    />
  );
}
