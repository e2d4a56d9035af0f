/** The books: those saved in this browser, the bin, the ready ones, a new one, one from a file. */

import { useEffect, useRef, useState } from "react";
import { BOOK_UNITS, UNITS, type Unit } from "../../../functions/units.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { reasonOf } from "../faults/in-time.ts";
import { Bin } from "./Bin.tsx";
import { BookRow } from "./BookRow.tsx";
import { copyText } from "./copies.ts";
import type { Keeper } from "./keeper.ts";
import type { Keeping } from "./keeping.ts";
import { lasts } from "./lasting.ts";
import { newBook } from "./new-book.ts";
import { openEarlier, throwAway } from "./others.ts";
import { ReadyBooks } from "./ReadyBooks.tsx";
import type { BookRecord } from "./shelf.ts";

interface Props {
  readonly keeper: Keeper;
  readonly keeping: Keeping;
  readonly onFile: (file: File) => Promise<void>;
  readonly onDone: () => void;
}

export function Books({ keeper, keeping, onFile, onDone }: Props) {
  const { bookcase: library } = keeper;
  const [records, setSpines] = useState<readonly BookRecord[] | null>(null);
  const [bin, setBin] = useState<readonly BookRecord[]>([]);
  const [lasting, setLasting] = useState<boolean | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);

  /** Does something that may fail; a failure is a sentence in the dialog. */
  const act = async (work: () => Promise<unknown>) => {
    setRefusal(null);
    setDone(null);
    try {
      await work();
    } catch (fault) {
      setRefusal(`This did not work: ${reasonOf(fault)}.`);
    }
  };
  const refresh = async () => {
    setSpines(await library.list());
    setBin(await library.bin());
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each opening of the dialog
  useEffect(() => {
    act(refresh);
    lasts().then(setLasting);
  }, [keeper]);

  /** Opens a book; the dialog ends when that went well. */
  const opening = (title: string, open: () => Promise<string | null>) =>
    act(async () => {
      const reason = await open();
      if (reason === null) return onDone();
      setRefusal(`“${title}” was not opened: ${reason}.`);
      await refresh();
    });
  const add = (book: Parameters<Keeper["add"]>[0]) =>
    opening(book.title, () => keeper.add(book).then(() => null));
  const open = (record: BookRecord) =>
    record.id === keeping.id ? onDone() : opening(record.title, () => keeper.open(record.id));
  const chooseFile = async (file: File | undefined) => {
    if (!file) return;
    // A file of several books leaves the dialog open, with these books in the list.
    onDone();
    await onFile(file);
  };
  const saveAll = () =>
    act(async () => {
      const { name, count } = await keeper.saveAll();
      await refresh();
      setDone(`Saved ${count === 1 ? "one book" : `${count} books`} as ${name}.`);
    });
  const blank = (unit: Unit) => add(newBook(unit));

  return (
    <Dialog title="Books" onDone={onDone}>
      <div role="alert">{refusal && <p className="look">{refusal}</p>}</div>
      <div role="status">{done && <p>{done}</p>}</div>
      <section className="books" aria-labelledby="books-kept">
        <h3 id="books-kept">Saved in this browser</h3>
        {!library.shelf && (
          <p className="look">
            Books cannot be saved in this browser at present. The open book ({copyText(keeping)}) stays until
            this tab is closed.
          </p>
        )}
        {library.shelf && records?.length === 0 && <p className="empty">None yet.</p>}
        <ul>
          {records?.map((record) => (
            <BookRow
              key={`${record.id} ${record.revision}`}
              record={record}
              library={library}
              isOpen={record.id === keeping.id}
              onOpen={() => open(record)}
              onEarlier={() => opening(record.title, () => openEarlier(keeper, record))}
              onThrowAway={() => act(() => throwAway(keeper, record.id).then(refresh))}
            />
          ))}
        </ul>
        {library.shelf && (
          <p className="books-all">
            <button type="button" disabled={!records?.length} onClick={saveAll}>
              Save all books to one file
            </button>
            <span className="aside">
              {lasting === null
                ? ""
                : lasting
                  ? "The browser does not delete these books by itself. Keep a copy in a file all the same."
                  : "The browser may delete these books when it runs out of space: keep copies in files."}
            </span>
          </p>
        )}
        <Bin
          records={bin}
          onBringBack={(id) => act(() => library.bringBack(id).then(refresh))}
          onDelete={(id) => act(() => library.deletePermanently(id).then(refresh))}
        />
      </section>
      <ReadyBooks onOpen={add} />
      <section className="books" aria-labelledby="books-new">
        <h3 id="books-new">Or</h3>
        <div className="top-group">
          <button type="button" onClick={() => field.current!.click()}>
            Open a file …
          </button>
          {UNITS.map((unit) => (
            <button key={unit} type="button" onClick={() => blank(unit)}>
              A blank book in {BOOK_UNITS[unit].noun}
            </button>
          ))}
        </div>
        <input
          ref={field}
          type="file"
          className="unseen"
          tabIndex={-1}
          aria-label="A book's file"
          accept=".json,application/json"
          onChange={(event) => chooseFile(event.target.files?.[0])}
        />
        <p className="aside">
          A file, of one book or of all, can also be dropped anywhere on the page.{" "}
          <a href="./notices.txt" target="_blank" rel="noreferrer">
            Licence notices
          </a>
        </p>
      </section>
    </Dialog>
  );
}
