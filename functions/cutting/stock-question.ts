/** What a function of a cut list lays on: columns of widths and lengths, or the list of cloth in stock. */
import type { CallContext, ListRow } from "../define.ts";
import type { LayCloth, LayQuestion } from "../lay.ts";
import { Refusal } from "../refusal.ts";
import type { CutRow } from "./cut-list.ts";
import { layQuestion } from "./lay-question.ts";
import { clothConditions, type StockPiece, stockOf } from "./stock-list.ts";

/** What a call with a list of the stock was given. */
export interface OfStock {
  readonly stock?: readonly ListRow[];
  readonly cloth?: string | null;
  readonly job?: string | null;
}

/** The cloth in stock that a call may cut, and what the cloth asks of the pieces. */
export interface StockToLay {
  readonly pieces: readonly StockPiece[];
  readonly cloths: readonly LayCloth[];
  readonly oneWay: boolean;
  readonly repeat: number;
}

export function stockToLay(
  given: OfStock & { readonly stock: readonly ListRow[] },
  cm: CallContext["cm"],
): StockToLay {
  const pieces = stockOf(given.stock, given.cloth?.trim() ?? "", given.job ?? null, cm);
  return {
    pieces,
    cloths: pieces.flatMap(({ washed }) => washed ?? []),
    ...clothConditions(pieces),
  };
}

/** Says which pieces of cloth are laid on at their full width because no usable width is known. */
export function doubtFullWidths(pieces: readonly StockPiece[], doubt: CallContext["doubt"]): void {
  const names = pieces.filter(({ isFullWidth, washed }) => isFullWidth && washed).map(({ name }) => name);
  if (names.length > 0)
    doubt(
      `the usable width of ${names.join(", ")} is not given: the full width is laid on, with its selvedges`,
    );
}

/** The question of these rows on the stock. Refuses a cloth of which nothing is there. */
export function stockQuestion(
  rows: readonly CutRow[],
  { cloths, oneWay, repeat }: StockToLay,
  { gap, cloth }: { readonly gap: number; readonly cloth: string },
  cm: CallContext["cm"],
): LayQuestion {
  if (cloths.length === 0)
    throw new Refusal(
      `there is no ${cloth || "cloth"} in stock, or all of it is reserved for other jobs: give a piece of it, or buy it`,
    );
  return layQuestion(rows, cloths, { oneWay, gap, repeat }, cm(0.02));
}
