/** What a cell that follows the fittings says about itself wherever it is shown. */

import { tapeTextBeside } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { fittingWords, readFitting } from "../book/fitting.ts";
import { isFormula } from "../book/formula.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";
import { fittingOf } from "./fitted-cells.ts";
import { show } from "./show.ts";

/** The mark beside such a figure, and what it says. */
export const FITTED_SIGN = phrase`fit.`;
export const FITTED_SAYS = phrase`with the changes from the fittings`;

/** "taken 27, fitted +1/2 (bodice waist): 27 1/2"; "" for a cell that follows no fittings or has no answer. */
export function fittedText(engine: Engine, place: Place): string {
  const setting = fittingOf(engine.book, place);
  if (setting === undefined) return "";
  const fitting = readFitting(setting);
  const call = engine.calls(place).findLast(({ declaration }) => declaration.name === "FITTED");
  const [flat, change] = call?.args ?? [];
  if (typeof flat !== "number" || typeof change !== "number" || "fault" in fitting) return "";
  const { book } = engine;
  const length = (figure: number) => show(figure, "length", book);
  const by =
    change === 0
      ? "unaltered"
      : phrase`fitted ${change > 0 ? "+" : "−"}${tapeTextBeside(Math.abs(change), [0], book.unit, book.mark)}`;
  const typed = typedAt(book, place.page, place.row, place.column);
  return `${isFormula(typed) ? phrase`worked out as ${length(flat)}` : phrase`taken ${length(flat)}`}, ${by} (${fittingWords(fitting)}): ${length(flat + change)}`;
}
