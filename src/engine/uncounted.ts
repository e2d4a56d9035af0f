/**
 * Cells from which a formula needs a number and which hold none: blank, a text, or a number that is
 * kept as a text because its column holds text. The engine passes over them without a word. With
 * them come the lengths that a function takes for a share or a count (length-as-number.ts), and amounts
 * below zero (amounts-below-zero.ts).
 */
import { phrase } from "../../functions/phrase.ts";
import { cellAddress, columnLetters, comparePlaces, type Place, placeKey } from "../book/address.ts";
import { formulaTree } from "../book/formula.ts";
import { type Named, nameOf } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { beneathLists, beneathUsed } from "./beneath.ts";
import { understand } from "./content.ts";
import { doesWithList } from "./does-with-list.ts";
import { dimension } from "./kind-of-tree.ts";
import type { Kinds } from "./kinds.ts";
import { cellText } from "./label.ts";
import { lengthsAsNumbers } from "./length-as-number.ts";
import { rarelyAsked } from "./rarely-asked.ts";
import { type Area, areasOf, rangeText, sourceOf, typedIn } from "./references.ts";
import { type Status, Statuses } from "./statuses.ts";
import { type Use, usesOf } from "./uses-in-formula.ts";
import { type UsesToLookAt, usesToLookAt } from "./uses-to-look-at.ts";

export interface Uncounted {
  readonly place: Place;
  readonly is: "blank" | "text" | "unusual";
  readonly sentence: string;
  /** Of several cells that share one sentence, whether this is the first. */
  readonly first: boolean;
  /** The column that would count if it held anything; null when changing its kind would not help. */
  readonly column: { readonly page: number; readonly column: number } | null;
  /** The formulas that need it. */
  readonly users: readonly Place[];
  /** For what stands directly beneath a list: the list, and the last row that it would have with it. */
  readonly beneath?: { readonly list: Named; readonly to: number };
}

/** The first such cell of each formula that needs one, by the key of the formula. */
export function uncountedByUser(cells: UncountedCells): UncountedCells {
  const found = new Map<string, Uncounted>();
  for (const one of cells.values())
    for (const user of one.users) if (!found.has(placeKey(user))) found.set(placeKey(user), one);
  return found;
}

/** By the key of each place. */
export type UncountedCells = ReadonlyMap<string, Uncounted>;

/** A text that begins like a number: "38 1/4 ?", "27 in (tight)". */
const FIGURE_LIKE = /^[~≈<>±]?\s*[-+]?\d[\d\s.,/½¼¾⅛⅜⅝⅞-]*(?:$|[^\sa-z\d]|(?:in|cm|mm|yd|ft|m)\b)/i;

/**
 * The cells that count as nothing in a formula that has an answer, and the numbers with two readings. `works` says
 * whether a formula has an answer other than an empty text, and `fails` whether it has an error; `uses` are those of the
 * book, or of one formula that stands in no cell (`alone`).
 */
export function uncountedCells(
  book: Book,
  kinds: Kinds,
  works: (formula: Place) => boolean,
  uses: UsesToLookAt,
  { alone = false, fails = () => false }: { alone?: boolean; fails?: (formula: Place) => boolean } = {},
): UncountedCells {
  const found = new Map<string, { place: Place; is: Status; uses: Use[]; group: string }>();
  const statuses = new Statuses(book);
  const status = (place: Place): Status => statuses.of(place);
  const note = (use: Use, place: Place, group: string) => {
    const key = placeKey(place);
    const old = found.get(key);
    if (!old) found.set(key, { place, is: status(place), uses: [use], group });
    else if (!old.uses.some(({ formula }) => placeKey(formula) === placeKey(use.formula))) old.uses.push(use);
  };
  const groupOf = (place: Place, first: Place): string =>
    status(place) === "kept" ? `column ${place.page}.${place.column}` : `${status(place)} ${placeKey(first)}`;
  for (const use of uses.counted) {
    const { as, areas, formula } = use;
    if (as === "cell") {
      const { page, top, left } = areas[0]!;
      const place = sourceOf(book, { page, row: top, column: left });
      const is = status(place);
      const silent =
        (is === "blank" && use.blanksPass && isMeasure(book, kinds, place, use) && works(formula)) ||
        (is === "text" && use.textsPass && works(formula)) ||
        is === "kept" ||
        is === "unclear";
      if (silent) note(use, place, groupOf(place, place));
      continue;
    }
    for (const list of listsOf(book, areas)) {
      const missing = missingIn(book, list, use, status, works);
      for (const place of missing)
        note(use, place, groupOf(place, missing.find((one) => status(one) === status(place))!));
    }
  }
  for (const place of uses.unclear)
    if (!found.has(placeKey(place)))
      found.set(placeKey(place), { place, is: "unclear", uses: [], group: placeKey(place) });
  const cells = new Map(inSentences(book, found));
  for (const one of lengthsAsNumbers(book, kinds, (one) => works(one) || fails(one), uses.lengths))
    if (!cells.has(placeKey(one.place))) cells.set(placeKey(one.place), one);
  for (const one of rarelyAsked.amountsBelowZero?.(book, kinds, works, uses.amounts) ?? [])
    if (!cells.has(placeKey(one.place))) cells.set(placeKey(one.place), one);
  if (alone) return cells;
  for (const one of rarelyAsked.namedFigures?.(book, kinds) ?? [])
    if (!cells.has(placeKey(one.place))) cells.set(placeKey(one.place), one);
  for (const { place, sentence, users, list, to } of beneathLists(book, statuses)) {
    if (users.length === 0 || cells.has(placeKey(place))) continue;
    const beneath = { list, to };
    cells.set(placeKey(place), { place, is: "text", sentence, first: true, column: null, users, beneath });
  }
  return cells;
}

