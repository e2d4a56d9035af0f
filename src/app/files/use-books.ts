/** What the dialog of books shows and does: the lists, and each act with the sentence that it ends in. */

import { useEffect, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { reasonOf } from "../faults/in-time.ts";
import { handOn } from "../keyboard.ts";
import { shownWhile } from "../progress/ongoing.ts";
import type { Keeper } from "./keeper.ts";
import type { Keeping } from "./keeping.ts";
import { promisesToKeepBooks } from "./lasting.ts";
import { copyBook, goOnAsVersion, openEarlier, throwAway } from "./others.ts";
import { chooseFile, type OwnHandle } from "./own-file/pickers.ts";
import type { BookRecord } from "./shelf.ts";
import type { Version } from "./versions/rule.ts";

export interface Shelving {
  readonly keeper: Keeper;
  readonly keeping: Keeping;
  readonly onFile: (file: File, handle?: OwnHandle) => Promise<void>;
  /** Ends the dialog and saves the open book to a file that the maker chooses. */
  readonly onSaveElsewhere: () => void;
  readonly onDone: () => void;
  /** Leads to a cell of the open book, and ends the dialog. */
  readonly onPlace: (place: Place) => void;
}

export function useBooks({ keeper, keeping, onFile, onDone }: Shelving) {
  const { bookcase } = keeper;
  const [records, setRecords] = useState<readonly BookRecord[] | null>(null);
  const [bin, setBin] = useState<readonly BookRecord[]>([]);
  /** Whether the browser has agreed to keep the books; null until it has answered. */
  const [lasting, setLasting] = useState<boolean | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);

  /** Does something that may fail; a failure is a sentence in the dialog. */
  const act = async (work: () => Promise<unknown>) => {
    handOn("dialog");
    setRefusal(null);
    setDone(null);
    try {
      await work();
    } catch (fault) {
      setRefusal(phrase`This did not work: ${reasonOf(fault)}.`);
    }
  };
  const refresh = async () => {
    setRecords(await bookcase.list());
    setBin(await bookcase.bin());
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each opening of the dialog
  useEffect(() => {
    act(refresh);
    promisesToKeepBooks().then(setLasting);
  }, [keeper]);

  /** Opens a book; the dialog ends when that succeeds. */
  const opening = (title: string, open: () => Promise<string | null>) =>
    act(async () => {
      const reason = await shownWhile(phrase`Opening “${title}”`, open);
      if (reason === null) return onDone();
      setRefusal(phrase`“${title}” was not opened: ${reason}.`);
      await refresh();
    });

  return {
    records,
    bin,
    lasting,
    refusal,
    done,
    add: (book: Book) => opening(book.title, () => keeper.add(book).then(() => null)),
    open: (record: BookRecord) =>
      record.id === keeping.id ? onDone() : opening(record.title, () => keeper.open(record.id)),
    openEarlier: (record: BookRecord) => opening(record.title, () => openEarlier(keeper, record)),
    bringVersionBack: (version: Version, title: string) =>
      opening(title, async () =>
        (await import("./versions/acts.ts")).bringVersionBack(keeper, version, title),
      ),
    openVersion: (version: Version, title: string) =>
      opening(title, async () => (await import("./versions/acts.ts")).openVersion(keeper, version)),
    copy: (record: BookRecord, title: string) =>
      act(async () => {
        await copyBook(keeper, record, title);
        await refresh();
        setDone(phrase`“${title}” is a copy of “${record.title}” and stands in the list.`);
      }),
    /** Keeps the open book as it is as a book of its own, and goes on with its next version, as one step. */
    beginNextVersion: (record: BookRecord) =>
      act(async () => {
        const former = keeper.book;
        const { nextVersionOf } = await import("./next-version.ts");
        const begun = await nextVersionOf(former, keeper.store.engine);
        if ("refusal" in begun) return setRefusal(phrase`The next version does not begin: ${begun.refusal}.`);
        const { title } = former;
        const refusal = await goOnAsVersion(keeper, record, former, begun);
        if (refusal) return setRefusal(phrase`The next version does not begin: ${refusal}.`);
        // The list shows the title that the next version has.
        await keeper.flush();
        await refresh();
        setDone(
          phrase`${begun.sentence} “${title}” stands in the list as it was, to compare with; Undo takes this book back to it.`,
        );
      }),
    moveToBin: ({ id }: BookRecord) => act(() => throwAway(keeper, id).then(refresh)),
    restore: (id: string) => act(() => bookcase.bringBack(id).then(refresh)),
    deletePermanently: (id: string) => act(() => bookcase.deletePermanently(id).then(refresh)),
    saveAll: () =>
      act(async () => {
        const { name, count } = await keeper.saveAll();
        await refresh();
        setDone(phrase`Saved ${plural(count, "one book", "# books")} as ${name}.`);
      }),
    chooseFile: () =>
      act(async () => {
        const handle = await chooseFile();
        if (!handle) return;
        onDone();
        await onFile(await handle.getFile(), handle);
      }),
    openFile: async (file: File | undefined) => {
      if (!file) return;
      // A file of several books leaves the dialog open, with these books in the list.
      onDone();
      await onFile(file);
    },
  };
}
