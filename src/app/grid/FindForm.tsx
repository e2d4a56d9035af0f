/** Find and replace over the book: what is found is shown before anything is replaced. */
import { useEffect, useMemo, useRef, useState } from "react";
import { fullAddress, type Place } from "../../book/address.ts";
import { type Found, findCells, replacedIn, rowLabel, type Wanted } from "../../book/find.ts";
import { nameOf } from "../../book/names.ts";
import { replaceTexts } from "../../store/arranging.ts";
import { Dialog } from "../dialog/Dialog.tsx";
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

const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? "" : "s"}`;

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
    const sentence = store.run(replaceTexts(places, wanted, by, fault));
    setMessage(
      sentence
        ? { text: sentence, refused: true }
        : { text: `Replaced in ${many(list.length, "cell")}; Undo brings it back`, refused: false },
    );
  };
  const label = ({ place }: Found) => nameOf(store.book, place) ?? rowLabel(store.book, place);

  return (
    <Dialog title="Find and replace" wide onDone={onDone}>
      <form className="find-form" onSubmit={(event) => event.preventDefault()}>
        <label>
          <span>Find</span>
          <input ref={field} dir="auto" value={text} onChange={(event) => setText(event.target.value)} />
        </label>
        <label>
          <span>Replace with</span>
          <input dir="auto" value={by} onChange={(event) => setBy(event.target.value)} />
        </label>
        <label>
          <span>Look in</span>
          <select value={within} onChange={(event) => setWithin(event.target.value as Wanted["within"])}>
            <option value="all">texts and formulas</option>
            <option value="texts">texts and figures only</option>
            <option value="formulas">formulas only</option>
          </select>
        </label>
        <label>
          <span>On</span>
          <select value={where} onChange={(event) => setWhere(event.target.value as "book" | "page")}>
            <option value="book">all pages</option>
            <option value="page">the page {store.book.pages[page]?.title}</option>
          </select>
        </label>
        <label className="find-check">
          <input
            type="checkbox"
            checked={exactCase}
            onChange={(event) => setExactCase(event.target.checked)}
          />
          <span>Capitals and small letters differ</span>
        </label>
        <label className="find-check">
          <input
            type="checkbox"
            checked={wholeCell}
            onChange={(event) => setWholeCell(event.target.checked)}
          />
          <span>The whole cell only</span>
        </label>
        <p className="column-form-keys">
          <button type="button" disabled={found.length === 0} onClick={() => replace(found)}>
            Replace in {many(found.length, "cell")}
          </button>
        </p>
      </form>
      <p role="status" className={message?.refused ? "look" : "form-about"}>
        {message?.text ??
          (text === "" ? "Type what is to be found." : `Found in ${many(found.length, "cell")}.`)}
      </p>
      {found.length > 0 && (
        <div className="find-list">
          <table>
            <thead>
              <tr>
                <th scope="col">Cell</th>
                <th scope="col">Label</th>
                <th scope="col">Now</th>
                <th scope="col">Replaced</th>
                <th scope="col">
                  <span className="unseen">Replace this one</span>
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
                    <td>{replacedIn(one.typed, wanted, by) || "(blank)"}</td>
                    <td>
                      <button type="button" onClick={() => replace([one])}>
                        Replace<span className="unseen"> in {address}</span>
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
          {found.length > LISTED && <p className="form-about">and {found.length - LISTED} more cells</p>}
        </div>
      )}
    </Dialog>
  );
}
