/** "New": what is being made, then its questions; the answer is an ordinary book, or pages of the open one. */

import { phrase } from "../../../functions/phrase.ts";
import { UNIT_WORDS } from "../../book/unit-words.ts";
import "./begin.css";
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { UNITS, type Unit } from "../../../functions/units.ts";
import type { Garment } from "../../book/garment.ts";
import type { Book } from "../../book/shape.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { type Offer, offers } from "./garments.ts";
import { Questions } from "./Questions.tsx";

interface Props {
  /** The open book: a garment that is added to it keeps to its unit and decimal mark. */
  readonly open: Book;
  readonly onBook: (book: Book) => void;
  readonly onAdd: (book: Book, label: string) => void;
  readonly onDone: () => void;
}

export function Begin({ open, onBook, onAdd, onDone }: Props) {
  const [list, setList] = useState<readonly Offer[] | null>(null);
  const [garment, setGarment] = useState<Garment | null>(null);
  const [unit, setUnit] = useState(open.unit);
  useEffect(() => {
    let gone = false;
    offers().then((found) => {
      if (!gone) setList(found);
    });
    return () => {
      gone = true;
    };
  }, []);
  return (
    <Dialog
      title={garment ? phrase`New: ${garment.title}` : phrase`What do you want to make?`}
      wide
      onDone={onDone}
    >
      <div className="begin-head">
        {garment && <button type="button" onClick={() => setGarment(null)}>{phrase`Choose another`}</button>}
        <label>
          <span>{phrase`Measure in`}</span>
          <select value={unit} onChange={(event) => setUnit(event.target.value as Unit)}>
            {UNITS.map((one) => (
              <option key={one} value={one}>
                {UNIT_WORDS[one]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {garment ? (
        <Questions
          key={`${garment.title} ${unit}`}
          garment={garment}
          unit={unit}
          open={open}
          onBook={onBook}
          onAdd={onAdd}
        />
      ) : list ? (
        <Choice list={list} onGarment={setGarment} />
      ) : (
        <p role="status">{phrase`The garments are being loaded …`}</p>
      )}
    </Dialog>
  );
}

/** The groups in which the garments stand, in the order of a wardrobe: what is not named here comes last. */
const GROUPS = [
  phrase`Skirts and petticoats`,
  phrase`Bodices and sleeves`,
  phrase`Breeches and trousers`,
  phrase`Capes`,
  phrase`Edges and trimmings`,
  phrase`Lists and charts`,
];

/** The garments that have every word typed, in their titles; when no title has them, in what is said of them. */
function wanted(all: readonly Garment[], typed: string): readonly Garment[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const has = (text: string) => words.every((word) => text.toLowerCase().includes(word));
  const titled = all.filter(({ title }) => has(title));
  return titled.length > 0
    ? titled
    : all.filter(({ title, about, group }) => has(`${title} ${about} ${group}`));
}

function Choice({ list, onGarment }: { list: readonly Offer[]; onGarment: (garment: Garment) => void }) {
  const [words, setWords] = useState("");
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const all = list.flatMap(({ reading }) => ("garment" in reading ? [reading.garment] : []));
  const read = wanted(all, words);
  const groups = [...new Set([...GROUPS, ...all.map(({ group }) => group)])];
  const onKeyDown = (event: KeyboardEvent) => {
    const first = groups.flatMap((group) => read.filter((one) => one.group === group))[0];
    if (event.key !== "Enter" || words.trim() === "" || !first) return;
    // Or the same key would send the questions off.
    event.preventDefault();
    onGarment(first);
  };
  return (
    <>
      <label className="begin-find">
        <span>{phrase`Find`}</span>
        <input
          ref={field}
          type="search"
          placeholder={phrase`such as gored`}
          value={words}
          onChange={(event) => setWords(event.target.value)}
          onKeyDown={onKeyDown}
        />
        <span role="status" className="aside">
          {read.length === 0
            ? phrase`Nothing here matches these words; try others.`
            : words.trim() !== "" && phrase`Enter opens the first.`}
        </span>
      </label>
      {groups.map((group) => (
        <section
          key={group}
          className="begin-group"
          aria-label={group}
          hidden={!read.some((one) => one.group === group)}
        >
          <h3>{group}</h3>
          <ul>
            {read
              .filter((one) => one.group === group)
              .map((one) => (
                <li key={one.title}>
                  <button type="button" className="book-open" onClick={() => onGarment(one)}>
                    <b>{one.title}</b>
                    <small>{one.about}</small>
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
      {list.map(({ file, reading }) =>
        "reason" in reading ? (
          <p key={file} className="look">
            {file}: {reading.reason}
          </p>
        ) : null,
      )}
    </>
  );
}
