/**
 * Where the formulas of a book need figures: the cells and lists that they add up, compare or hand
 * to a function that takes a figure. A cell without a number there would count as nothing.
 */
import { ofCatalogue } from "../../functions/catalogue.ts";
import type { Kind } from "../../functions/define.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import type { Place } from "../book/address.ts";
import { alikeKey, cutFormula } from "../book/alike.ts";
import { formulaTree, isFormula, type Tree, treeOf } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { NO_FIGURE, takesOfCall } from "./expected-kinds.ts";
import { filledArea, type Stays, staysIn } from "./filled.ts";
import { likeArguments } from "./kind-of-tree.ts";
import { type Area, areaOf, isBand, isSingle, isWide, repeatedBy } from "./references.ts";
import { ASKING, CHOOSING, COUNTING, OF_FIGURES, ORDERING, OVER_LISTS } from "./standard-functions.ts";

/** How a formula needs a cell's figure. */
export interface Use {
  readonly formula: Place;
  readonly tree: Tree;
  /** What works with the cells: a function in capitals, or a sign. */
  readonly by: string;
  /** One area, or several that are gone through side by side. */
  readonly areas: readonly Area[];
  /** A cell by itself, a list of cells, or whole rows or columns. */
  readonly as: "cell" | "list" | "band";
  /** Whether a blank cell, or a text that is not a number, passes without an error. */
  readonly blanksPass: boolean;
  readonly textsPass: boolean;
  /** The argument of a sewing function that takes it. */
  readonly argument?: { readonly name: string; readonly kind: Kind };
}

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
interface Pattern {
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
  readonly #typed: string;

  constructor(use: Use, typed: string, formula: Place, areas: readonly Area[]) {
    this.formula = formula;
    this.by = use.by;
    this.areas = areas;
    this.as = use.as;
    this.blanksPass = use.blanksPass;
    this.textsPass = use.textsPass;
    if (use.argument) this.argument = use.argument;
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

/** Where one formula needs figures; `formula` is its cell, or row -1 for one that stands in no cell. `hear` is called with each area and the part that means it. */
export function usesOf(
  book: Book,
  tree: Tree,
  formula: Place,
  hear: (area: Area, part: Tree) => void = () => {},
): Use[] {
  const uses: Use[] = [];
  /** The areas that the formula itself asks about, so that what is missing there is meant to be. */
  const asked = new Set<string>();
  const areaAt = (part: Tree) => {
    const area = areaOf(book, part, formula.page);
    if (area) hear(area, part);
    return area;
  };
  const use = (
    areas: readonly Area[],
    by: string,
    blanksPass: boolean,
    textsPass: boolean,
    argument?: Use["argument"],
  ) => {
    const first = areas[0];
    if (!first) return;
    const as = areas.length === 1 && isSingle(first) ? "cell" : "list";
    uses.push({ formula, tree, by, areas, as, blanksPass, textsPass, ...(argument && { argument }) });
  };
  const band = (area: Area, by: string) =>
    uses.push({ formula, tree, by, areas: [area], as: "band", blanksPass: false, textsPass: false });

  /** `by` is what the part is a figure for; null where it may be anything. */
  const visit = (part: Tree | null, by: string | null, texts = false): void => {
    if (!part) return;
    const area = areaAt(part);
    if (area) {
      if (by !== null && isSingle(area) && (part.is === "name" || part.is === "cell"))
        use([area], by, true, texts);
    } else if (part.is === "sign") visitSign(part.sign, part.args);
    else if (part.is === "call") visitCall(part.name, part.args, by);
    else if (part.is === "list") for (const item of part.items) visit(item, null);
  };

  const visitSign = (sign: string, args: readonly Tree[]): void => {
    const other = (i: number) => args[args.length - 1 - i]!;
    args.forEach((arg, i) => {
      if (COUNTING.has(sign)) visit(arg, sign);
      else if (ORDERING.has(sign)) visit(arg, other(i).is === "text" ? null : sign, true);
      else {
        const area = areaAt(arg);
        if (area && args.length === 2 && other(i).is === "text") asked.add(keyOf(area));
        if (area && (sign === "=" || sign === "<>") && other(i).is !== "text")
          use([area], sign, false, false);
        if (!area) visit(arg, null);
      }
    });
  };

  const visitCall = (name: string, args: readonly (Tree | null)[], by: string | null): void => {
    const takes = takesOfCall({ name, args }, isWide(book, formula.page));
    if (takes) {
      // A sewing function refuses what it can't work with, and says so itself.
      const declared = Object.entries(takes).map(([argument, { kind }]) => ({ name: argument, kind }));
      args.forEach((arg, i) => {
        const area = arg && areaAt(arg);
        const argument = declared[i];
        if (area && argument && !NO_FIGURE.has(argument.kind)) use([area], name, false, false, argument);
        else if (!area) visit(arg, null);
      });
      return;
    }
    if (ASKING.has(name)) {
      for (const arg of args) {
        const area = arg && areaAt(arg);
        if (area) {
          asked.add(keyOf(area));
          if (name === "COUNT") use([area], name, false, false);
        } else visit(arg, null);
      }
      return;
    }
    if (OVER_LISTS.has(name)) {
      const ranges: Area[] = [];
      for (const arg of args) {
        const area = arg && areaAt(arg);
        if (!area) visit(arg, null);
        else if (isBand(area)) band(area, name);
        else if (name === "SUMPRODUCT") ranges.push(area);
        else use([area], name, true, true);
      }
      use(ranges, name, true, true);
      return;
    }
    const like = likeArguments(name);
    args.forEach((arg, i) => {
      const handedOn = like !== undefined && i >= like[0] && i <= like[1];
      const needs = CHOOSING[name] ? (handedOn ? by : null) : handedOn || OF_FIGURES.has(name) ? name : null;
      const area = arg && areaAt(arg);
      if (area && name === "SUMIF" && i !== 1) use([area], name, false, false);
      else visit(arg, needs);
    });
  };

  visit(tree, null);
  return uses.map((one) =>
    one.areas.some((area) => asked.has(keyOf(area))) ? { ...one, blanksPass: false, textsPass: false } : one,
  );
}

const keyOf = ({ page, top, left, bottom, right }: Area): string =>
  `${page}.${top}.${left}.${bottom}.${right}`;
