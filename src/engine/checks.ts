/** What there is to look at in a book. */
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import type { Engine } from "./engine.ts";

export interface Check {
  readonly place: Place;
  readonly address: string;
  readonly name: string | undefined;
  readonly is: "error" | "verdict";
  readonly sentence: string;
  /** How many other cells wait for this one. */
  readonly waiting: number;
}

const key = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/** Every cell that is not as it should be, once where it begins, in the order of the book. */
export function checks(engine: Engine): Check[] {
  const found: Check[] = [];
  const waiting = new Map<string, number>();
  engine.book.pages.forEach((page, index) => {
    page.rows.forEach((row, r) => {
      row.forEach((typed, column) => {
        if (!isFormula(typed)) return;
        const place = { page: index, row: r, column };
        const { look, name } = engine.view(place);
        if (!look) return;
        if (key(look.from) !== key(place)) {
          waiting.set(key(look.from), (waiting.get(key(look.from)) ?? 0) + 1);
          return;
        }
        found.push({
          place,
          address: engine.address(place),
          name,
          is: look.is,
          sentence: look.sentence,
          waiting: 0,
        });
      });
    });
  });
  return found.map((check) => ({ ...check, waiting: waiting.get(key(check.place)) ?? 0 }));
}
