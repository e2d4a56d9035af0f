/** A table of another program, as it was understood, before it comes into a book. */

import { phrase, plural } from "../../../functions/phrase.ts";
import { UNIT_WORDS } from "../../book/unit-words.ts";
import "./import.css";
import { UNITS, type Unit } from "../../../functions/units.ts";
import { addPages } from "../../book/add-pages.ts";
import { type Book, LONGEST } from "../../book/shape.ts";
import type { Understood } from "../../exchange/table-form.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { Progress } from "../progress/Progress.tsx";
import { Separated } from "./Separated.tsx";
import { Sheet } from "./Sheet.tsx";
import { useTable } from "./use-table.ts";

interface Props {
  readonly file: File;
  readonly store: Store;
  /** Takes what was read as a book of its own or, with `label`, as pages of the open book, in one step. */
  readonly onBook: (book: Book, label?: string) => void;
  readonly onDone: () => void;
}

export function Import({ file, store, onBook, onDone }: Props) {
  const table = useTable(file, store.shown);
  const { understood, refusal, reading, ended, again, change } = table;
  const label = labelOf(file.name);
  const ready = understood !== null && !reading && refusal === null;
  const pages = understood?.book.pages.length ?? 0;
  return (
    <Dialog title={phrase`Open “${file.name.slice(0, 80)}”`} wide onDone={onDone}>
      <div role="alert">
        {refusal && (
          <p className="look">
            {understood ? phrase`This choice does not work` : phrase`“${file.name}” was not opened`}:{" "}
            {refusal}. {ended && <button type="button" onClick={again}>{phrase`Try again`}</button>}
          </p>
        )}
      </div>
      {understood && (
        <div className="import" aria-busy={reading}>
          <section aria-labelledby="import-file">
            <h3 id="import-file">{phrase`What the file is`}</h3>
            <ul className="import-said">
              {understood.said.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
            <div className="import-choices">
              {understood.delimiter !== undefined && <Separated understood={understood} table={table} />}
              <label>
                <span>{phrase`Its lengths are in`}</span>
                <select
                  value={understood.book.unit}
                  onChange={(event) => change({ unit: event.target.value as Unit })}
                >
                  {UNITS.map((unit) => (
                    <option key={unit} value={unit}>
                      {UNIT_WORDS[unit]}
                    </option>
                  ))}
                </select>
              </label>
            </div>
          </section>
          {understood.sheets.map((sheet) => (
            <Sheet
              key={sheet.sheet}
              sheet={sheet}
              page={sheet.page === null ? null : understood.book.pages[sheet.page]!}
              only={understood.sheets.length === 1}
              onChange={(part) => table.changeSheet(sheet.sheet, part)}
              kinds={table.form.sheets?.[sheet.sheet]?.kinds}
              chosen={table.form.sheets?.[sheet.sheet]?.called}
            />
          ))}
          <Landing understood={understood} store={store} label={label} />
        </div>
      )}
      <div className="book-ways import-ways">
        {understood && (
          <>
            <button
              type="button"
              className="import-add"
              disabled={!ready}
              onClick={() => onBook(understood.book, label)}
            >
              {phrase`${plural(pages, "Add the page to this book", "Add the # pages to this book")}`}
            </button>
            <button
              type="button"
              disabled={!ready}
              onClick={() => onBook(understood.book)}
            >{phrase`Make a book of it`}</button>
          </>
        )}
        <button type="button" onClick={onDone}>{phrase`Cancel`}</button>
        {reading && (
          <Progress
            key={String(understood === null)}
            what={understood === null ? phrase`The file is being read` : phrase`The file is being read again`}
            onAgain={again}
          />
        )}
      </div>
    </Dialog>
  );
}

/** What tells pages of the file apart from those of the book that have the same title. */
const labelOf = (name: string): string => name.replace(/\.[^.]*$/, "").slice(0, LONGEST.pageTitle / 2);

/** What happens to titles, names and lengths when the pages come into the open book. */
function Landing({
  understood: { book },
  store,
  label,
}: {
  understood: Understood;
  store: Store;
  label: string;
}) {
  const open = store.shown;
  const bare = { ...book, pages: book.pages.map((page) => ({ ...page, rows: [] })), names: book.names };
  const joined = addPages(open, bare, label);
  const renamed = book.pages.flatMap(({ title }, i) => {
    const next = joined.pages[open.pages.length + i]!.title;
    return next === title ? [] : [phrase`“${title}” comes in as “${next}”`];
  });
  const kept = new Set(Object.keys(open.names));
  const names = Object.keys(joined.names).filter((name) => !kept.has(name));
  const clashing = Object.keys(book.names).filter((name) => !names.includes(name));
  const sentences = [
    ...(book.unit === open.unit
      ? []
      : [
          phrase`The open book measures in ${UNIT_WORDS[open.unit]}: lengths are converted when the pages are added to it.`,
        ]),
    ...(renamed.length > 0
      ? [phrase`The open book has pages of the same title: ${renamed.join("; ")}.`]
      : []),
    ...(clashing.length > 0
      ? [
          phrase`The open book has cells named ${clashing.slice(0, 4).join(", ")} too: those of the file get another name, such as ${names.find((name) => name.startsWith(clashing[0]!.slice(0, 20))) ?? phrase`one with the file's`}.`,
        ]
      : []),
  ];
  return sentences.length === 0 ? null : (
    <section aria-labelledby="import-landing">
      <h3 id="import-landing">{phrase`When it is added to this book`}</h3>
      <ul className="import-said">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
