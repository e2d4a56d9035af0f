/** The book was not saved to its file: why, and what the maker can do. */

import { useState } from "react";
import { phrase } from "../../../../functions/phrase.ts";
import type { Place } from "../../../book/address.ts";
import { readBook } from "../../../book/read.ts";
import type { Book } from "../../../book/shape.ts";
import { Dialog } from "../../dialog/Dialog.tsx";
import { Compared } from "../Compared.tsx";
import type { How, Question } from "./saving.ts";

interface Props {
  readonly question: Question;
  /** The open book, to compare with what the file holds. */
  readonly open: Book;
  readonly onSave: (how: How) => void;
  /** Saves a copy as a download. */
  readonly onCopy: () => void;
  readonly onPlace: (place: Place) => void;
  readonly onDone: () => void;
}

export function FileQuestion({ question, open, onSave, onCopy, onPlace, onDone }: Props) {
  const { file, sentence, there, over } = question;
  const [compares, setCompares] = useState(false);
  return (
    <Dialog title={phrase`Not saved to ${file}`} onDone={onDone}>
      <p className="look">{sentence}</p>
      <p className="book-ways">
        <button type="button" onClick={() => onSave("elsewhere")}>{phrase`Save to another file …`}</button>
        <button type="button" onClick={() => onSave(there === null ? "again" : "over")}>
          {over}
        </button>
        <button type="button" onClick={onCopy}>{phrase`Save a copy as a download`}</button>
        {there !== null && (
          <button
            type="button"
            aria-expanded={compares}
            onClick={() => setCompares(!compares)}
          >{phrase`Compare`}</button>
        )}
      </p>
      {compares && (
        <Compared
          read={async () => readBook(there ?? "")}
          other={`“${file}”`}
          open={open}
          onPlace={onPlace}
        />
      )}
    </Dialog>
  );
}
