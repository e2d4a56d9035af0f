/** At which steps of a sweep a formula below the watched cells gives a function something unusual. */
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { figureText, type VariedCell } from "./varied-cell.ts";

/** A cell whose formula is unusual at one step, by its name or address, and the sentence that says why. */
export interface Odd {
  readonly label: string;
  readonly sentence: string;
}

/** A step of a sweep, as far as it concerns what is unusual there. */
interface Step {
  readonly figures: readonly number[];
  readonly odd?: readonly Odd[];
}

export const oddText = ({ label, sentence }: Odd): string => `${label}: ${sentence}`;

/** What is unusual at one step, as one text; empty when nothing is. */
export const oddAt = ({ odd = [] }: Step): string => odd.map(oddText).join("; ");

/**
 * The steps at which something is unusual, a sentence for each cell: "at depth 6 to 6 1/2: cuff: …".
 * The sentence of the cell is the one at the first such step.
 */
export function oddSteps(
  { book, varied }: { readonly book: Book; readonly varied: readonly VariedCell[] },
  rows: readonly Step[],
): string[] {
  const labels = new Set(rows.flatMap(({ odd = [] }) => odd.map(({ label }) => label)));
  return [...labels].map((label) => {
    const has = rows.map(({ odd = [] }) => odd.find((one) => one.label === label));
    const at = (row: Step) =>
      varied.map((cell, i) => `${cell.label} ${figureText(book, cell.kind, row.figures[i]!)}`).join(" and ");
    const count = has.filter(Boolean).length;
    const first = has.findIndex(Boolean);
    const where =
      count === rows.length
        ? phrase`at every step`
        : varied.length > 1
          ? phrase`at ${count} of ${rows.length} steps, the first ${at(rows[first]!)}`
          : phrase`at ${runs(has.map(Boolean))
              .map(([from, to]) =>
                from === to
                  ? at(rows[from]!)
                  : phrase`${at(rows[from]!)} to ${figureText(book, varied[0]!.kind, rows[to]!.figures[0]!)}`,
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
