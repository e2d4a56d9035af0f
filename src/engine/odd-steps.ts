/** At which steps of a sweep a formula below the watched cells gives a function something unusual. */
import type { Book } from "../book/shape.ts";
import { type Dial, figureText } from "./dial.ts";
import type { Row } from "./sweep.ts";

/** A cell whose formula is unusual at one step, by its name or address, and the sentence that says why. */
export interface Odd {
  readonly label: string;
  readonly sentence: string;
}

export const oddText = ({ label, sentence }: Odd): string => `${label}: ${sentence}`;

/** What is unusual at one step, as one text; empty when nothing is. */
export const oddAt = ({ odd = [] }: Row): string => odd.map(oddText).join("; ");

/**
 * The steps at which something is unusual, a sentence for each cell: "at depth 6 to 6 1/2: cuff: …".
 * The sentence of the cell is the one at the first such step.
 */
export function oddSteps(
  { book, dials }: { readonly book: Book; readonly dials: readonly Dial[] },
  rows: readonly Row[],
): string[] {
  const labels = new Set(rows.flatMap(({ odd = [] }) => odd.map(({ label }) => label)));
  return [...labels].map((label) => {
    const has = rows.map(({ odd = [] }) => odd.find((one) => one.label === label));
    const at = (row: Row) =>
      dials.map((dial, i) => `${dial.label} ${figureText(book, dial.kind, row.figures[i]!)}`).join(" and ");
    const count = has.filter(Boolean).length;
    const first = has.findIndex(Boolean);
    const where =
      count === rows.length
        ? "at every step"
        : dials.length > 1
          ? `at ${count} of ${rows.length} steps, the first ${at(rows[first]!)}`
          : `at ${runs(has.map(Boolean))
              .map(([from, to]) =>
                from === to
                  ? at(rows[from]!)
                  : `${at(rows[from]!)} to ${figureText(book, dials[0]!.kind, rows[to]!.figures[0]!)}`,
              )
              .join(", and ")}`;
    return `${where}: ${oddText(has[first]!)}`;
  });
}

/** The stretches of neighbours that are true: the first and the last index of each. */
function runs(of: readonly boolean[]): [number, number][] {
  const found: [number, number][] = [];
  of.forEach((is, i) => {
    if (!is) return;
    const last = found.at(-1);
    if (last?.[1] === i - 1) last[1] = i;
    else found.push([i, i]);
  });
  return found;
}
