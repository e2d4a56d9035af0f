/** The questions of a garment, one a line, with a small drawing of what each means and the answer drawn. */

import { useEffect, useId, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Unit } from "../../../functions/units.ts";
import type { Garment, Question } from "../../book/garment.ts";
import type { Book } from "../../book/shape.ts";
import { labelAmong } from "../../engine/begin.ts";
import { drawingOf } from "../measured/drawings.ts";
import { Measured } from "../measured/Measured.tsx";
import { SmallPicture } from "./SmallPicture.tsx";
import { type Beginning, useBeginning } from "./useBeginning.ts";
import { type Preview, usePreview } from "./usePreview.ts";

interface Props {
  readonly garment: Garment;
  readonly unit: Unit;
  readonly open: Book;
  /** Makes the book a new one; or adds its pages to the open book, with a label to tell them apart. */
  readonly onBook: (book: Book) => void;
  readonly onAdd: (book: Book, label: string) => void;
}

export function Questions({ garment, unit, open, onBook, onAdd }: Props) {
  const beginning = useBeginning(garment, unit, open.decimal ?? "point");
  const preview = usePreview(garment, beginning.begun);
  const [focused, setFocused] = useState<Question | null>(null);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector<HTMLElement>("input, select")?.focus(), []);
  const drawing = focused && drawingOf(focused.drawing ?? focused.name);
  const done = (finish: (book: Book) => void) => {
    if (beginning.ready()) finish(beginning.begun.book);
    else
      requestAnimationFrame(() => document.querySelector<HTMLElement>(".begin [aria-invalid=true]")?.focus());
  };
  return (
    <form
      ref={form}
      className="begin"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        done(onBook);
      }}
    >
      <div className="begin-questions">
        {garment.questions.map((question) => (
          <Field
            key={question.name}
            question={question}
            beginning={beginning}
            onFocus={() => setFocused(question)}
          />
        ))}
      </div>
      <div className="begin-side">
        <div className="begin-means">
          {drawing && <Measured drawing={drawing} />}
          {focused && (
            <p>
              <b>{focused.ask}</b>
              <br />
              {focused.hint}
            </p>
          )}
        </div>
        <Answer preview={preview} beginning={beginning} />
      </div>
      <div className="begin-foot">
        <label>
          <input
            type="checkbox"
            checked={beginning.withExamples}
            onChange={(event) => beginning.setWithExamples(event.target.checked)}
          />
          {phrase` Fill what is missing with example figures, marked with a note`}
        </label>
        <button type="submit" className="begin-go">{phrase`Make a new book`}</button>
        <button
          type="button"
          onClick={() =>
            done((book) => onAdd(book, labelAmong(open, garment, beginning.answers.wearer?.trim() ?? "")))
          }
        >{phrase`Add to the open book`}</button>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly question: Question;
  readonly beginning: Beginning;
  readonly onFocus: () => void;
}

function Field({ question, beginning, onFocus }: FieldProps) {
  const id = useId();
  const { name, ask, hint, kind, choices, needed } = question;
  const said = beginning.said(question);
  const common = {
    id,
    value: beginning.answers[name] ?? "",
    "aria-describedby": `${id}-hint ${id}-said`,
    "aria-invalid": said?.fault === true,
    onFocus,
  };
  const example = beginning.exampleOf(question);
  return (
    <div className="begin-field">
      <label htmlFor={id}>
        {ask}
        {needed && <span className="begin-needed">{phrase` (needed)`}</span>}
      </label>
      {kind === "choice" ? (
        <select
          {...common}
          value={common.value || example}
          onChange={(event) => beginning.answer(name, event.target.value)}
        >
          {choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          autoComplete="off"
          dir="auto"
          inputMode={kind === "text" || kind === "date" ? "text" : "decimal"}
          placeholder={needed || kind === "text" ? phrase`such as ${example}` : example}
          onChange={(event) => beginning.answer(name, event.target.value)}
        />
      )}
      <span id={`${id}-hint`} className="begin-hint">
        {hint}
      </span>
      <span id={`${id}-said`} className={said?.fault ? "look" : "begin-notice"} role="status">
        {said?.sentence}
      </span>
    </div>
  );
}

/** What the answers come to, drawn and in figures; with example figures as long as answers are missing. */
function Answer({ preview, beginning }: { preview: Preview | null; beginning: Beginning }) {
  if (!preview) return <p className="aside">{phrase`Working it out …`}</p>;
  const { examples } = beginning.begun;
  return (
    <>
      <div className="begin-pictures">
        {preview.pictures.map(({ label, picture, words }) => (
          <figure key={label}>
            <SmallPicture picture={picture} label={`${label}, ${words}`} />
            <figcaption>
              {label}, <span className="begin-words">{words}</span>
            </figcaption>
          </figure>
        ))}
      </div>
      <dl className="begin-figures">
        {preview.figures.map(({ label, shown, problem }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{problem ? <span className="look">{problem}</span> : shown}</dd>
          </div>
        ))}
      </dl>
      {examples.length > 0 && (
        <p className="aside">
          {phrase`With example figures for `}
          {examples.map(({ ask }) => ask.replace(/\?$/, "").toLowerCase()).join(", ")}.
        </p>
      )}
    </>
  );
}