/** What a formula that stands in no cell of the book leaves out, in sentences. */
export function leftOutOf(book: Book, kinds: Kinds, formula: string, page: number): string[] {
  const uses = usesOf(book, formulaTree(formula), { page, row: -1, column: -1 });
  const left = [
    ...uncountedCells(book, kinds, () => true, usesToLookAt(book, uses), { alone: true }).values(),
  ]
    .filter(({ first, users }) => first && users.length > 0)
    .map(({ place, sentence }) => `${cellText(book, place)}: ${sentence}`);
  return [...left, ...beneathUsed(book, new Statuses(book), formula, page)];
}

/**
 * Whether a blank cell is a measurement that was never written down: it has a name, or a line of
 * its own with something at its left, or it is a length and the like beside cells that are filled.
 */
function isMeasure(book: Book, kinds: Kinds, place: Place, { formula, tree }: Use): boolean {
  const kind = kinds.of(place);
  if (kind === "text" || kind === "piece") return false;
  if (nameOf(book, place) !== undefined || isLabelled(book, place)) return true;
  if (!dimension(kind)) return false;
  return areasOf(book, tree, formula.page).some((area) => typedIn(book, area, 1).length > 0);
}

interface List {
  readonly cells: readonly Place[];
  /** Whether all that stands beside a cell of the list is blank too: an empty line between two parts. */
  readonly isGap: (i: number) => boolean;
}

/** The lists of areas that are gone through together: each column by itself, or a single row. */
function listsOf(book: Book, areas: readonly Area[]): List[] {
  const [first] = areas;
  if (!first) return [];
  if (areas.length === 1 && first.top === first.bottom) {
    const end = Math.min(first.right, (book.pages[first.page]?.rows[first.top]?.length ?? 0) - 1);
    const cells = span(first.left, end).map((column) => ({ page: first.page, row: first.top, column }));
    return [{ cells, isGap: () => false }];
  }
  const columns = areas.flatMap(({ page, top, bottom, left, right }) => {
    const rows = book.pages[page]?.rows ?? [];
    const wide = rows.reduce((most, row) => Math.max(most, row.length), 0);
    const end = Math.min(bottom, rows.length - 1);
    return span(left, Math.min(right, wide - 1)).map((column) =>
      span(top, end).map((row) => ({ page, row, column })),
    );
  });
  const blank = (place: Place | undefined) =>
    !place || typedAt(book, place.page, place.row, place.column).trim() === "";
  return columns.map((cells) => ({
    cells,
    isGap: (i) => columns.length > 1 && columns.every((column) => blank(column[i])),
  }));
}

const span = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);

/** The cells of a list that a formula passes over although they look as if they should count. */
function missingIn(
  book: Book,
  { cells, isGap }: List,
  use: Use,
  status: (place: Place) => Status,
  works: (formula: Place) => boolean,
): Place[] {
  const is = cells.map(status);
  const counts = (one: Status) => one === "figure" || one === "kept" || one === "unclear";
  const first = is.findIndex(counts);
  const last = is.findLastIndex(counts);
  if (first < 0) return [];
  const heads = is.slice(0, first).lastIndexOf("text");
  const silent = use.as === "list" && works(use.formula);
  return cells.filter((place, i) => {
    const one = is[i]!;
    if (one === "kept" || one === "unclear") return true;
    if (!silent) return false;
    const inside = i > first && i < last;
    if (one === "text" && use.textsPass)
      return inside || FIGURE_LIKE.test(typedAt(book, place.page, place.row, place.column).trim());
    if (one !== "blank" || !use.blanksPass || isGap(i)) return false;
    // Above the first figure, below the headings: a line of a longer list when something stands at its left.
    return inside || (i < first && i > heads && last > first && isLabelled(book, place));
  });
}

