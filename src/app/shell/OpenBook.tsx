/** One open book: its pages, the grid with the formula above it, the panels beside it, the checks at the foot. */

import { Suspense } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { withAllFunctions } from "../all-functions.ts";
import { Checks } from "../checks/Checks.tsx";
import { Guard } from "../faults/Guard.tsx";
import { lazily } from "../faults/lazily.tsx";
import { sessionOf } from "../grid/edit-session.ts";
import { FormulaBar } from "../grid/FormulaBar.tsx";
import { Grid } from "../grid/Grid.tsx";
import { Pages } from "../pages/Pages.tsx";
import { useKept } from "../store-hooks.ts";
import { loadBegin, loadBooks, loadHelp } from "./behind.ts";
import { Incoming } from "./Incoming.tsx";
import { Messages } from "./Messages.tsx";
import { Side } from "./Side.tsx";
import { Top } from "./Top.tsx";
import { type Opened, useOpenBook } from "./use-open-book.ts";

// They come when they are opened first, or soon after the start (behind.ts).
const PrintDialog = lazily(() =>
  withAllFunctions(() => import("../print/PrintDialog.tsx")).then((module) => module.PrintDialog),
);
const Begin = lazily(async () => (await loadBegin()).Begin);
const Books = lazily(async () => (await loadBooks()).Books);
const Help = lazily(async () => (await loadHelp()).Help);

export function OpenBook(props: Opened) {
  const { store, keeper, keeping } = props;
  useKept(store);
  const {
    place,
    go,
    goInto,
    turnTo,
    open,
    save,
    fileQuestion,
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
  } = useOpenBook(props);
  /** A part that failed is tried again when the book or the chosen cell changes. */
  const of = `${store.revision} ${place.page} ${place.row} ${place.column}`;
  const session = sessionOf(store);
  /** Closes what lies over the page. Where the keyboard came from nowhere, as with a file that was dropped, the grid has it. */
  const close = () => {
    setDialog(null);
    setIncoming(null);
    session.takeBack();
  };
  const refused = (text: string) => setMessage({ refused: true, text });

  return (
    <div className="open-book">
      <Guard
        name={phrase`The top of the page`}
        of={of}
        className="top"
        ways={<button type="button" onClick={() => save()}>{phrase`Save a file`}</button>}
      >
        <Top
          store={store}
          keeping={keeping}
          onNew={() => showBooks("begin")}
          onBooks={() => showBooks("books")}
          onSave={() => save()}
          onPrint={() => print()}
          onHelp={() => help(null)}
          onRefused={refused}
        />
      </Guard>
      <Guard name={phrase`The messages`} of={keeping} className="messages">
        <Messages
          message={message}
          onDone={() => setMessage(null)}
          keeping={keeping}
          keeper={keeper}
          onLast={() => session.takeBack()}
        />
      </Guard>
      <Guard name={phrase`The list of pages`} of={of} className="pages">
        <Pages
          store={store}
          page={place.page}
          onPage={turnTo}
          onSaid={(text) => setMessage({ refused: false, text })}
          onRefused={refused}
        />
      </Guard>
      <main className="middle" aria-label={phrase`Page ${store.shown.pages[place.page]!.title}`}>
        <Guard name={phrase`The formula of the cell`} of={of}>
          <FormulaBar store={store} place={place} onPlace={go} />
        </Guard>
        <Guard name={phrase`The grid`} of={of}>
          <Grid store={store} page={place.page} place={place} onPlace={go} onRefused={refused} />
        </Guard>
      </main>
      <Guard name={phrase`The panel beside the grid`} of={of} className="side">
        <Side store={store} place={place} onPlace={go} onPrint={print} />
      </Guard>
      <Guard name={phrase`The list of problems`} of={of} className="foot">
        <Checks store={store} onPlace={goInto} open={listing} onOpen={setListing} />
      </Guard>
      {dialog === "books" && (
        <Guard name={phrase`The list of books`} className="guard-over" onDone={close}>
          <Suspense>
            <Books
              keeper={keeper}
              keeping={keeping}
              onFile={open}
              onSaveElsewhere={() => {
                setDialog(null);
                save("elsewhere");
              }}
              onDone={close}
              onPlace={(to) => {
                setDialog(null);
                go(to);
              }}
            />
          </Suspense>
        </Guard>
      )}
      {fileQuestion && (
        <Guard name={phrase`The question about the file`} of={fileQuestion} className="guard-over">
          {fileQuestion}
        </Guard>
      )}
      {dialog === "begin" && (
        <Guard name={phrase`New`} className="guard-over" onDone={close}>
          <Suspense>
            <Begin open={store.shown} onBook={(book) => beginBook(book)} onAdd={beginBook} onDone={close} />
          </Suspense>
        </Guard>
      )}
      {incoming && (
        <Guard name={phrase`The file`} of={incoming} className="guard-over" onDone={close}>
          <Incoming
            {...incoming}
            store={store}
            place={place}
            onBook={(book, label) => {
              setIncoming(null);
              void beginBook(book, label, incoming.file.name);
            }}
            onDone={close}
          />
        </Guard>
      )}
      {dialog === "print" && (
        <Guard name={phrase`Print`} className="guard-over" onDone={close}>
          <Suspense>
            <PrintDialog store={store} place={place} wanted={printFor} onDone={close} />
          </Suspense>
        </Guard>
      )}
      {dialog === "help" && (
        <Guard name={phrase`Help`} className="guard-over" onDone={close}>
          <Suspense>
            <Help store={store} about={helpAbout} onDone={close} />
          </Suspense>
        </Guard>
      )}
    </div>
  );
}
