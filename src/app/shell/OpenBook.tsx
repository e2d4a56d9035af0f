/** One open book: its pages, the grid with the formula above it, the panels beside it, the checks at the foot. */
import { useEffect, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { Checks } from "../checks/Checks.tsx";
import { Guard } from "../faults/Guard.tsx";
import { reasonOf } from "../faults/in-time.ts";
import { Books } from "../files/Books.tsx";
import { openFile } from "../files/disk.ts";
import type { Keeper } from "../files/keeper.ts";
import type { Keeping } from "../files/keeping.ts";
import { sessionOf } from "../grid/edit-session.ts";
import { FormulaBar } from "../grid/FormulaBar.tsx";
import { Grid } from "../grid/Grid.tsx";
import { backgroundOf } from "../lay/background.ts";
import { joinSearchOf } from "../lay/join-search.ts";
import { useRevision, within } from "../store-hooks.ts";
import { Help } from "./Help.tsx";
import { type Message, Messages } from "./Messages.tsx";
import { Pages } from "./Pages.tsx";
import { goToPart } from "./parts.ts";
import { Side } from "./Side.tsx";
import { addShortcuts } from "./shortcuts.ts";
import { Top } from "./Top.tsx";

interface Props {
  readonly store: Store;
  readonly keeper: Keeper;
  readonly keeping: Keeping;
}

export function OpenBook({ store, keeper, keeping }: Props) {
  const revision = useRevision(store);
  const [chosen, setChosen] = useState<Place>(keeping.place);
  const [dialog, setDialog] = useState<"books" | "help" | null>(null);
  const [message, setMessage] = useState<Message | null>(null);
  const [lookingAt, setLookingAt] = useState(false);
  const { elsewhere } = keeping;
  useEffect(() => backgroundOf(store).watch(), [store]);
  useEffect(() => joinSearchOf(store).watch(), [store]);
  useEffect(() => backgroundOf(store).writes(!elsewhere), [store, elsewhere]);
  const lastOnPage = useRef(new Map<number, Place>());
  const place = within(store.shown, chosen);
  /** A part that failed is tried again when the book or the chosen cell changes. */
  const of = `${revision} ${place.page} ${place.row} ${place.column}`;

  const go = (to: Place) => {
    lastOnPage.current.set(to.page, to);
    keeper.at(to);
    setChosen(to);
  };
  const turnTo = (page: number) => go(lastOnPage.current.get(page) ?? { page, row: 0, column: 0 });

  const open = async (file: File) => {
    const refuse = (reason: string) =>
      setMessage({ refused: true, text: `“${file.name}” was not opened: ${reason}` });
    try {
      const reading = await openFile(file);
      if ("texts" in reading) {
        const text = await keeper.bookcase.putAll(reading.texts);
        setMessage({ refused: false, text: `“${file.name}” ${text}` });
        setDialog("books");
      } else if ("book" in reading) await keeper.add(reading.book);
      else refuse(reading.reason);
    } catch (fault) {
      refuse(reasonOf(fault));
    }
  };
  const save = () => {
    // What is half typed is meant to be in the file too.
    sessionOf(store).settle();
    setMessage({ refused: false, text: `Saved as ${keeper.saveCopy()}` });
  };

  const refused = (text: string) => setMessage({ refused: true, text });

  const acts = useRef({ open, save, turnTo, place });
  useEffect(() => {
    acts.current = { open, save, turnTo, place };
  });
  useEffect(
    () =>
      addShortcuts({
        help: () => setDialog("help"),
        books: () => setDialog("books"),
        save: () => acts.current.save(),
        checks: () => setLookingAt((open) => !open),
        page: (by) => {
          const next = acts.current.place.page + by;
          if (next >= 0 && next < store.shown.pages.length) acts.current.turnTo(next);
        },
        part: (by) => goToPart(by, () => sessionOf(store).grid?.take(acts.current.place)),
        file: (file) => acts.current.open(file),
      }),
    [store],
  );

  return (
    <div className="open-book">
      <Guard
        name="The top of the page"
        of={of}
        className="top"
        ways={
          <button type="button" onClick={save}>
            Save a file
          </button>
        }
      >
        <Top
          store={store}
          keeping={keeping}
          onBooks={() => setDialog("books")}
          onSave={save}
          onHelp={() => setDialog("help")}
          onRefused={refused}
        />
      </Guard>
      <Guard name="The messages" of={keeping} className="messages">
        <Messages message={message} onDone={() => setMessage(null)} keeping={keeping} keeper={keeper} />
      </Guard>
      <Guard name="The list of pages" of={of} className="pages">
        <Pages store={store} page={place.page} onPage={turnTo} onMessage={setMessage} />
      </Guard>
      <main className="middle" aria-label={`Page ${store.shown.pages[place.page]!.title}`}>
        <Guard name="The formula of the cell" of={of}>
          <FormulaBar store={store} place={place} />
        </Guard>
        <Guard name="The grid" of={of}>
          <Grid store={store} page={place.page} place={place} onPlace={go} onRefused={refused} />
        </Guard>
      </main>
      <Guard name="The panel beside the grid" of={of} className="side">
        <Side store={store} place={place} onPlace={go} />
      </Guard>
      <Guard name="The list of problems" of={of} className="foot">
        <Checks store={store} onPlace={go} open={lookingAt} onOpen={setLookingAt} />
      </Guard>
      {dialog === "books" && (
        <Guard name="The list of books" className="guard-over" onDone={() => setDialog(null)}>
          <Books keeper={keeper} keeping={keeping} onFile={open} onDone={() => setDialog(null)} />
        </Guard>
      )}
      {dialog === "help" && (
        <Guard name="Help" className="guard-over" onDone={() => setDialog(null)}>
          <Help store={store} onDone={() => setDialog(null)} />
        </Guard>
      )}
    </div>
  );
}
