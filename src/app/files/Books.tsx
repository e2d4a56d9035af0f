/** The books: those kept in this browser, the ready ones, a new one, one from a file. */
import { useEffect, useRef, useState } from "react";
import { blankBook } from "../../book/shape.ts";
import { Dialog } from "../shell/Dialog.tsx";
import type { Keeper, Keeping } from "./keeper.ts";
import { readyBooks } from "./ready.ts";
import type { Spine } from "./shelf.ts";

interface Props {
  readonly keeper: Keeper;
  readonly keeping: Keeping;
  readonly onFile: (file: File) => Promise<void>;
  readonly onDone: () => void;
}

type Ready = Awaited<ReturnType<typeof readyBooks>>;

export function Books({ keeper, keeping, onFile, onDone }: Props) {
  const [spines, setSpines] = useState<readonly Spine[]>([]);
  const [ready, setReady] = useState<Ready>([]);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [leaving, setLeaving] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    keeper.list().then(setSpines);
    readyBooks().then(setReady);
  }, [keeper]);

  const open = async (spine: Spine) => {
    if (spine.id === keeping.id) return onDone();
    const reason = await keeper.open(spine.id);
    if (reason) setRefusal(`“${spine.title}” was not opened: ${reason}`);
    else onDone();
  };
  const remove = async (id: string) => {
    setLeaving(null);
    await keeper.remove(id);
    setSpines(await keeper.list());
  };
  const chooseFile = async (file: File | undefined) => {
    if (!file) return;
    await onFile(file);
    onDone();
  };
  const blank = (unit: "in" | "cm") =>
    keeper.add(blankBook("A new book", unit, unit === "in" ? "1/8" : "1 mm")).then(onDone);

  return (
    <Dialog title="Books" onDone={onDone}>
      <div role="alert">{refusal && <p className="look">{refusal}</p>}</div>
      <section className="books" aria-labelledby="books-kept">
        <h3 id="books-kept">Kept in this browser</h3>
        {spines.length === 0 && <p className="empty">None yet.</p>}
        <ul>
          {spines.map((spine) => (
            <li key={spine.id} className="book">
              <button type="button" className="book-open" onClick={() => open(spine)}>
                <b>{spine.title}</b>
                <small>
                  {spine.id === keeping.id ? "open now, " : ""}changed{" "}
                  {new Date(spine.changed).toLocaleString()}
                </small>
              </button>
              {leaving === spine.id ? (
                <span className="book-leaving">
                  <button type="button" onClick={() => remove(spine.id)}>
                    Throw away for good
                  </button>
                  <button type="button" onClick={() => setLeaving(null)}>
                    Keep
                  </button>
                </span>
              ) : (
                <button type="button" className="quiet" onClick={() => setLeaving(spine.id)}>
                  Throw away<span className="unseen"> {spine.title}</span>
                </button>
              )}
            </li>
          ))}
        </ul>
      </section>
      <section className="books" aria-labelledby="books-ready">
        <h3 id="books-ready">Begin with a ready book</h3>
        <ul>
          {ready.map(({ name, reading }) => (
            <li key={name} className="book">
              {"book" in reading ? (
                <button
                  type="button"
                  className="book-open"
                  onClick={() => keeper.add(reading.book).then(onDone)}
                >
                  <b>{reading.book.title}</b>
                  <small>
                    {reading.book.about} In {reading.book.unit === "in" ? "inches" : "centimetres"}.
                  </small>
                </button>
              ) : (
                <p className="look">
                  {name}: {reading.reason}
                </p>
              )}
            </li>
          ))}
        </ul>
      </section>
      <section className="books" aria-labelledby="books-new">
        <h3 id="books-new">Or</h3>
        <div className="top-group">
          <button type="button" onClick={() => field.current!.click()}>
            Open a file …
          </button>
          <button type="button" onClick={() => blank("in")}>
            A blank book in inches
          </button>
          <button type="button" onClick={() => blank("cm")}>
            A blank book in centimetres
          </button>
        </div>
        <input
          ref={field}
          type="file"
          className="unseen"
          tabIndex={-1}
          aria-label="A book's file"
          accept=".json,application/json"
          onChange={(event) => chooseFile(event.target.files?.[0])}
        />
        <p className="aside">A file can also be dropped anywhere on the page.</p>
      </section>
    </Dialog>
  );
}
