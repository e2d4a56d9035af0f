/** Where the formulas of a book need figures, row by row. Formulas that are alike are looked at once. */
import { ofCatalogue } from "../../functions/catalogue.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import type { Place } from "../book/address.ts";
import { alikeKey, cutFormula } from "../book/alike.ts";
import { formulaTree, isFormula, type Tree, treeOf } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { filledArea, type Stays, staysIn } from "./filled.ts";
import { type Area, repeatedBy } from "./references.ts";
import { type Use, usesOf } from "./uses-in-formula.ts";

interface KnownRow {
  readonly names: readonly unknown[];
  readonly titles: string;
  readonly page: number;
  readonly row: number;
  /** By column, where the formula there needs figures; null where no formula does. */
  readonly patterns: readonly (Pattern | null)[];
  readonly repeats: readonly Repeat[];
}

/** A cell, by its column, that only repeats another cell. */
export interface Repeat {
  readonly column: number;
  readonly of: Place;
}

const NO_REPEATS: readonly Repeat[] = [];

/** Rows that an edit leaves alone are the same objects in the next book, and so are their uses. */
const rowsKnown = rememberWithObject<readonly string[], { known: KnownRow | null }>();

/** Where formulas that are alike need figures: the same as long as the names and the titles are. */
const patternsKnown = ofCatalogue(() =>
  rememberWithObject<readonly unknown[], { titles: string; alike: Alike }>(),
);

/** By the page and what formulas that are alike have in common. */
type Alike = Map<string, Pattern | null>;

/** The most patterns that are kept from one edit to the next. */
const MOST_ALIKE = 20_000;

function alikeIn(names: readonly unknown[], titles: string): Alike {
  const kept = patternsKnown()(names, () => ({ titles, alike: new Map() }));
  if (kept.titles !== titles || kept.alike.size > MOST_ALIKE) {
    kept.titles = titles;
    kept.alike = new Map();
  }
  return kept.alike;
}

let latest: readonly unknown[] = [];

/** The names of the book and of its pages: the same object for the same names. */
export function namesTogether(book: Book): readonly unknown[] {
  const names = [book.names, ...book.pages.map((page) => page.names)];
  if (names.length !== latest.length || names.some((one, i) => one !== latest[i])) latest = names;
  return latest;
}

/** Every place of the book where a formula needs a figure, in the order of the formulas. They are made one by one: a large book has very many. */
export function* usesIn(book: Book): Generator<Use> {
  const rows = new UsesByRow(book);
  for (const [page, { rows: typedRows }] of book.pages.entries())
    for (const row of typedRows.keys()) yield* rows.of(page, row);
}

/** The uses of a book, row by row. */
export class UsesByRow {
  readonly #book: Book;
  readonly #names: readonly unknown[];
  readonly #titles: string;
  readonly #alike: Alike;

  constructor(book: Book) {
    this.#book = book;
    this.#names = namesTogether(book);
    this.#titles = book.pages.map(({ title }) => title).join("\n");
    this.#alike = alikeIn(this.#names, this.#titles);
  }

