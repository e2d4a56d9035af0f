/** A figure typed as in a cell: "8 1/2", "42 cm", "6". What can't be read stays, with a sentence beneath. */

import { useId, useState } from "react";
import { unclearFigure } from "../../../functions/decimal.ts";
import type { Kind } from "../../../functions/define.ts";
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { figureFor, figureText } from "../../engine/varied-cell.ts";

interface Props {
  readonly book: Book;
  readonly label: string;
  readonly kind: Kind;
  readonly value: number | undefined;
  readonly onFigure: (figure: number | undefined) => void;
  /** May be left blank, with this in its place; it is then heard letter by letter. */
  readonly open?: string;
}

const WANTED: Partial<Record<Kind, string>> = {
  length: phrase`a length such as 8 1/2`,
  days: phrase`a date such as 2026-05-04`,
  count: phrase`a whole number`,
};

export function FigureField({ book, label, kind, value, onFigure, open }: Props) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const text = draft ?? (value === undefined ? "" : figureText(book, kind, value));
  const read = draft === null || draft.trim() === "" ? null : figureFor(book, { kind }, draft);
  const wrong = draft !== null && read === null && !(open !== undefined && draft.trim() === "");
  const settle = () => {
    if (draft === null || wrong) return;
    if (read === null) onFigure(undefined);
    else if (read !== value) onFigure(read);
    setDraft(null);
  };
  return (
    <span className="figure-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        size={7}
        value={text}
        placeholder={open}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={({ target: { value: typed } }) => {
          setDraft(typed);
          if (open !== undefined) onFigure(figureFor(book, { kind }, typed) ?? undefined);
        }}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key === "Enter") settle();
          if (event.key === "Escape") setDraft(null);
        }}
      />
      {wrong && (
        <span id={`${id}-wrong`} className="look" role="alert">
          {unclearFigure(text, book.decimal ?? "point") ??
            phrase`${label.toLowerCase()} must be ${WANTED[kind] ?? phrase`a number`}, not “${text}”`}
        </span>
      )}
    </span>
  );
}
