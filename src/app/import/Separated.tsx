/** What can be chosen of separated values: the sign between cells, the encoding, the decimal mark. */

import type { Decimal } from "../../../functions/decimal.ts";
import { phrase } from "../../../functions/phrase.ts";
import { DATE_ORDERS, type DateOrder } from "../../exchange/csv-dates.ts";
import { ENCODINGS, type Encoding } from "../../exchange/decode.ts";
import { DELIMITERS } from "../../exchange/read-csv.ts";
import type { Understood } from "../../exchange/table-form.ts";
import type { Table } from "./use-table.ts";

const SIGNS: Readonly<Record<string, string>> = {
  tab: phrase`tabs`,
  semicolon: phrase`semicolons ;`,
  stroke: phrase`upright strokes |`,
  comma: phrase`commas ,`,
};

export function Separated({ understood, table }: { understood: Understood; table: Table }) {
  const { delimiter, encoding, decimal, dates } = understood;
  const { change, form } = table;
  return (
    <>
      <label>
        <span>{phrase`Cells are separated by`}</span>
        <select value={delimiter} onChange={(event) => change({ delimiter: event.target.value })}>
          {Object.entries(DELIMITERS).map(([word, sign]) => (
            <option key={word} value={sign}>
              {SIGNS[word]}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{phrase`Letters are in`}</span>
        <select value={encoding} onChange={(event) => change({ encoding: event.target.value as Encoding })}>
          {Object.entries(ENCODINGS).map(([label, noun]) => (
            <option key={label} value={label}>
              {noun}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{phrase`Decimal mark`}</span>
        <select
          value={form.decimal ?? decimal ?? ""}
          onChange={(event) => change({ decimal: (event.target.value || undefined) as Decimal | undefined })}
        >
          <option value="">{phrase`each figure by itself`}</option>
          <option value="point">{phrase`point, 28.5`}</option>
          <option value="comma">{phrase`comma, 28,5`}</option>
        </select>
      </label>
      {dates && (
        <label>
          <span>{phrase`Dates are written`}</span>
          <select value={dates} onChange={(event) => change({ dates: event.target.value as DateOrder })}>
            {Object.entries(DATE_ORDERS).map(([order, words]) => (
              <option key={order} value={order}>
                {words}
              </option>
            ))}
          </select>
        </label>
      )}
    </>
  );
}
