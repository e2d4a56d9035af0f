/** The dialog of paper: what is printed, on which paper, the sheets as they will be, and the ways out. */
import { phrase } from "../../../functions/phrase.ts";
import "./print.css";
import { useEffect, useMemo, useRef, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { fileName, saveText } from "../files/disk.ts";
import { type Choices, firstChoices, keepChoices, kindOf, type PrintFor, requestOf } from "./choices.ts";
import { PaperForm } from "./PaperForm.tsx";
import { Preview } from "./Preview.tsx";
import { printPdf } from "./print-it.ts";
import { Said } from "./Said.tsx";
import { usePrinting } from "./use-printing.ts";

interface Props {
  readonly store: Store;
  readonly place: Place;
  /** What is chosen at the beginning. */
  readonly wanted: PrintFor;
  readonly onDone: () => void;
}

export function PrintDialog({ store, place, wanted, onDone }: Props) {
  // The book as it is on the screen now: better lays that come meanwhile do not begin the work anew.
  const [opened] = useState(() => ({
    book: store.shown,
    place: wanted.place ?? place,
    isTrying: store.trying,
    address: store.engine.address(wanted.place ?? place),
  }));
  const { book } = opened;
  const [choices, setChoices] = useState(() => firstChoices(book.unit, opened.address, wanted));
  const page = book.pages[opened.place.page]!.title;
  const request = useMemo(
    () => requestOf(choices, book.unit, { page, cell: opened.address }),
    [choices, book.unit, page, opened.address],
  );
  const printing = usePrinting(book, opened.place, request);
  const { making, pieces } = printing;
  const [done, setDone] = useState("");
  const form = useRef<HTMLDivElement>(null);
  const toFirst = () => form.current?.querySelector("select")?.focus();
  useEffect(toFirst, []);

  const choose = (change: Partial<Choices>) => {
    const next = { ...choices, ...change };
    setChoices(next);
    keepChoices(book.unit, next);
    setDone("");
  };
  const made = making.is === "made" ? making.made : null;
  const save = (): string =>
    saveText(made!.bytes, fileName(`${book.title} ${kindOf(choices.what).title}`, ".pdf"), "application/pdf");
  const print = async () => {
    if ((await printPdf(made!.bytes)) === "open")
      setDone(phrase`The browser's print is open. Choose actual size, 100 %, there.`);
    else
      setDone(
        phrase`This browser can't print a PDF by itself. Saved as ${save()}: open it and print it at 100 %.`,
      );
  };

  return (
    <Dialog title={phrase`Print`} wide onDone={onDone}>
      <div className="print">
        <div className="print-asked" ref={form}>
          <PaperForm choices={choices} book={book} page={page} pieces={pieces} onChoose={choose} />
          <Said
            making={making}
            isTrying={opened.isTrying}
            onStop={printing.stop}
            onAgain={() => {
              printing.again();
              toFirst();
            }}
          />
          <div className="print-ways">
            <button
              type="button"
              disabled={!made}
              onClick={() => setDone(phrase`Saved as ${save()}.`)}
            >{phrase`Save the PDF`}</button>
            <button type="button" disabled={!made} onClick={print}>{phrase`Print it`}</button>
          </div>
          <p role="status">{done}</p>
        </div>
        <Preview
          made={made}
          isRefused={making.is === "refused" || making.is === "stopped"}
          sheet={printing.sheet}
          onSheet={printing.setSheet}
          picture={printing.picture}
        />
      </div>
    </Dialog>
  );
}
