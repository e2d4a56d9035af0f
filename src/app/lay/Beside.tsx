/** A second lay beside the first, at the same scale: two widths of cloth, or two cut lists. */
import { useLayoutEffect, useRef, useState } from "react";
import { tapeText } from "../../../functions/fractions.ts";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import type { Place } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import { plainNumber } from "../../engine/show.ts";
import type { Store } from "../../store/store.ts";
import { answeredAt } from "./asked.ts";
import { LayPicture } from "./LayPicture.tsx";
import { type Room, roomOf, scaleFor } from "./LayTable.tsx";
import { clothArea, coverText } from "./words.ts";

interface Laid {
  readonly question: LayQuestion;
  readonly lay: Lay;
}

interface Props {
  readonly store: Store;
  readonly place: Place;
  readonly own: Laid;
  readonly beside: Place | null;
  readonly onBeside: (place: Place | null) => void;
  readonly sizes: readonly { readonly long: number; readonly wide: number }[];
}

export function Beside({ store, place, own, beside, onBeside, sizes }: Props) {
  const { engine } = store;
  const called = (one: Place) => engine.view(one).name ?? engine.address(one);
  const others = layCells(store).filter((one) => engine.address(one) !== engine.address(place));
  const other = beside && answeredAt(store, beside);
  if (others.length === 0) return null;
  return (
    <div className="lay-beside">
      <label className="lay-row">
        <span>Beside it</span>
        <select
          value={beside ? engine.address(beside) : ""}
          onChange={(event) =>
            onBeside(others.find((one) => engine.address(one) === event.target.value) ?? null)
          }
        >
          <option value="">no other lay</option>
          {others.map((one) => (
            <option key={engine.address(one)} value={engine.address(one)}>
              {called(one)}
            </option>
          ))}
        </select>
      </label>
      {beside && !other && <p className="look">{called(beside)} has no lay to show now.</p>}
      {beside && other && (
        <>
          <Still store={store} laid={other} sizes={sizes} title={`The lay of ${called(beside)}`} />
          <Table store={store} names={[called(place), called(beside)]} laid={[own, other]} />
        </>
      )}
    </div>
  );
}

/** Cells whose formula lays pieces, in the order of the book. */
function layCells({ shown }: Store): Place[] {
  return shown.pages.flatMap(({ rows }, page) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((typed, column) =>
        isFormula(typed) && /\b(?:YARDAGE|CLOTH_CHECK|LAY_DENSITY)\s*\(/i.test(typed)
          ? [{ page, row, column }]
          : [],
      ),
    ),
  );
}

interface StillProps {
  readonly store: Store;
  readonly laid: Laid;
  readonly sizes: Props["sizes"];
  readonly title: string;
}

function Still({ store, laid, sizes, title }: StillProps) {
  const element = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<Room | null>(null);
  useLayoutEffect(() => setRoom(roomOf(element.current!)), []);
  const { unit, mark } = store.shown;
  return (
    <div className="lay-still" ref={element}>
      {room && <LayPicture {...laid} scale={scaleFor(sizes, room)} unit={unit} mark={mark} title={title} />}
    </div>
  );
}

function Table({ store, names, laid }: { store: Store; names: readonly string[]; laid: readonly Laid[] }) {
  const { unit, mark } = store.shown;
  const say = (length: number) => `${tapeText(length, unit, mark)} ${unit}`;
  const rows: readonly (readonly [string, (one: Laid) => string])[] = [
    ["width of cloth", ({ question }) => question.cloths.map(({ width }) => say(width)).join(", ")],
    ["length used", ({ lay }) => lay.lengths.map(say).join(", ")],
    ["cloth used", ({ question, lay }) => `${plainNumber(clothArea(question, lay), 0)} sq ${unit}`],
    ["covered", ({ lay }) => coverText(lay).replace(" covered", "")],
  ];
  return (
    <table className="lay-figures">
      <thead>
        <tr>
          <td />
          {names.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([head, text]) => (
          <tr key={head}>
            <th scope="row">{head}</th>
            {laid.map((one, i) => (
              <td key={names[i]}>{text(one)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
