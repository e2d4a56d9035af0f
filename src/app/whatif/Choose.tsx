/** The two choosers of What if: a typed cell to vary, and a worked cell to look at. */
import { useId } from "react";
import type { Book } from "../../book/shape.ts";
import type { Watched } from "../../engine/sweep.ts";
import type { VariedCell } from "../../engine/varied-cell.ts";
import { keyOf, spoken } from "./choices.ts";

interface Props<T extends VariedCell | Watched> {
  readonly book: Book;
  readonly label: string;
  readonly of: readonly T[];
  /** The address of the chosen one, or "". */
  readonly value: string;
  /** What "" stands for; left out when something must be chosen. */
  readonly none?: string;
  readonly onChoose: (key: string) => void;
}

export function Choose<T extends VariedCell | Watched>({ book, label, of, value, none, onChoose }: Props<T>) {
  const id = useId();
  return (
    <span className="choose">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {of.map((one) => (
          <option key={keyOf(book, one.place)} value={keyOf(book, one.place)}>
            {spoken(book, one)}
          </option>
        ))}
      </select>
    </span>
  );
}
