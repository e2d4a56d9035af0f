/** What a function of a cut list lays on: columns of widths and lengths, or the list of cloth in stock. */
import type { CallContext, ListRow, Takes } from "../define.ts";
import type { LayCloth, LayQuestion } from "../lay.ts";
import { phrase, plural, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { type CutRow, cutRows } from "./cut-list.ts";
import { layQuestion } from "./lay-question.ts";
import { layRefusal } from "./lay-refusal.ts";
import { type LeastBought, leastBought } from "./least-bought.ts";
import { JOB_TAKE, STOCK_TAKE } from "./stock-form.ts";
import { clothConditions, type StockPiece, stockOf } from "./stock-list.ts";

/** What a call with a list of the stock was given. */
export interface OfStock {
  readonly stock?: readonly ListRow[];
  readonly cloth?: string | null;
  readonly job?: string | null;
}

/** The tape of a call. */
export type OfTape = Pick<CallContext, "cm" | "unit" | "mark">;

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

/** Says which pieces of cloth are laid on at their full width because no usable width is known, and which count as used up. */
export function doubtStock(pieces: readonly StockPiece[], doubt: CallContext["doubt"]): void {
  const names = pieces.filter(({ isFullWidth, washed }) => isFullWidth && washed).map(({ name }) => name);
  if (names.length > 0)
    doubt(
      phrase`the usable width of ${names.join(", ")} is not given: the full width is laid on, with its selvedges`,
    );
  doubtNoLength(pieces, doubt);
}

/** Says of which pieces of cloth the length is 0, so that nothing is cut from them. */
export function doubtNoLength(pieces: readonly StockPiece[], doubt: CallContext["doubt"]): void {
  const all = pieces.filter(({ length }) => length === 0);
  const empty = all.map(({ name }) => name);
  if (empty.length > 0)
    doubt(
      phrase`the length of ${empty.join(", ")} is 0, and nothing is cut from ${plural(empty.length, "it: measure it, or take its row", "them: measure them, or take their rows")} out of the stock`,
      all.length === 1 ? all[0]!.at("length") : undefined,
    );
}

/** The question of these rows on the stock. Refuses when nothing of the cloth is in stock. */
export function stockQuestion(
  rows: readonly CutRow[],
  stock: StockToLay,
  { gap, cloth }: { readonly gap: number; readonly cloth: string },
  of: OfTape,
): LayQuestion {
  if (stock.cloths.length === 0)
    throw new Refusal(
      stock.pieces.length > 0 && stock.pieces.every(({ length }) => length === 0)
        ? phrase`the length of all ${cloth || phrase`cloth`} in stock is 0: measure a piece of it, or buy it`
        : phrase`there is no ${cloth || phrase`cloth`} in stock, or all of it is reserved for other jobs: give a piece of it, or buy it`,
    );
  return onStock(rows, stock, gap, of);
}

const onStock = (
  rows: readonly CutRow[],
  { cloths, oneWay, repeat }: StockToLay,
  gap: number,
  { cm, unit, mark }: OfTape,
): LayQuestion => layQuestion(rows, cloths, { oneWay, gap, repeat }, cm(0.02), { unit, mark });

/** The arguments of a function that shares out a cut list between the stock and cloth to buy. */
export const SHARED_OUT = {
  stock: STOCK_TAKE,
  cloth: {
    kind: "text",
    about: "which cloth, as the cut list and the stock call it; needed when there are several",
    otherwise: null,
  },
  cloth_width: {
    kind: "length",
    usual: [15, 330],
    about: "usable width of the cloth that more can be bought of, between the selvedges",
    from: 5,
    to: 1000,
  },
  job: JOB_TAKE,
} as const satisfies Takes;

/** What is cut from the stock and what from cloth of this width, so that the length bought is least. */
export function sharedOut(
  given: Parameters<typeof cutRows>[0] &
    OfStock & { readonly stock: readonly ListRow[]; readonly cloth_width: number; readonly gap: number },
  { plan, doubt, ...of }: OfTape & Pick<CallContext, "plan"> & Partial<Pick<CallContext, "doubt">>,
): LeastBought {
  // Without a row in the list nothing is in stock, and everything is bought.
  const there =
    given.stock.length === 0 ? { pieces: [], cloths: [], ...clothConditions([]) } : stockToLay(given, of.cm);
  if (doubt) doubtStock(there.pieces, doubt);
  const rows = cutRows(given);
  const question = onStock(rows, there, given.gap, of);
  const bought = { name: written`to buy`, width: given.cloth_width, length: null };
  const answer = leastBought(question, bought, plan);
  if ("refusal" in answer)
    throw layRefusal(answer.refusal, rows, [...question.cloths, bought], "cloth_width");
  return answer;
}
