/** A page copied for another wearer: whose the copy is, under what title, what stays the first wearer's. */

import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { sameName } from "../../../functions/compared-name.ts";
import { phrase } from "../../../functions/phrase.ts";
import { fullAddress, type Place } from "../../book/address.ts";
import { fittingsOfPage } from "../../book/copy-page.ts";
import { blockAddress, cornerOf, isCell, nameAt } from "../../book/names.ts";
import { choicesAt } from "../../engine/choices.ts";
import { labelOf } from "../../engine/label.ts";
import { usedOfOtherPages } from "../../engine/other-pages.ts";
import { typedLengths } from "../../engine/typed-lengths.ts";
import { wearerCell } from "../../engine/wearer-cell.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { freeTitle, noFittings } from "./use-page-acts.ts";

interface Props {
  readonly store: Store;
  readonly page: number;
  /**
   * Copies the page under a title, with another wearer in its cell for the wearer; a copy for another wearer follows no
   * fittings. Returns null, or the reason why it can't be copied.
   */
  readonly onCopy: (
    title: string,
    wearer: { row: number; column: number; typed: string } | undefined,
    isForAnother: boolean,
  ) => string | null;
  readonly onDone: () => void;
}

/** A page's title for a wearer; a page already copied for one gets the other's name instead. */
const titleFor = (title: string, wearer: string): string =>
  `${title.replace(/, [^,]*$/, "")}, ${wearer}`.slice(0, 80);

/** What becomes of the cell that names the wearer. */
function wearerText({ shown: book, engine }: Store, cell: Place, own: boolean): string {
  const { shown } = engine.view(cell);
  const where = fullAddress(book, cell);
  const who = shown === "" ? phrase`nobody yet` : shown;
  return own
    ? phrase`${where} says for whom the page is, now ${who}. On the copy it says the name above, and all that is taken from a chart for that cell follows.`
    : phrase`${where} says for whom the page is, now ${who}, and is shared: the copy stays for the same wearer. Give the page a cell of its own for the wearer first to have it follow the name above.`;
}

export function CopyPage({ store, page, onCopy, onDone }: Props) {
  const { shown: book, engine } = store;
  const { title: from } = book.pages[page]!;
  const [wearer, setWearer] = useState("");
  const [own, setOwn] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  // This comes after the dialog's own effect, which gives the keyboard to its first button.
  useEffect(() => field.current?.focus(), []);

  const name = wearer.trim();
  const title = own ?? (name === "" ? "" : freeTitle(book.pages, titleFor(from, name)));
  const shown = (place: Place) => engine.view(place).shown;
  const cell = wearerCell(book, page);
  const ownCell = cell?.page === page ? cell : null;
  // A page whose cell for the wearer stands on another page stays for that wearer.
  const isForAnother =
    name !== "" && (cell === null || (ownCell !== null && !sameName(shown(ownCell), name)));
  const fitted = fittingsOfPage(book, page).length;
  const typed = isForAnother ? typedLengths(engine, page) : [];
  const outside = usedOfOtherPages(book, page, name === "" ? null : ownCell);
  const wearers = cell ? (choicesAt(book, cell, shown)?.list ?? []) : [];
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const reason =
      title.trim() === ""
        ? phrase`type the wearer's name, or a title for the copy`
        : onCopy(
            title.trim(),
            ownCell && name !== "" ? { row: ownCell.row, column: ownCell.column, typed: name } : undefined,
            isForAnother,
          );
    setRefusal(reason);
    if (reason === null) onDone();
    else field.current?.focus();
  };
  return (
    <Dialog title={phrase`Copy ${from} for another wearer`} onDone={onDone}>
      <form className="copy-page" onSubmit={keep}>
        <label>
          <span>{phrase`Wearer's name`}</span>
          <input
            ref={field}
            dir="auto"
            value={wearer}
            maxLength={60}
            list={wearers.length > 0 ? `${id}-wearers` : undefined}
            aria-invalid={refusal !== null}
            aria-describedby={refusal === null ? undefined : id}
            onChange={(event) => setWearer(event.target.value)}
          />
        </label>
        <datalist id={`${id}-wearers`}>
          {wearers.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
        <label>
          <span>{phrase`Title of the copy`}</span>
          <input dir="auto" value={title} maxLength={80} onChange={(event) => setOwn(event.target.value)} />
        </label>
        {refusal && (
          <p className="look" id={id} role="alert">
            {refusal}
          </p>
        )}
        {isForAnother && fitted > 0 && <p className="aside">{noFittings(fitted)}</p>}
        {cell && <p className="aside">{wearerText(store, cell, ownCell !== null)}</p>}
        <p className="aside">{phrase`The copy comes after ${from}. The names of the cells on ${from} go along: on the copy they mean the copy's own cells, and on every other page they mean what they mean now.`}</p>
        {typed.length > 0 && (
          <section aria-labelledby={`${id}-typed`}>
            <h3 id={`${id}-typed`}>{phrase`Lengths typed on this page, which the copy keeps as they are`}</h3>
            <p className="aside">{phrase`Type over what is the first wearer's on the copy: their body measurements above all.`}</p>
            <ul className="copy-page-outside">
              {typed.map((place) => (
                <li key={fullAddress(book, place)}>
                  <span>{labelOf(book, place) ?? ""}</span>
                  <small>{fullAddress(book, place)}</small>
                  <span>{engine.view(place).shown}</span>
                </li>
              ))}
            </ul>
          </section>
        )}
        {outside.length > 0 && (
          <section aria-labelledby={`${id}-outside`}>
            <h3 id={`${id}-outside`}>{phrase`Cells of other pages that the copy goes on using`}</h3>
            <p className="aside">{phrase`A chart of all wearers may be shared. Where these cells hold measurements of the first wearer alone, copy their page too, or change the formulas of the copy.`}</p>
            <ul className="copy-page-outside">
              {outside.map((block) => {
                const address = blockAddress(book, block);
                return (
                  <li key={address}>
                    <span>{nameAt(book, block)?.name ?? address}</span>
                    <small>{address}</small>
                    <span>{isCell(block) ? engine.view(cornerOf(block)).shown : phrase`a list`}</span>
                  </li>
                );
              })}
            </ul>
          </section>
        )}
        <p className="book-ways">
          <button type="submit">{phrase`Copy the page`}</button>
          <button type="button" onClick={onDone}>{phrase`Cancel`}</button>
        </p>
      </form>
    </Dialog>
  );
}
