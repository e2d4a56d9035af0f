/** Find and replace over the book: what is found is shown before anything is replaced. */

import { useEffect, useMemo, useRef, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { fullAddress, type Place } from "../../book/address.ts";
import { type Found, findCells, replacedIn, type Wanted } from "../../book/find.ts";
import { nameOf } from "../../book/names.ts";
import { labelOf } from "../../engine/label.ts";
import { replaceTexts } from "../../store/changing-cells.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { saidIfMany } from "../progress/large-steps.ts";
import { useRevision } from "../store-hooks.ts";
import type { EditSession } from "./edit-session.ts";

interface Props {
  readonly session: EditSession;
  readonly page: number;
  readonly onGo: (place: Place) => void;
  readonly onDone: () => void;
}

/** So many of what is found are listed; the rest is counted. */
const LISTED = 200;

export function FindForm({ session, page, onGo, onDone }: Props) {
  const { store } = session;
  const revision = useRevision(store);
  const field = useRef<HTMLInputElement>(null);
  // This comes after the dialog's own effect, which gives the keyboard to its first button.
  useEffect(() => field.current?.focus(), []);
  const [text, setText] = useState("");
  const [by, setBy] = useState("");
  const [exactCase, setExactCase] = useState(false);
  const [wholeCell, setWholeCell] = useState(false);
  const [where, setWhere] = useState<"book" | "page">("book");
  const [within, setWithin] = useState<Wanted["within"]>("all");
  const [message, setMessage] = useState<{ readonly text: string; readonly refused: boolean } | null>(null);

  const wanted = useMemo<Wanted>(
    () => ({ text, exactCase, wholeCell, within, page: where === "page" ? page : null }),
    [text, exactCase, wholeCell, within, where, page],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the revision says when the book is another
  const found = useMemo(() => findCells(store.book, wanted), [store, wanted, revision]);

  const replace = (list: readonly Found[]) => {
    const fault = (typed: string, on: number) =>
      /^\s*=/.test(typed) ? store.engine.unreadable(typed, on) : null;
    const places = list.map(({ place }) => place);
    const cells = plural(list.length, "# cell", "# cells");
    saidIfMany(
      store,
      list.length,
      () => phrase`Replacing in ${cells}`,
      () => {
        const sentence = store.run(replaceTexts(places, wanted, by, fault));
        const text = sentence ?? phrase`Replaced in ${cells}; Undo brings it back`;
        setMessage({ text, refused: sentence !== null });
      },
    );
  };
  const label = ({ place }: Found) => nameOf(store.book, place) ?? labelOf(store.book, place);

  return (
    <Dialog title={phrase`Find and replace`} wide onDone={onDone}>
      <form className="find-form" onSubmit={(event) => event.preventDefault()}>
        <label>
          <span>{phrase`Find`}</span>
          <input ref={field} dir="auto" value={text} onChange={(event) => setText(event.target.value)} />
        </label>
        <label>
          <span>{phrase`Replace with`}</span>
          <input dir="auto" value={by} onChange={(event) => setBy(event.target.value)} />
        </label>
        <label>
          <span>{phrase`Look in`}</span>
          <select value={within} onChange={(event) => setWithin(event.target.value as Wanted["within"])}>
            <option value="all">{phrase`texts and formulas`}</option>
            <option value="texts">{phrase`texts and figures only`}</option>
            <option value="formulas">{phrase`formulas only`}</option>
          </select>
        </label>
        <label>
          <span>{phrase`On`}</span>
          <select value={where} onChange={(event) => setWhere(event.target.value as "book" | "page")}>
            <option value="book">{phrase`all pages`}</option>
            <option value="page">{phrase`the page ${store.book.pages[page]?.title ?? ""}`}</option>
          </select>
        </label>
        <label className="find-check">
          <input
            type="checkbox"
            checked={exactCase}
            onChange={(event) => setExactCase(event.target.checked)}
          />
          <span>{phrase`Capitals and small letters differ`}</span>
        </label>
        <label className="find-check">
          <input
            type="checkbox"
            checked={wholeCell}
            onChange={(event) => setWholeCell(event.target.checked)}
          />
          <span>{phrase`The whole cell only`}</span>
        </label>
        <p className="column-form-keys">
          <button type="button" disabled={found.length === 0} onClick={() => replace(found)}>
            {phrase`Replace in ${plural(found.length, "# cell", "# cells")}`}
          </button>
        </p>
      </form>
      <p role="status" className={message?.refused ? "look" : "form-about"}>
        {message?.text ??
          (text === ""
            ? phrase`Type what is to be found.`
            : phrase`Found in ${plural(found.length, "# cell", "# cells")}.`)}
      </p>
      {found.length > 0 && (
        <div className="find-list">
          <table>
            <thead>
              <tr>
                <th scope="col">{phrase`Cell`}</th>
                <th scope="col">{phrase`Label`}</th>
                <th scope="col">{phrase`Now`}</th>
                <th scope="col">{phrase`Replaced`}</th>
                <th scope="col">
                  <span className="unseen">{phrase`Replace this one`}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {found.slice(0, LISTED).map((one) => {
                const address = fullAddress(store.book, one.place);
                return (
                  <tr key={address}>
                    <td>
                      <button type="button" className="find-go" onClick={() => onGo(one.place)}>
                        {address}
                      </button>
                    </td>
                    <td>{label(one)}</td>
                    <td>{one.typed}</td>
                    <td>{replacedIn(one.typed, wanted, by) || phrase`(blank)`}</td>
                    <td>
                      <button type="button" onClick={() => replace([one])}>
                        {phrase`Replace`}
                        <span className="unseen">{phrase` in ${address}`}</span>
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
          {found.length > LISTED && (
            <p className="form-about">{phrase`and ${found.length - LISTED} more cells`}</p>
          )}
        </div>
      )}
    </Dialog>
  );
}
