/** The typed cell that makes a refused figure what it is, where only one can have done so. */
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { understand } from "./content.ts";
import { areasOf, isSingle } from "./references.ts";

/** No measurement and no amount of a garment is as large. */
const FAR = 1e5;
/** The most cells that are looked at for one refusal. */
const MOST_CELLS = 200;

/**
 * Of the cells that are refused and those behind them, the only one that is blank or far too large. Where the refused
 * figure itself is not above 0, or stands in a cell as it was typed, it may be below zero as well; else such a figure
 * may be meant. Behind a figure that is not above 0, also the only cell that is 0. Null for no such cell, or more
 * than one.
 */
export function culpritOf(
  book: Book,
  refused: readonly Place[],
  value: (place: Place) => unknown,
): Place | null {
  const worst = new Map<string, Place>();
  const zeros = new Map<string, Place>();
  const seen = new Set<string>();
  for (const root of refused) {
    const figure = value(root);
    const isFormulaAt = ({ page, row, column }: Place) => isFormula(typedAt(book, page, row, column));
    const isOdd = typeof figure === "number" && (figure <= 0 || figure >= FAR);
    const mayBeBelow = isOdd || !isFormulaAt(root);
    const waiting = [root];
    for (let place = waiting.pop(); place && seen.size < MOST_CELLS; place = waiting.pop()) {
      const key = placeKey(place);
      if (seen.has(key)) continue;
      seen.add(key);
      const { page, row, column } = place;
      const typed = typedAt(book, page, row, column);
      if (isFormula(typed)) {
        for (const area of areasOf(book, formulaTree(typed), page))
          if (isSingle(area)) waiting.push({ page: area.page, row: area.top, column: area.left });
        continue;
      }
      const found = typedFigure(book, place, typed);
      if (found === null) continue;
      if (typed.trim() === "" || found >= FAR || (found < 0 && mayBeBelow)) worst.set(key, place);
      else if (found === 0 && isOdd) zeros.set(key, place);
    }
  }
  const [first, ...more] = (worst.size > 0 ? worst : zeros).values();
  return first && more.length === 0 ? first : null;
}

/** The figure that is typed in a cell, 0 where it is blank; null for anything else. */
function typedFigure(book: Book, { page, column }: Place, typed: string): number | null {
  if (typed.trim() === "") return 0;
  const content = understand(
    typed,
    book.pages[page]?.columns[column]?.kind ?? "any",
    book.unit,
    book.decimal,
  );
  return content.is === "number" || content.is === "length" ? content.value : null;
}
