/** Names from the labels of a block: each is looked at, changed or left out before all are given in one step. */
import { phrase, plural } from "../../../functions/phrase.ts";
import "./naming.css";
import { type FormEvent, useId } from "react";
import type { Block } from "../../book/address.ts";
import type { LabelsIn } from "../../book/label-names.ts";
import { blockAddress, blockText, cornerOf, isCell } from "../../book/names.ts";
import type { Store } from "../../store/store.ts";
import { Dialog } from "../dialog/Dialog.tsx";
import { type NameRow, useNaming } from "./use-naming.ts";

interface Props {
  readonly store: Store;
  /** The selected block; a single cell stands for the filled block around it. */
  readonly block: Block;
  readonly onDone: () => void;
}

const WAYS: Readonly<Record<LabelsIn, string>> = {
  rows: phrase`each label names the cell at its right`,
  headings: phrase`each heading names the column below it`,
  block: phrase`one name for the whole block`,
};

export function NamesForm({ store, block: chosen, onDone }: Props) {
  const { block, by, of, rows, left, count, faults, refusal, ...acts } = useNaming(store, chosen);
  const { title } = store.book.pages[block.page]!;
  const keep = (event: FormEvent) => {
    event.preventDefault();
    if (count > 0 && faults === 0 && acts.give()) onDone();
  };
  return (
    <Dialog title={phrase`Names from the labels of ${blockText(block)}`} wide onDone={onDone}>
      <form onSubmit={keep}>
        <div className="naming-ways">
          <label>
            <span>{phrase`In this block`}</span>
            <select value={by} onChange={(event) => acts.chooseBy(event.target.value as LabelsIn)}>
              {(Object.keys(WAYS) as LabelsIn[]).map((way) => (
                <option key={way} value={way}>
                  {WAYS[way]}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>{phrase`The names belong to`}</span>
            <select
              value={of === null ? "book" : "page"}
              onChange={(event) => acts.chooseOf(event.target.value === "page" ? block.page : null)}
            >
              <option value="book">{phrase`the whole book`}</option>
              <option value="page">{phrase`the page ${title} alone`}</option>
            </select>
          </label>
        </div>
        {rows.length === 0 ? (
          <p className="look" role="status">{phrase`No name can be made of these labels.`}</p>
        ) : (
          <table className="naming-list">
            <thead>
              <tr>
                <th scope="col">
                  <span className="unseen">{phrase`Give this name`}</span>
                </th>
                <th scope="col">{phrase`Label`}</th>
                <th scope="col">{phrase`Name`}</th>
                <th scope="col">{phrase`Cells`}</th>
                <th scope="col">{phrase`Now`}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Row
                  key={blockAddress(store.book, row.block)}
                  row={row}
                  address={blockText(row.block)}
                  shown={isCell(row.block) ? store.engine.view(cornerOf(row.block)).shown : "a list"}
                  onChange={(change) => acts.change(row, change)}
                />
              ))}
            </tbody>
          </table>
        )}
        {left.length > 0 && (
          <details className="naming-left" open={rows.length === 0}>
            <summary>
              {phrase`${plural(left.length, "1 label gives no name", "# labels give no name")}`}
            </summary>
            <ul>
              {left.map(({ label, why }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: labels may be alike, and they stand in a fixed order
                <li key={i}>
                  “{label}”: {why}.
                </li>
              ))}
            </ul>
          </details>
        )}
        <p className="aside">{phrase`Formulas can use the names at once. No formula changes its answer: where a name would mean other cells than before, the address is written instead.`}</p>
        {refusal && (
          <p className="look" role="alert">
            {refusal}
          </p>
        )}
        <p className="naming-keys">
          <button type="submit" disabled={count === 0 || faults > 0}>
            {phrase`Give ${plural(count, "# name", "# names")}`}
          </button>
          <button type="button" onClick={onDone}>{phrase`Cancel`}</button>
          <span role="status" className={faults > 0 ? "look" : "unseen"}>
            {faults > 0
              ? phrase`${plural(faults, "# name", "# names")} must be changed or left out first.`
              : ""}
          </span>
        </p>
      </form>
    </Dialog>
  );
}

interface RowProps {
  readonly row: NameRow;
  readonly address: string;
  /** What the cell shows now. */
  readonly shown: string;
  readonly onChange: (change: { readonly text?: string; readonly given?: boolean }) => void;
}

function Row({ row, address, shown, onChange }: RowProps) {
  const { label, text, name, given, fault, changed } = row;
  const id = useId();
  const said = fault ?? (text === name ? changed : null);
  return (
    <tr>
      <td>
        <input
          type="checkbox"
          aria-label={phrase`Give ${address} a name`}
          checked={given}
          onChange={(event) => onChange({ given: event.target.checked })}
        />
      </td>
      <th scope="row">{label}</th>
      <td className="naming-name">
        <input
          aria-label={phrase`Name for ${address}`}
          aria-invalid={fault !== null}
          aria-describedby={said === null ? undefined : id}
          spellCheck={false}
          value={text}
          onChange={(event) => onChange({ text: event.target.value, given: true })}
        />
        {said !== null && (
          <p id={id} className={fault === null ? "aside" : "look"}>
            {said}
          </p>
        )}
      </td>
      <td className="naming-cells">{address}</td>
      <td className="naming-now">{shown === "" ? phrase`blank` : shown}</td>
    </tr>
  );
}
