/** Cells that rest on themselves. */
import { fullAddress, type Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { precedents } from "./references.ts";

const keyOf = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/** The shortest way from a cell back to itself, the cell first; null when there is none. */
function circleOf(book: Book, place: Place): Place[] | null {
  const home = keyOf(place);
  const from = new Map<string, Place | null>([[home, null]]);
  for (let wave = [place]; wave.length > 0; ) {
    const next: Place[] = [];
    for (const at of wave) {
      const typed = typedAt(book, at.page, at.row, at.column);
      if (!isFormula(typed)) continue;
      for (const one of precedents(book, typed, at.page)) {
        if (keyOf(one) === home) return back(at, from);
        if (from.has(keyOf(one))) continue;
        from.set(keyOf(one), at);
        next.push(one);
      }
    }
    wave = next;
  }
  return null;
}

function back(last: Place, from: ReadonlyMap<string, Place | null>): Place[] {
  const way: Place[] = [];
  for (let at: Place | null = last; at; at = from.get(keyOf(at)) ?? null) way.unshift(at);
  return way;
}

/** The most cells of a circle that are told one by one. */
const MOST_TOLD = 5;

/** "Draft!B4 rests on itself through Draft!B7; break the circle in one of them". */
export function circleSentence(book: Book, place: Place): string {
  const [first, ...rest] = (circleOf(book, place) ?? [place]).map((one) => fullAddress(book, one));
  if (rest.length === 0) return `${first} rests on itself; take it out of its own formula`;
  const told =
    rest.length > MOST_TOLD ? [...rest.slice(0, MOST_TOLD - 1), `${rest.length - MOST_TOLD + 1} more`] : rest;
  const list = told.length > 1 ? `${told.slice(0, -1).join(", ")} and ${told.at(-1)}` : told[0];
  return `${first} rests on itself through ${list}; break the circle in one of them`;
}
