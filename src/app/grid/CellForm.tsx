/** How the chosen cells are shown, decimal places and unit, what they are chosen from, and which fitting changes they follow. */

import { type FormEvent, useEffect, useRef, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { isTapeUnit, type TapeUnit } from "../../../functions/units.ts";
import { type Block, cellAddress } from "../../book/address.ts";
import { type CellSettings, LONGEST, MOST_DECIMALS } from "../../book/shape.ts";
import { setCells } from "../../store/changing-cells.ts";
import type { EditSession } from "./edit-session.ts";
import { FormFoot } from "./FormFoot.tsx";

interface Props {
  readonly session: EditSession;
  readonly block: Block;
  readonly onDone: () => void;
}

const UNITS: Readonly<Record<TapeUnit, string>> = {
  in: phrase`inches`,
  cm: phrase`centimetres`,
  mm: phrase`millimetres`,
  yd: phrase`yards`,
  ft: phrase`feet`,
  m: phrase`metres`,
};

export function CellForm({ session, block, onDone }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const { store } = session;
  const [from, to] = [cellAddress(block.top, block.left), cellAddress(block.bottom, block.right)];
  const now: CellSettings = store.shown.pages[block.page]?.cells?.[from] ?? {};
  const [decimals, setDecimals] = useState(String(now.decimals ?? ""));
  const [unit, setUnit] = useState<string>(now.unit ?? "");
  const [choices, setChoices] = useState(now.choices ?? "");
  const [fitting, setFitting] = useState(now.fitting ?? "");
  const [refusal, setRefusal] = useState<string | null>(null);
  useEffect(() => dialog.current?.showModal(), []);

  const keep = (event: FormEvent) => {
    event.preventDefault();
    const change = {
      decimals: decimals === "" ? undefined : Number(decimals),
      unit: isTapeUnit(unit) ? unit : undefined,
      choices: choices.trim() || undefined,
      fitting: fitting.trim() || undefined,
    };
    const sentence = store.run(setCells(block, change));
    setRefusal(sentence);
    if (sentence === null) dialog.current?.close();
  };
  return (
    <dialog
      ref={dialog}
      className="column-form"
      aria-labelledby="cell-form-title"
      onClose={onDone}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <form onSubmit={keep}>
        <h2 id="cell-form-title">
          {phrase`${from === to ? from : `${from}:${to}`}: choices, decimals, unit and fittings`}
        </h2>
        <label>
          <span>{phrase`Decimal places`}</span>
          <select value={decimals} onChange={(event) => setDecimals(event.target.value)}>
            <option value="">{phrase`as usual in this book`}</option>
            {[...Array(MOST_DECIMALS + 1).keys()].map((places) => (
              <option key={places} value={places}>
                {places}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{phrase`Lengths in`}</span>
          <select value={unit} onChange={(event) => setUnit(event.target.value)}>
            <option value="">{phrase`the book's unit`}</option>
            {Object.entries(UNITS).map(([one, noun]) => (
              <option key={one} value={one}>
                {noun}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{phrase`Chosen from`}</span>
          <input
            dir="auto"
            value={choices}
            placeholder={phrase`box; knife, or =A2:A6`}
            maxLength={LONGEST.choices}
            onChange={(event) => setChoices(event.target.value)}
          />
        </label>
        <label>
          <span>{phrase`Fitting changes of`}</span>
          <input
            dir="auto"
            value={fitting}
            placeholder={phrase`bodice waist`}
            maxLength={LONGEST.fitting}
            onChange={(event) => setFitting(event.target.value)}
          />
        </label>
        <p className="form-about">{phrase`Decimal places and unit change only what is shown: the cell keeps its full value, and formulas go on using it.`}</p>
        <p className="form-about">{phrase`Choices are a list with ; between them, or the cells that hold them. Anything else may still be typed and is listed among the problems.`}</p>
        <p className="form-about">{phrase`The fitting changes of a seam are added to the value of the cell. They come from the list named fitting_log, and reach other seams along the list named seams. The words top, bottom or each side may follow the name of the seam.`}</p>
        <FormFoot act={phrase`Keep`} refusal={refusal} onCancel={() => dialog.current?.close()} />
      </form>
    </dialog>
  );
}
