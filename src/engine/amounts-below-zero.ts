/**
 * Typed figures below zero that a formula takes for amounts: a price that it multiplies, cloth in stock that it takes
 * off a need, hours that it adds up, a girth that it compares with another. A measured difference, such as ease or a change at a fitting, may be below zero.
 */
import type { Kind } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { understand } from "./content.ts";
import { doesWithList } from "./does-with-list.ts";
import type { Kinds } from "./kinds.ts";
import { cellText } from "./label.ts";
import { cellsIn, rangeText, sourceOf } from "./references.ts";
import type { Uncounted } from "./uncounted.ts";
import type { Use } from "./uses-in-formula.ts";

/** The most cells of one list that are looked at one by one. */
const MOST_CELLS = 2000;

/** Kinds of figures that a factor below zero makes no sense with; a length may be a difference, a share a deduction. */
const OF_AMOUNTS: ReadonlySet<Kind> = new Set<Kind>(["money", "area", "count"]);

/** In a list of lengths, changes may stand; in a list of money, deductions. */
const OF_CHANGES: ReadonlySet<Kind> = new Set<Kind>(["length", "money", "angle", "share"]);

/** Such cells, each once. `works` says whether a formula has an answer. */
export function amountsBelowZero(
  book: Book,
  kinds: Kinds,
  works: (formula: Place) => boolean,
  uses: readonly Use[],
): Uncounted[] {
  const found = new Map<string, Uncounted & { readonly users: Place[] }>();
  for (const use of uses) {
    const { formula } = use;
    if (!works(formula)) continue;
    for (const place of FINDERS[use.amount!](book, kinds, use)) {
      const old = found.get(placeKey(place));
      if (!old) found.set(placeKey(place), { ...said(book, place, use), users: [formula] });
      else if (!old.users.some((user) => placeKey(user) === placeKey(formula))) old.users.push(formula);
    }
  }
  return [...found.values()];
}

function said(book: Book, place: Place, { formula, amount, areas, by }: Use): Omit<Uncounted, "users"> {
  const typed = typedAt(book, place.page, place.row, place.column).trim();
  const user = formula.row < 0 ? phrase`this formula` : cellText(book, formula);
  const sentence =
    amount === "listed"
      ? phrase`${typed} is below zero, and hardly another number of the list ${areas.map(rangeText).join(" and ")} that ${user} ${doesWithList(by)} is: type 0 or more`
      : phrase`${typed} is below zero, and ${user} takes it for an amount: type 0 or more`;
  return { place, is: "unusual", sentence, first: true, column: null };
}

/** The value of a typed number; null for any other cell. */
function numberAt(book: Book, { page, row, column }: Place): number | null {
  const kind = book.pages[page]?.columns[column]?.kind ?? "any";
  const content = understand(typedAt(book, page, row, column), kind, book.unit, book.decimal);
  return content.is === "number" || content.is === "length" ? content.value : null;
}

const isNegative = (book: Book, place: Place): boolean => (numberAt(book, place) ?? 0) < 0;

/** The cells that the areas are, where each is one cell. */
const cellsOf = (book: Book, { areas }: Use): Place[] =>
  areas.map(({ page, top, left }) => sourceOf(book, { page, row: top, column: left }));

const clamped = (book: Book, _: Kinds, use: Use): Place[] =>
  cellsOf(book, use).filter((cell) => isNegative(book, cell));

function factor(book: Book, kinds: Kinds, use: Use): Place[] {
  const ofAmounts = (place: Place) =>
    [place, use.formula].some((one) => one.row >= 0 && OF_AMOUNTS.has(kinds.of(one)));
  return clamped(book, kinds, use).filter(ofAmounts);
}

/** Of cells that are compared with each other: the one below zero. Of two, both may be changes. */
function compared(book: Book, kinds: Kinds, use: Use): Place[] {
  const below = clamped(book, kinds, use);
  return below.length === 1 ? below : [];
}

/** The numbers below zero of a list that has at least three times as many above. */
function loneIn(book: Book, kinds: Kinds, { areas }: Use): Place[] {
  return areas.flatMap((area) => {
    const cells = cellsIn(book, area, MOST_CELLS).map((cell) => sourceOf(book, cell));
    const below = cells.filter((cell) => isNegative(book, cell) && !OF_CHANGES.has(kinds.of(cell)));
    const above = cells.filter((cell) => (numberAt(book, cell) ?? 0) > 0);
    return below.length > 0 && above.length >= 3 * below.length ? below : [];
  });
}

/** How the cells below zero are found, by the reason for which the formula may take them for amounts. */
const FINDERS = { factor, clamped, compared, listed: loneIn };