const isLabelled = (book: Book, { page, row, column }: Place): boolean =>
  (book.pages[page]?.rows[row] ?? []).slice(0, column).some((typed) => typed.trim() !== "");

type Found = ReadonlyMap<
  string,
  { readonly place: Place; readonly is: Status; readonly uses: readonly Use[]; readonly group: string }
>;

function inSentences(book: Book, found: Found): UncountedCells {
  const groups = new Map<string, Place[]>();
  const inOrder = [...found.values()].toSorted((a, b) => comparePlaces(a.place, b.place));
  for (const { place, group } of inOrder) {
    const together = groups.get(group);
    if (together) together.push(place);
    else groups.set(group, [place]);
  }
  const cells = new Map<string, Uncounted>();
  for (const { place, is, uses, group } of inOrder) {
    const together = groups.get(group)!;
    cells.set(placeKey(place), {
      place,
      is: is === "blank" ? "blank" : "text",
      sentence: uses[0] ? sentenceFor(book, together, is, uses[0]) : unclearSentence(book, place),
      first: placeKey(together[0]!) === placeKey(place),
      column: columnIfText(book, place, is),
      users: uses.map(({ formula }) => formula),
    });
  }
  return cells;
}

/** The column of text in which a number is kept as a text; null for every other cell. */
const columnIfText = (book: Book, { page, column }: Place, is: Status) =>
  is === "kept" && book.pages[page]?.columns[column]?.kind === "text" ? { page, column } : null;

function sentenceFor(book: Book, together: readonly Place[], is: Status, use: Use): string {
  const user = use.formula.row < 0 ? phrase`this formula` : cellText(book, use.formula);
  const [place] = together as [Place];
  const typed = typedAt(book, place.page, place.row, place.column).trim();
  const text = typed.length > 24 ? `${typed.slice(0, 21)}...` : typed;
  const who = named(together);
  const many = together.length > 1;
  if (is === "unclear") return unclearSentence(book, place);
  if (is === "kept") {
    const letters = columnLetters(place.column);
    return many
      ? phrase`${who} read as numbers but column ${letters} holds text, so ${user} can't count them; set column ${letters} to hold "anything"`
      : phrase`"${text}" reads as a number but column ${letters} holds text, so ${user} can't count it; set column ${letters} to hold "anything"`;
  }
  if (use.as === "cell") {
    return is === "blank"
      ? phrase`this is empty, and ${user} counts it as 0: type a number`
      : phrase`${user} needs a number here, not "${text}": type one`;
  }
  const list = use.areas.map(rangeText).join(" and ");
  const does = doesWithList(use.by);
  if (is === "blank")
    return many
      ? phrase`${who} are empty within the list ${list} that ${user} ${does}: type a number, or 0 or - where there is no number`
      : phrase`${who} is empty within the list ${list} that ${user} ${does}: type a number, or 0 or - where there is no number`;
  return many
    ? phrase`${who} hold texts within the list ${list} that ${user} ${does}, and are not counted: type a number, or - where there is no number`
    : phrase`${who} holds the text "${text}" within the list ${list} that ${user} ${does}, and is not counted: type a number, or - where there is no number`;
}

function unclearSentence(book: Book, { page, row, column }: Place): string {
  const typed = typedAt(book, page, row, column);
  const kind = book.pages[page]?.columns[column]?.kind ?? "any";
  // What a column of text keeps is judged as if the column held anything.
  const content = understand(typed, kind === "text" ? "any" : kind, book.unit, book.decimal);
  return content.is === "text" && content.unclear ? content.unclear : phrase`this number has two readings`;
}

function named(places: readonly Place[]): string {
  const names = places.slice(0, 3).map(({ row, column }) => cellAddress(row, column));
  const more = places.length - names.length;
  if (more > 0) return phrase`${names.join(", ")} and ${more} more`;
  return names.length < 2 ? names.join("") : phrase`${names.slice(0, -1).join(", ")} and ${names.at(-1)!}`;
}
