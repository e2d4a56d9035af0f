/** A table of another program while it is looked at: read in a worker, and understood anew at each change of the form. */
import { useEffect, useRef, useState } from "react";
import type { Book } from "../../book/shape.ts";
import { MOST_BYTES, tooLarge } from "../../exchange/decode.ts";
import type { SheetForm, TableForm, Understood } from "../../exchange/table-form.ts";
import { TableClient } from "../../worker/table-client.ts";

export interface Table {
  /** Null until the first answer. */
  readonly understood: Understood | null;
  /** Why it can't be read, or not in the way that is asked for. */
  readonly refusal: string | null;
  /** Whether an answer is awaited. */
  readonly reading: boolean;
  readonly form: TableForm;
  readonly change: (change: Partial<TableForm>) => void;
  readonly changeSheet: (sheet: number, change: SheetForm) => void;
}

export function useTable(file: File, { decimal = "point", unit }: Pick<Book, "decimal" | "unit">): Table {
  const [understood, setUnderstood] = useState<Understood | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [reading, setReading] = useState(true);
  const [form, setForm] = useState<TableForm>({});
  const client = useRef<TableClient | null>(null);

  const ask = (order: Parameters<TableClient["ask"]>[0]) => {
    setReading(true);
    client.current!.ask(order, (answer) => {
      setReading(false);
      setRefusal("refusal" in answer ? answer.refusal : null);
      if (!("refusal" in answer)) setUnderstood(answer);
    });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: a file is read once
  useEffect(() => {
    const refuse = (reason: string) => {
      setReading(false);
      setRefusal(reason);
    };
    // Its size is known without reading it.
    if (file.size > MOST_BYTES) {
      refuse(tooLarge(file.size));
      return;
    }
    const own = new TableClient();
    client.current = own;
    let gone = false;
    file.arrayBuffer().then(
      (bytes) => {
        if (!gone) ask({ bytes: new Uint8Array(bytes), name: file.name, form, decimal, unit });
      },
      () =>
        refuse("the browser could not read it; check that the file still exists and that you may read it"),
    );
    return () => {
      gone = true;
      own.close();
    };
  }, [file]);

  const change = (part: Partial<TableForm>) => {
    const next = { ...form, ...part };
    setForm(next);
    ask({ form: next });
  };
  const changeSheet = (sheet: number, part: SheetForm) =>
    change({ sheets: { ...form.sheets, [sheet]: { ...form.sheets?.[sheet], ...part } } });
  return { understood, refusal, reading, form, change, changeSheet };
}
