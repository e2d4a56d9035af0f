/** What a lay is compared with: another lay of the book, or the same pieces with the nap the other way. */

import { GRAIN_TURNS } from "../../../functions/cutting/lay-question.ts";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import { cellKey } from "../../engine/label.ts";
import { lengthText, plainNumber } from "../../engine/show.ts";
import type { Store } from "../../store/store.ts";
import { answeredAt } from "./asked.ts";
import { LayPicture } from "./LayPicture.tsx";
import { clothArea, isOneWay, shareText } from "./words.ts";

export interface Laid {
  readonly name: string;
  readonly question: LayQuestion;
  readonly lay: Lay;
}

/** A cell of the book by its address, the own lay with the nap otherwise, or nothing. */
export type Choice = string | typeof NAP | null;
const NAP = "nap";

/** What was chosen to stand beside the lay of a cell; null when there is no such lay now. */
export function laidBeside(store: Store, own: Laid, choice: Choice): Laid | null {
  if (choice === null) return null;
  const question = asksBeside(own.question, choice);
  if (question) {
    const lay = store.engine.setting.plan?.(question);
    const name = isOneWay(question) ? phrase`one way` : phrase`either way up`;
    return lay && !("refusal" in lay) ? { name, question, lay } : null;
  }
  const place = layCells(store).find((one) => store.engine.address(one) === choice);
  const asked = place && answeredAt(store, place);
  return asked ? { name: called(store, place), question: asked.question, lay: asked.lay } : null;
}

/** The question that stands beside a lay and that no cell asks; null without one. */
export const asksBeside = (question: LayQuestion, choice: Choice): LayQuestion | null =>
  choice === NAP ? napOtherwise(question) : null;

/** The same cloth with a nap where it had none, and without where it had one. */
function napOtherwise(question: LayQuestion): LayQuestion {
  const [now, then] = isOneWay(question) ? (["oneWay", "twoWay"] as const) : (["twoWay", "oneWay"] as const);
  const pieces = question.pieces.map((piece) => {
    const grain = Object.values(GRAIN_TURNS).find((turns) => turns[now].join() === piece.turns.join());
    return grain ? { ...piece, turns: grain[then] } : piece;
  });
  const { pinned: _, ...rest } = question;
  return { ...rest, pieces };
}

const called = ({ engine }: Store, place: Place): string => cellKey(engine.book, place);

interface ChooseProps {
  readonly store: Store;
  readonly place: Place;
  readonly own: Laid;
  readonly choice: Choice;
  readonly missing: boolean;
  readonly onChoose: (choice: Choice) => void;
}

export function ChooseBeside({ store, place, own, choice, missing, onChoose }: ChooseProps) {
  const address = (one: Place) => store.engine.address(one);
  const others = layCells(store).filter((one) => address(one) !== address(place));
  return (
    <>
      <label className="lay-row">
        <span>{phrase`Compare with`}</span>
        <select value={choice ?? ""} onChange={(event) => onChoose(event.target.value || null)}>
          <option value="">{phrase`no other lay`}</option>
          <option value={NAP}>
            {isOneWay(own.question)
              ? phrase`the same, turned either way up`
              : phrase`the same on a one-way nap`}
          </option>
          {others.map((one) => (
            <option key={address(one)} value={address(one)}>
              {called(store, one)}
            </option>
          ))}
        </select>
      </label>
      {missing && <p className="look">{phrase`What was chosen to compare with has no lay to show now.`}</p>}
    </>
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

/** The other lay, to look at only. */
export function Still({ store, laid, scale }: { store: Store; laid: Laid; scale: number }) {
  const { name, ...rest } = laid;
  return (
    <div className="lay-still">
      <p className="lay-name">{name}</p>
      <LayPicture {...rest} scale={scale} rule={store.shown} title={phrase`The lay of ${name}`} />
    </div>
  );
}

export function Figures({ store, laid }: { store: Store; laid: readonly Laid[] }) {
  const { unit } = store.shown;
  const say = (length: number) => lengthText(length, store.shown);
  const rows: readonly (readonly [string, (one: Laid) => string])[] = [
    [phrase`width of cloth`, ({ question }) => question.cloths.map(({ width }) => say(width)).join(", ")],
    [phrase`pieces lie`, ({ question }) => (isOneWay(question) ? phrase`one way` : phrase`either way up`)],
    [phrase`length used`, ({ lay }) => lay.lengths.map(say).join(", ")],
    [
      phrase`cloth used`,
      ({ question, lay }) =>
        phrase`${plainNumber(clothArea(question, lay), 0, store.shown.decimal)} sq ${unit}`,
    ],
    [phrase`covered`, ({ lay }) => shareText(lay, store.shown.decimal)],
  ];
  return (
    <table className="lay-figures">
      <thead>
        <tr>
          <td />
          {laid.map(({ name }) => (
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
            {laid.map((one) => (
              <td key={one.name}>{text(one)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
