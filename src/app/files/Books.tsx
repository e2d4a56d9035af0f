/** The books: those saved in this browser, the bin, the ready ones, a new one, one from a file. */

import { useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { UNITS } from "../../../functions/units.ts";
import { UNIT_WORDS } from "../../book/unit-words.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { Ongoing } from "../progress/Ongoing.tsx";
import { Bin } from "./Bin.tsx";
import { BookRow } from "./BookRow.tsx";
import { Compared } from "./Compared.tsx";
import { copyText } from "./copies.ts";
import { readOne } from "./disk.ts";
import { newBook } from "./new-book.ts";
import { canChooseFiles, canWriteFiles } from "./own-file/pickers.ts";
import { ReadyBooks } from "./ReadyBooks.tsx";
import { type Shelving, useBooks } from "./use-books.ts";

export function Books(props: Shelving) {
  const { keeper, keeping, onDone } = props;
  const { bookcase } = keeper;
  const { records, bin, lasting, refusal, done, ...acts } = useBooks(props);
  const field = useRef<HTMLInputElement>(null);
  const other = useRef<HTMLInputElement>(null);
  /** The file that is compared with the open book, and how many were chosen. */
  const [file, setFile] = useState<File | null>(null);
  const [round, setRound] = useState(0);

  return (
    <Dialog title={phrase`Books`} onDone={onDone}>
      <div role="alert">{refusal && <p className="look">{refusal}</p>}</div>
      <div role="status">{done && <p>{done}</p>}</div>
      <Ongoing />
      <section className="books" aria-labelledby="books-kept">
        <h3 id="books-kept">{phrase`Saved in this browser`}</h3>
        {!bookcase.shelf && (
          <p className="look">{phrase`Books cannot be saved in this browser at present. The open book (${copyText(keeping)}) stays until this tab is closed.`}</p>
        )}
        {bookcase.shelf && records?.length === 0 && <p className="empty">{phrase`None yet.`}</p>}
        <ul>
          {records?.map((record) => (
            <BookRow
              key={`${record.id} ${record.revision}`}
              record={record}
              library={bookcase}
              open={keeper.book}
              isOpen={record.id === keeping.id}
              onPlace={props.onPlace}
              onOpen={() => acts.open(record)}
              onEarlier={() => acts.openEarlier(record)}
              onCopy={(title) => acts.copy(record, title)}
              onNextVersion={() => acts.beginNextVersion(record)}
              onThrowAway={() => acts.moveToBin(record)}
              onBringBack={(version) => acts.bringVersionBack(version, record.title)}
              onOpenVersion={(version) => acts.openVersion(version, record.title)}
            />
          ))}
        </ul>
        {bookcase.shelf && (
          <p className="books-all">
            <button
              type="button"
              disabled={!records?.length}
              onClick={acts.saveAll}
            >{phrase`Save all books to one file`}</button>
            {canWriteFiles() && (
              <button
                type="button"
                onClick={props.onSaveElsewhere}
              >{phrase`Save the open book to another file …`}</button>
            )}
            <span className="aside">
              {lasting === null
                ? ""
                : lasting
                  ? phrase`The browser does not delete these books by itself. Keep a copy in a file all the same.`
                  : phrase`The browser may delete these books when it runs out of space: keep copies in files.`}
            </span>
          </p>
        )}
        <Bin records={bin} onBringBack={acts.restore} onDelete={acts.deletePermanently} />
      </section>
      <ReadyBooks onOpen={acts.add} />
      <section className="books" aria-labelledby="books-new">
        <h3 id="books-new">{phrase`Or`}</h3>
        <div className="top-group">
          <button
            type="button"
            onClick={() => (canChooseFiles() ? acts.chooseFile() : field.current!.click())}
          >{phrase`Open a file …`}</button>
          <button
            type="button"
            onClick={() => other.current!.click()}
          >{phrase`Compare with a file …`}</button>
          {UNITS.map((unit) => (
            <button key={unit} type="button" onClick={() => acts.add(newBook(unit))}>
              {phrase`A blank book in ${UNIT_WORDS[unit]}`}
            </button>
          ))}
        </div>
        <input
          ref={field}
          type="file"
          className="unseen"
          tabIndex={-1}
          aria-label={phrase`A file to open`}
          onChange={(event) => acts.openFile(event.target.files?.[0])}
        />
        <input
          ref={other}
          type="file"
          className="unseen"
          tabIndex={-1}
          aria-label={phrase`A file to compare with`}
          accept=".json,application/json"
          onChange={(event) => {
            setFile(event.target.files?.[0] ?? null);
            setRound(round + 1);
            event.target.value = "";
          }}
        />
        {file && (
          <Compared
            key={round}
            read={() => readOne(file)}
            other={`“${file.name}”`}
            open={keeper.book}
            onPlace={props.onPlace}
          />
        )}
        <p className="aside">
          {phrase`A file can also be dropped anywhere on the page: a book, or all of them in one file. `}
          <a href="./notices.txt" target="_blank" rel="noreferrer">{phrase`Licence notices`}</a>
        </p>
      </section>
    </Dialog>
  );
}
