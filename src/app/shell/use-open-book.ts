/** What is open, chosen and said of one open book, and the acts of its keys and buttons. */

import { useEffect, useRef, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import { addGarment } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { keepEarlyKeys } from "../dialog/early-keys.ts";
import { reasonOf } from "../faults/in-time.ts";
import { openFile } from "../files/disk.ts";
import type { Keeper } from "../files/keeper.ts";
import type { Keeping } from "../files/keeping.ts";
import type { OwnHandle } from "../files/own-file/pickers.ts";
import type { How } from "../files/own-file/saving.ts";
import { useSaving } from "../files/own-file/use-saving.tsx";
import { browserClock } from "../following/after-paint.ts";
import { samePlace, sessionOf } from "../grid/edit-session.ts";
import { addShortcuts } from "../help/shortcuts.ts";
import { helpWhileTyping } from "../help/while-typing.ts";
import { useSearches } from "../lay/use-searches.ts";
import type { PrintFor } from "../print/choices.ts";
import { doLarge } from "../progress/large-steps.ts";
import { shownWhile } from "../progress/ongoing.ts";
import { useStable, within } from "../store-hooks.ts";
import { type IncomingFile, isReadHere } from "./Incoming.tsx";
import type { Message } from "./Messages.tsx";
import { goToPart } from "./parts.ts";

export interface Opened {
  readonly store: Store;
  readonly keeper: Keeper;
  readonly keeping: Keeping;
}

export function useOpenBook({ store, keeper, keeping }: Opened) {
  const [chosen, setChosen] = useState<Place>(keeping.place);
  const [dialog, setDialog] = useState<"books" | "begin" | "help" | "print" | null>(null);
  const [printFor, setPrintFor] = useState<PrintFor>({});
  const [helpAbout, setHelpAbout] = useState<string | null>(null);
  const [message, setMessage] = useState<Message | null>(null);
  const [listing, setListing] = useState(false);
  /** A file of another program that is looked at before its content comes into a book. */
  const [incoming, setIncoming] = useState<IncomingFile | null>(null);
  const { elsewhere } = keeping;
  useSearches(store, !elsewhere);
  /** The cell that was chosen last on each page, by its title: a page that is added or moved changes the numbers of others. */
  const lastOnPage = useRef(new Map<string, Place>());
  const place = within(store.shown, chosen);
  const page = useRef(place.page);
  page.current = place.page;
  // Printing is loaded once the grid is painted.
  useEffect(() => {
    let isOver = false;
    let end = browserClock.painted(() => {
      void import("./print-sheet.ts").then(({ printing }) => {
        if (!isOver) end = printing(store, () => page.current);
      });
    }, 0);
    return () => {
      isOver = true;
      end();
    };
  }, [store]);

  const titleOf = (page: number) => store.shown.pages[page]?.title ?? "";
  const go = useStable((to: Place) => {
    lastOnPage.current.set(titleOf(to.page), to);
    keeper.at(to);
    setChosen((now) => (samePlace(now, to) ? now : to));
  });
  /** Goes to a cell and gives the grid the keyboard. */
  const goInto = useStable((to: Place) => {
    go(to);
    sessionOf(store).grid?.take(to);
  });
  const turnTo = (page: number, anew = false) =>
    go({ row: 0, column: 0, ...(!anew && lastOnPage.current.get(titleOf(page))), page });

  /** Before another book may be opened, what is half typed goes into this one. */
  const showBooks = (which: "books" | "begin") => {
    sessionOf(store).settle();
    keepEarlyKeys();
    setDialog(which);
  };
  /** Opens a file of any kind, judged from its content: a book at once, what another program wrote after a look at it. */
  const open = async (file: File, handle?: OwnHandle) => {
    sessionOf(store).settle();
    const refuse = (reason: string) =>
      setMessage({ refused: true, text: phrase`“${file.name}” was not opened: ${reason}` });
    try {
      const { fileKind, JUDGED_BYTES } = await import("../../exchange/file-kind.ts");
      const head = await file.slice(0, JUDGED_BYTES).arrayBuffer();
      const judged = fileKind(new Uint8Array(head), file.name);
      if ("refusal" in judged) return refuse(judged.refusal);
      if (judged.kind !== "book") {
        if (!isReadHere(judged.kind))
          return refuse(phrase`files of this kind cannot be read on the page yet`);
        setMessage(null);
        setDialog(null);
        setIncoming({ file, kind: judged.kind });
        return;
      }
      const reading = await openFile(file);
      if ("texts" in reading) {
        const text = await keeper.bookcase.putAll(reading.texts);
        setMessage({ refused: false, text: `“${file.name}” ${text}` });
        setDialog("books");
      } else if ("book" in reading) {
        await shownWhile(phrase`Opening “${reading.book.title}”`, () => keeper.add(reading.book));
        // Where this fails, the next save asks for a file.
        if (handle)
          await import("../files/own-file/saving.ts")
            .then(({ linkOpened }) => linkOpened(keeper, handle))
            .catch(() => {});
      } else refuse(reading.reason);
    } catch (fault) {
      refuse(reasonOf(fault));
    }
  };
  /** Makes a begun garment, or what the file `from` holds, a book of its own, or with `label` pages of the open book. */
  const beginBook = async (book: Book, label?: string, from?: string) => {
    try {
      if (label === undefined) await shownWhile(phrase`Opening “${book.title}”`, () => keeper.add(book));
      else {
        const first = store.shown.pages.length;
        const what = phrase`Adding “${book.title}”`;
        const { convertBook } = await import("../../engine/convert.ts");
        const command = addGarment(convertBook(book, store.book.unit), label);
        let refusal: string | null = phrase`it was stopped`;
        await shownWhile(what, () =>
          doLarge(store, what, () => {
            refusal = store.run(command);
          }),
        );
        if (refusal) setMessage({ refused: true, text: phrase`“${book.title}” was not added: ${refusal}` });
        else {
          turnTo(first);
          const pages = phrase`${plural(book.pages.length, "A page", "# pages")}`;
          if (from !== undefined)
            setMessage({
              refused: false,
              text: phrase`${pages} of “${from}” came into this book; Undo takes all of it out again`,
            });
        }
      }
    } catch (fault) {
      setMessage({ refused: true, text: phrase`“${book.title}” was not made: ${reasonOf(fault)}` });
    }
    setDialog(null);
  };
  const saving = useSaving(keeper, (text) => setMessage({ refused: false, text }), go);
  const save = (how?: How) => {
    // What is half typed is meant to be in the file too.
    sessionOf(store).settle();
    void saving.save(how);
  };

  /** Opens the dialog of paper, for something of the page if it is given. */
  const print = (wanted: PrintFor = {}) => {
    // What is half typed is printed too.
    sessionOf(store).settle();
    setPrintFor(wanted);
    keepEarlyKeys();
    setDialog("print");
  };

  /** Opens the help, with the entry of that name if there is one. */
  const help = (about: string | null) => {
    setHelpAbout(about);
    keepEarlyKeys();
    setDialog("help");
  };

  /** Opens the list of problems and goes to the first of them, or closes it and goes back to the grid. */
  const checks = () => {
    setListing(!listing);
    if (listing) sessionOf(store).grid?.take(place);
    else setTimeout(() => document.querySelector<HTMLElement>(".check")?.focus());
  };

  const acts = useRef({ open, save, print, help, checks, showBooks, turnTo, place });
  useEffect(() => {
    acts.current = { open, save, print, help, checks, showBooks, turnTo, place };
  });
  useEffect(
    () =>
      addShortcuts({
        help: () => acts.current.help(helpWhileTyping(sessionOf(store).caret)),
        begin: () => acts.current.showBooks("begin"),
        books: () => acts.current.showBooks("books"),
        save: () => acts.current.save(),
        saveElsewhere: () => acts.current.save("elsewhere"),
        print: () => acts.current.print(),
        checks: () => acts.current.checks(),
        page: (by) => {
          const next = acts.current.place.page + by;
          if (next >= 0 && next < store.shown.pages.length) acts.current.turnTo(next);
        },
        part: (by) => goToPart(by, () => sessionOf(store).grid?.take(acts.current.place)),
        file: (file, handle) => acts.current.open(file, handle),
      }),
    [store],
  );

  return {
    place,
    go,
    goInto,
    turnTo,
    open,
    save,
    fileQuestion: saving.question,
    print,
    printFor,
    help,
    helpAbout,
    showBooks,
    beginBook,
    incoming,
    setIncoming,
    dialog,
    setDialog,
    message,
    setMessage,
    listing,
    setListing,
  };
}
