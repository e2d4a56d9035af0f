/** Cells that rest on themselves. */

import { grouped } from "../../functions/grouped.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { comparePlaces, type Place, placeKey } from "../book/address.ts";
import { formulaTree } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { orderOf } from "./kind-order.ts";
import { cellText } from "./label.ts";
import { type Area, areasOf } from "./references.ts";

/** The most references that are followed for all circles of one book. */
const MOST_FOLLOWED = 1_000_000;

/** A circle that was found, and where in it a cell stands. */
interface Stand {
  readonly ring: readonly Place[];
  readonly at: number;
}

/**
 * The circles of one book. Which circle a cell is given depends on the formulas alone, never on the cell that was asked
 * for first: a cell that names itself has its own; every other one has the shortest of the first cell, in the order of
 * the book, whose shortest circle it stands in.
 */
class CircularReferences {
  readonly #stands: (Stand | undefined)[];
  readonly #numbers: ReadonlyMap<string, number>;

  /** `cells` are those that rest on themselves. */
  constructor(book: Book, cells: readonly Place[]) {
    const places = cells.toSorted(comparePlaces);
    this.#numbers = new Map(places.map((place, number) => [placeKey(place), number]));
    const links = new Links(book, places, this.#numbers);
    const all = [...places.keys()];
    const rests = all.map((cell) => links.of(cell));
    const { circles } = orderOf(all, all.length, (cell) => rests[cell]!);
    this.#stands = new Array(all.length);
    for (const cell of all)
      if (rests[cell]!.includes(cell)) this.#stands[cell] = { ring: [places[cell]!], at: 0 };
    let followed = 0;
    for (const cell of all) {
      if (this.#stands[cell] || !circles.has(cell) || followed > MOST_FOLLOWED) continue;
      const way = shortestWayBack(cell, (one) => {
        const next = rests[one]!.filter((other) => circles.get(other) === circles.get(cell));
        followed += next.length;
        return next;
      });
      const ring = way.map((one) => places[one]!);
      for (const [at, one] of way.entries()) this.#stands[one] ??= { ring, at };
    }
  }

  /** A circle that a cell stands in; null when it was not found among so many references. */
  of(place: Place): Stand | null {
    const number = this.#numbers.get(placeKey(place));
    return (number !== undefined && this.#stands[number]) || null;
  }
}

/** Which cells of circles the formulas of such cells name. */
class Links {
  readonly #book: Book;
  readonly #places: readonly Place[];
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #byPage: ReadonlyMap<number, readonly number[]>;
  /** By area, since formulas that are alike name the same list. */
  readonly #within = new Map<string, readonly number[]>();
  #followed = 0;

  constructor(book: Book, places: readonly Place[], numbers: ReadonlyMap<string, number>) {
    this.#book = book;
    this.#places = places;
    this.#numbers = numbers;
    this.#byPage = grouped(places.keys(), (number) => places[number]!.page);
  }

  /** In the order of the formula, each once. Behind the most references that are followed, none. */
  of(cell: number): readonly number[] {
    if (this.#followed > MOST_FOLLOWED) return [];
    const { page, row, column } = this.#places[cell]!;
    const areas = areasOf(this.#book, formulaTree(typedAt(this.#book, page, row, column)), page);
    const found = new Set(areas.flatMap((area) => this.#in(area)));
    this.#followed += areas.length + found.size;
    return [...found];
  }

  #in(area: Area): readonly number[] {
    const { page, top, left, bottom, right } = area;
    if (top === bottom && left === right) {
      const number = this.#numbers.get(placeKey({ page, row: top, column: left }));
      return number === undefined ? [] : [number];
    }
    const key = `${page}.${top}.${left}.${bottom}.${right}`;
    let found = this.#within.get(key);
    if (!found) {
      const own = this.#byPage.get(page) ?? [];
      const isIn = ({ row, column }: Place) =>
        row >= top && row <= bottom && column >= left && column <= right;
      found = own.filter((number) => isIn(this.#places[number]!));
      this.#followed += own.length;
      this.#within.set(key, found);
    }
    return found;
  }
}

/** The shortest way from a cell back to itself, the cell first. */
function shortestWayBack(cell: number, restsOf: (cell: number) => readonly number[]): number[] {
  const from = new Map<number, number | null>([[cell, null]]);
  for (let wave = [cell]; wave.length > 0; ) {
    const next: number[] = [];
    for (const at of wave)
      for (const one of restsOf(at)) {
        if (one === cell) return wayTo(at, from);
        if (from.has(one)) continue;
        from.set(one, at);
        next.push(one);
      }
    wave = next;
  }
  return [cell];
}

function wayTo(last: number, from: ReadonlyMap<number, number | null>): number[] {
  const way: number[] = [];
  for (let at: number | null = last; at !== null; at = from.get(at) ?? null) way.push(at);
  return way.reverse();
}

/** Every cell of a circle asks for its sentence. */
const remembered = rememberWithObject<Book, CircularReferences>();

/** The most cells of a circle that a sentence lists. */
const MOST_LISTED = 5;

/** "Draft!B4 rests on itself through Draft!B7; break the circle in one of them". `circular` lists all cells of the book that rest on themselves. */
export function circularReferenceSentence(
  book: Book,
  place: Place,
  circular: () => readonly Place[],
): string {
  const circles = remembered(book, () => new CircularReferences(book, circular()));
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