  /** The uses of the formulas in a row, in their order. */
  *of(page: number, row: number): Generator<Use> {
    const typedRow = this.#book.pages[page]!.rows[row]!;
    for (const [column, pattern] of this.#known(page, row).patterns.entries())
      if (pattern) yield* usesLike(pattern, typedRow[column]!, { page, row, column });
  }

  /** Whether a formula in a row needs a figure from one of the cells. */
  reach(page: number, row: number, cells: readonly Place[]): boolean {
    const { patterns } = this.#known(page, row);
    // Plain loops: an edit may ask this of every row of a large book.
    for (let column = 0; column < patterns.length; column += 1) {
      const pattern = patterns[column];
      if (!pattern) continue;
      for (const cell of cells) if (reaches(pattern, row, column, cell)) return true;
    }
    return false;
  }

  /** By column, where the formula of a row needs figures; null where no formula does. */
  patterns(page: number, row: number): readonly (Pattern | null)[] {
    return this.#known(page, row).patterns;
  }

  /** The cells of a row that only repeat another cell. */
  repeats(page: number, row: number): readonly Repeat[] {
    return this.#known(page, row).repeats;
  }

  #known(page: number, row: number): KnownRow {
    const typedRow = this.#book.pages[page]!.rows[row]!;
    const kept = rowsKnown(typedRow, () => ({ known: null }));
    const { known } = kept;
    if (
      known &&
      known.names === this.#names &&
      known.titles === this.#titles &&
      known.page === page &&
      known.row === row
    )
      return known;
    const patterns = typedRow.map((typed, column) =>
      isFormula(typed) ? patternOf(this.#book, typed, { page, row, column }, this.#alike) : null,
    );
    const repeats = typedRow.flatMap((typed, column) => {
      const of = repeatedBy(this.#book, typed, page);
      return of ? [{ column, of }] : [];
    });
    kept.known = {
      names: this.#names,
      titles: this.#titles,
      page,
      row,
      patterns,
      repeats: repeats.length > 0 ? repeats : NO_REPEATS,
    };
    return kept.known;
  }
}

/** The uses of formulas that are alike, as those of the formula in `home`, and whether their areas stay. */
export interface Pattern {
  readonly home: Place;
  readonly uses: readonly Use[];
  readonly stays: ReadonlyMap<Area, Stays>;
  /** The areas of its uses, and which of them stay where they are. */
  readonly reach: readonly (Area & { readonly stays: Stays })[];
}

/** A use that was found for a formula that is alike; its tree is made only when it is asked for. */
class UseLike implements Use {
  readonly formula: Place;
  readonly by: string;
  readonly areas: readonly Area[];
  readonly as: Use["as"];
  readonly blanksPass: boolean;
  readonly textsPass: boolean;
  declare readonly argument?: NonNullable<Use["argument"]>;
  declare readonly amount?: NonNullable<Use["amount"]>;
  readonly #typed: string;

  constructor(use: Use, typed: string, formula: Place, areas: readonly Area[]) {
    this.formula = formula;
    this.by = use.by;
    this.areas = areas;
    this.as = use.as;
    this.blanksPass = use.blanksPass;
    this.textsPass = use.textsPass;
    if (use.argument) this.argument = use.argument;
    if (use.amount) this.amount = use.amount;
    this.#typed = typed;
  }

  get tree(): Tree {
    return formulaTree(this.#typed);
  }
}

/** Where the formula that is typed in the cell `formula`, and those alike, need figures; null when nowhere. `alike` keeps what was found. */
function patternOf(book: Book, typed: string, formula: Place, alike: Alike): Pattern | null {
  const cut = cutFormula(typed);
  // A formula that can't be cut is alike to itself alone.
  const key = cut ? `${formula.page} ${alikeKey(cut, formula.row, formula.column)}` : null;
  const known = key === null ? undefined : alike.get(key);
  if (known !== undefined) return known;
  const stays = new Map<Area, Stays>();
  const uses = usesOf(book, treeOf(typed), formula, (area, part) => stays.set(area, staysIn(part)));
  const reach = uses.flatMap(({ areas }) => areas.map((area) => ({ ...area, stays: stays.get(area)! })));
  const pattern = uses.length > 0 ? { home: formula, uses, stays, reach } : null;
  if (key !== null) alike.set(key, pattern);
  return pattern;
}

/** The uses of the formula in a cell, which is alike to that of the pattern's home. */
function* usesLike({ home, uses, stays }: Pattern, typed: string, formula: Place): Generator<Use> {
  const [down, across] = [formula.row - home.row, formula.column - home.column];
  const isHome = down === 0 && across === 0;
  for (const use of uses) {
    const areas = isHome
      ? use.areas
      : use.areas.map((area) => filledArea(area, stays.get(area)!, down, across));
    yield new UseLike(use, typed, formula, areas);
  }
}

/** Whether a formula in a row and column, which is alike to that of the pattern's home, needs a figure from a cell. */
function reaches({ home, reach }: Pattern, row: number, column: number, cell: Place): boolean {
  for (const { page, top, left, bottom, right, stays } of reach) {
    const down = stays.rows ? 0 : row - home.row;
    const across = stays.columns ? 0 : column - home.column;
    const isThere =
      page === cell.page &&
      top + down <= cell.row &&
      cell.row <= bottom + down &&
      left + across <= cell.column &&
      cell.column <= right + across;
    if (isThere) return true;
  }
  return false;
}
