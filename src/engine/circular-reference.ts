/** Cells that rest on themselves. */

import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { cellText } from "./label.ts";
import { areasOf, cellsIn } from "./references.ts";

/** The most references that are followed for all circles of one book, and of one range. */
const MOST_FOLLOWED = 100_000;
const MOST_OF_RANGE = 1000;

/** A circle that was found, and where in it a cell stands. */
interface Stand {
  readonly ring: readonly Place[];
  readonly at: number;
}

/** The circles of one book: all cells of a circle share it, so that each is looked for once. */
class CircularReferences {
  readonly #book: Book;
  readonly #stands = new Map<string, Stand>();
  #followed = 0;

  constructor(book: Book) {
    this.#book = book;
  }

  /** A circle that a cell stands in; null when no circle was found. */
  of(place: Place): Stand | null {
    const known = this.#stands.get(placeKey(place));
    if (known) return known;
    const ring = this.#search(place);
    if (!ring) return null;
    for (const [at, one] of ring.entries())
      if (!this.#stands.has(placeKey(one))) this.#stands.set(placeKey(one), { ring, at });
    return { ring, at: 0 };
  }

  /** The shortest way from a cell back to itself, the cell first. */
  #search(place: Place): Place[] | null {
    const home = placeKey(place);
    const from = new Map<string, Place | null>([[home, null]]);
    for (let wave = [place]; wave.length > 0; ) {
      const next: Place[] = [];
      for (const at of wave) {
        for (const one of this.#restsOn(at)) {
          this.#followed += 1;
          if (placeKey(one) === home) return back(at, from);
          if (from.has(placeKey(one))) continue;
          from.set(placeKey(one), at);
          next.push(one);
        }
        if (this.#followed > MOST_FOLLOWED) return null;
      }
      wave = next;
    }
    return null;
  }

  #restsOn({ page, row, column }: Place): Place[] {
    const typed = typedAt(this.#book, page, row, column);
    if (!isFormula(typed)) return [];
    return areasOf(this.#book, formulaTree(typed), page).flatMap((area) =>
      cellsIn(this.#book, area, MOST_OF_RANGE),
    );
  }
}

function back(last: Place, from: ReadonlyMap<string, Place | null>): Place[] {
  const way: Place[] = [];
  for (let at: Place | null = last; at; at = from.get(placeKey(at)) ?? null) way.push(at);
  return way.reverse();
}

/** Every cell of a circle asks for its sentence. */
const remembered = rememberWithObject<Book, CircularReferences>();

/** The most cells of a circle that a sentence lists. */
const MOST_LISTED = 5;

/** "Draft!B4 rests on itself through Draft!B7; break the circle in one of them". */
export function circularReferenceSentence(book: Book, place: Place): string {
  const circles = remembered(book, () => new CircularReferences(book));
  const first = cellText(book, place);
  const stand = circles.of(place);
  if (!stand) return phrase`${first} rests on itself by way of many cells; break the circle in one of them`;
  const { ring, at } = stand;
  if (ring.length === 1) return phrase`${first} rests on itself; take it out of its own formula`;
  const listed = ring.length - 1 > MOST_LISTED ? MOST_LISTED - 1 : ring.length - 1;
  const names = Array.from({ length: listed }, (_, i) => cellText(book, ring[(at + 1 + i) % ring.length]!));
  const more = ring.length - 1 - listed;
  const all = more > 0 ? [...names, phrase`${more} more`] : names;
  const list = all.length > 1 ? phrase`${all.slice(0, -1).join(", ")} and ${all.at(-1)!}` : all[0]!;
  return phrase`${first} rests on itself through ${list}; break the circle in one of them`;
}
