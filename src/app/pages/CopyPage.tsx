/** A page copied for another wearer: under what title, which names go along, what stays the first wearer's. */
import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { blockAddress, cornerOf, isCell, nameAt } from "../../book/names.ts";
import { usedOfOtherPages } from "../../engine/other-pages.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { freeTitle } from "./use-page-acts.ts";

interface Props {
  readonly store: Store;
  readonly page: number;
  /** Copies the page under a title; the reason why not. */
  readonly onCopy: (title: string) => string | null;
  readonly onDone: () => void;
}

/** A page's title for a wearer; a page already copied for one gets the other's name instead. */
const titleFor = (title: string, wearer: string): string =>
  `${title.replace(/, [^,]*$/, "")}, ${wearer}`.slice(0, 80);

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
  const outside = usedOfOtherPages(book, page);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const reason =
      title.trim() === "" ? "type the wearer's name, or a title for the copy" : onCopy(title.trim());
    setRefusal(reason);
    if (reason === null) onDone();
    else field.current?.focus();
  };
  return (
    <Dialog title={`Copy ${from} for another wearer`} onDone={onDone}>
      <form className="copy-page" onSubmit={keep}>
        <label>
          <span>Wearer's name</span>
          <input
            ref={field}
            value={wearer}
            maxLength={60}
            aria-invalid={refusal !== null}
            aria-describedby={refusal === null ? undefined : id}
            onChange={(event) => setWearer(event.target.value)}
          />
        </label>
        <label>
          <span>Title of the copy</span>
          <input value={title} maxLength={80} onChange={(event) => setOwn(event.target.value)} />
        </label>
        {refusal && (
          <p className="look" id={id} role="alert">
            {refusal}
          </p>
        )}
        <p className="aside">
          The copy comes after {from}. The names of the cells on {from} go along: on the copy they mean the
          copy's own cells, and on every other page they mean what they mean now.
        </p>
        {outside.length > 0 && (
          <section aria-labelledby={`${id}-outside`}>
            <h3 id={`${id}-outside`}>Cells of other pages that the copy goes on using</h3>
            <p className="aside">
              Where they hold the measurements of the first wearer, copy their page too, or change the
              formulas of the copy.
            </p>
            <ul className="copy-page-outside">
              {outside.map((block) => {
                const address = blockAddress(book, block);
                return (
                  <li key={address}>
                    <span>{nameAt(book, block)?.name ?? address}</span>
                    <small>{address}</small>
                    <span>{isCell(block) ? engine.view(cornerOf(block)).shown : "a list"}</span>
                  </li>
                );
              })}
            </ul>
          </section>
        )}
        <p className="book-ways">
          <button type="submit">Copy the page</button>
          <button type="button" onClick={onDone}>
            Cancel
          </button>
        </p>
      </form>
    </Dialog>
  );
}
