/** One open book: its pages, the grid with the formula above it, the panels beside it, the checks at the foot. */
import { useEffect, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { Checks } from "../checks/Checks.tsx";
import { Books } from "../files/Books.tsx";
import { openFile, saveFile } from "../files/disk.ts";
import type { Keeper, Keeping } from "../files/keeper.ts";
import { FormulaBar } from "../grid/FormulaBar.tsx";
import { handOf } from "../grid/hand.ts";
import { Sheet } from "../grid/Sheet.tsx";
import { useRevision, within } from "./follow.ts";
import { Guard } from "./Guard.tsx";
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

export function Desk({ store, keeper, keeping }: Props) {
  useRevision(store);
  const [chosen, setChosen] = useState<Place>(keeping.place);
  const [dialog, setDialog] = useState<"books" | "help" | null>(null);
  const [message, setMessage] = useState<Message | null>(null);
  const [lookingAt, setLookingAt] = useState(false);
  const lastOnPage = useRef(new Map<number, Place>());
  const place = within(store.shown, chosen);

  const go = (to: Place) => {
    lastOnPage.current.set(to.page, to);
    keeper.at(to);
    setChosen(to);
  };
  const turnTo = (page: number) => go(lastOnPage.current.get(page) ?? { page, row: 0, column: 0 });

  const open = async (file: File) => {
    const reading = await openFile(file);
    if ("book" in reading) await keeper.add(reading.book);
    else setMessage({ refused: true, text: `“${file.name}” was not opened: ${reading.reason}` });
  };
  const save = () => {
    // What is half typed is meant to be in the file too.
    handOf(store).settle();
    setMessage({ refused: false, text: `Saved as ${saveFile(store.book)}` });
  };

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
        part: (by) => goToPart(by, () => handOf(store).table?.take(acts.current.place)),
        file: (file) => acts.current.open(file),
      }),
    [store],
  );

  return (
    <div className="desk">
      <Top
        store={store}
        keeping={keeping}
        onBooks={() => setDialog("books")}
        onSave={save}
        onHelp={() => setDialog("help")}
        onRefused={(text) => setMessage({ refused: true, text })}
      />
      <Messages message={message} onDone={() => setMessage(null)} keeping={keeping} keeper={keeper} />
      <Pages store={store} page={place.page} onPage={turnTo} onMessage={setMessage} />
      <main className="middle" aria-label={`Page ${store.shown.pages[place.page]!.title}`}>
        <FormulaBar store={store} place={place} />
        <Sheet store={store} page={place.page} place={place} onPlace={go} />
      </main>
      <Side store={store} place={place} onPlace={go} />
      <Guard name="The list of things to look at" of={store.revision}>
        <Checks store={store} onPlace={go} open={lookingAt} onOpen={setLookingAt} />
      </Guard>
      {dialog === "books" && (
        <Books keeper={keeper} keeping={keeping} onFile={open} onDone={() => setDialog(null)} />
      )}
      {dialog === "help" && <Help store={store} onDone={() => setDialog(null)} />}
    </div>
  );
}
