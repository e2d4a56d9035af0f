/** A table of another program while it is looked at: read in a worker, and understood anew at each change of the form. */
import { useState } from "react";
import type { Book } from "../../book/shape.ts";
import { MOST_BYTES, tooLarge } from "../../exchange/decode.ts";
import type { SheetForm, TableForm, Understood } from "../../exchange/table-form.ts";
import type { TableOrder } from "../../worker/table.ts";
import { tableClient } from "../../worker/table-client.ts";
import { type Reading, useReading } from "../reading/use-reading.ts";

export interface Table
  extends Pick<Reading<TableOrder, Understood>, "refusal" | "reading" | "ended" | "again"> {
  /** Null until the first answer. */
  readonly understood: Understood | null;
  readonly form: TableForm;
  readonly change: (change: Partial<TableForm>) => void;
  readonly changeSheet: (sheet: number, change: SheetForm) => void;
}

const MOST = { bytes: MOST_BYTES, tooLarge };

export function useTable(file: File, { decimal = "point", unit }: Pick<Book, "decimal" | "unit">): Table {
  const [form, setForm] = useState<TableForm>({});
  const { answer, refusal, reading, ended, again, ask } = useReading<TableOrder, Understood>(
    file,
    MOST,
    tableClient,
    (bytes) => ({ bytes, name: file.name, form, decimal, unit }),
  );
  const change = (part: Partial<TableForm>) => {
    const next = { ...form, ...part };
    setForm(next);
    ask({ form: next });
  };
  const changeSheet = (sheet: number, part: SheetForm) =>
    change({ sheets: { ...form.sheets, [sheet]: { ...form.sheets?.[sheet], ...part } } });
  return { understood: answer, refusal, reading, ended, again, form, change, changeSheet };
}
