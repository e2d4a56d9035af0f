/** "New": what is being made, then its questions; the answer is an ordinary book, or pages of the open one. */
import "./begin.css";
import { useEffect, useState } from "react";
import type { Decimal } from "../../../functions/decimal.ts";
import { BOOK_UNITS, UNITS, type Unit } from "../../../functions/units.ts";
import type { Garment } from "../../book/garment.ts";
import type { Book } from "../../book/shape.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { type Offer, offers } from "./garments.ts";
import { Questions } from "./Questions.tsx";

interface Props {
  /** Those of the open book; a garment that is added to it keeps to them. */
  readonly unit: Unit;
  readonly decimal: Decimal;
  readonly onBook: (book: Book) => void;
  readonly onAdd: (book: Book, label: string) => void;
  readonly onDone: () => void;
}

export function Begin({ unit: bookUnit, decimal, onBook, onAdd, onDone }: Props) {
  const [list, setList] = useState<readonly Offer[] | null>(null);
  const [garment, setGarment] = useState<Garment | null>(null);
  const [unit, setUnit] = useState(bookUnit);
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
    <Dialog title={garment ? `New: ${garment.title}` : "What do you want to make?"} wide onDone={onDone}>
      <div className="begin-head">
        {garment && (
          <button type="button" onClick={() => setGarment(null)}>
            Choose another
          </button>
        )}
        <label>
          <span>Measure in</span>
          <select value={unit} onChange={(event) => setUnit(event.target.value as Unit)}>
            {UNITS.map((one) => (
              <option key={one} value={one}>
                {BOOK_UNITS[one].noun}
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
          decimal={decimal}
          onBook={onBook}
          onAdd={onAdd}
        />
      ) : (
        <Choice list={list} onGarment={setGarment} />
      )}
    </Dialog>
  );
}

/** The groups in which the garments stand, in the order of a wardrobe: what is not named here comes last. */
const GROUPS = [
  "Skirts and petticoats",
  "Bodices and sleeves",
  "Capes",
  "Edges and trimmings",
  "Lists and charts",
];

function Choice({
  list,
  onGarment,
}: {
  list: readonly Offer[] | null;
  onGarment: (garment: Garment) => void;
}) {
  if (!list) return <p role="status">The garments are being loaded …</p>;
  const read = list.flatMap(({ reading }) => ("garment" in reading ? [reading.garment] : []));
  const groups = [...new Set([...GROUPS, ...read.map(({ group }) => group)])];
  return (
    <>
      {groups.map((group) => (
        <section key={group} className="begin-group" aria-label={group}>
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
