/**
 * What kind of quantity each cell holds, so that a length is shown as the tape shows it and a
 * share is not. A formula's kind is read off its signs and functions; that of a bare number off
 * what the formulas make of it. Each helps the other, so they are found in turns until nothing changes.
 */
import { asBlock, listOf } from "../../functions/block.ts";
import type { Kind, ListForm } from "../../functions/define.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { sameNames } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { type Content, namesUnit, understand } from "./content.ts";
import { type Leaf, spread } from "./expected-kinds.ts";
import { type Cells, kindOfTree, leavesOf } from "./kind-of-tree.ts";
import { areaOf, cellsIn, isWide, typedIn } from "./references.ts";

/** Of several kinds expected of one cell the one of greatest weight counts: the kind that it would be worst to miss. */
const WEIGHT: Partial<Record<Kind, number>> = {
  piece: 9, length: 8, area: 7, money: 6, angle: 5, days: 4, count: 3, share: 2, figure: 1,
}; // biome-ignore format: a table

/** The most turns; no sensible book needs more. */
const MOST_TURNS = 8;

/** The most cells of one range that are looked at one by one. */
const MOST_CELLS = 2000;

interface Formula {
  readonly place: Place;
  readonly key: string;
  readonly tree: Tree;
}

/** The kinds of the cells of one book, found when the first one is asked for. */
export class Kinds {
  #book: Book;
  #worked = false;
  /** Of formulas, and of cells asked about before. */
  readonly #kinds = new Map<string, Kind>();
  readonly #asked = new Map<string, Kind>();
  /** The cell that a name or an address means on a page. */
  readonly #meant = new Map<string, readonly Place[]>();
  /** The kind of a fraction of which nothing more is known, and whether more may yet be learnt about the other cells. */
  #fraction: Kind = "figure";
  #careful = true;

  constructor(book: Book) {
    this.#book = book;
  }

  /** The kinds of the next book: this same object when only numbers changed. */
  follow(next: Book): Kinds {
    const old = this.#book;
    const same =
      old.unit === next.unit &&
      old.decimal === next.decimal &&
      sameNames(old, next) &&
      old.pages.length === next.pages.length &&
      old.pages.every((page, i) => {
        const is = next.pages[i]!;
        if (page === is) return true;
        if (page.title !== is.title || page.columns !== is.columns) return false;
        const rows = Math.max(page.rows.length, is.rows.length);
        for (let row = 0; row < rows; row += 1) {
          const [a = [], b = []] = [page.rows[row], is.rows[row]];
          if (a === b) continue;
          for (let column = 0; column < Math.max(a.length, b.length); column += 1) {
            if (
              (a[column] ?? "") !== (b[column] ?? "") &&
              !this.#alike(a[column] ?? "", b[column] ?? "", i, column)
            )
              return false;
          }
        }
        return true;
      });
    if (!same) return new Kinds(next);
    this.#book = next;
    return this;
  }

  #alike(a: string, b: string, page: number, column: number): boolean {
    if (isFormula(a) || isFormula(b)) return false;
    const [was, is] = [a, b].map((typed) => this.#understood(typed, page, column)) as [Content, Content];
    return was.is === is.is && (was.is !== "length" || was.sure === (is as typeof was).sure);
  }

  of(place: Place): Kind {
    this.#work();
    const key = placeKey(place);
    const known = this.#kinds.get(key);
    if (known) return known;
    const kind = this.#typedKind(place, key);
    this.#kinds.set(key, kind);
    return kind;
  }

  /** The kind of a tree of a formula on `page`. */
  ofTree(tree: Tree, page: number): Kind {
    this.#work();
    return this.#treeKind(tree, page);
  }

  /** The kinds of the parts of one formula on `page`, each found once. */
  onPage(page: number): (tree: Tree) => Kind {
    this.#work();
    const known = new Map<Tree, Kind>();
    return (tree) => this.#treeKind(tree, page, known);
  }

  #treeKind(tree: Tree, page: number, known?: Map<Tree, Kind>): Kind {
    return kindOfTree(tree, (cells) => this.#cellsKind(cells, page), this.#careful, known);
  }

  /** The kind of a cell, or of the first of a range that holds something of a kind. */
  #cellsKind(cells: Cells, page: number): Kind {
    let kind: Kind = "figure";
    const most = cells.is === "range" || cells.is === "name" ? 40 : 1;
    for (const place of this.#places(cells, page, most).slice(0, most)) {
      const key = placeKey(place);
      kind = this.#kinds.get(key) ?? this.#typedKind(place, key);
      if (kind !== "text") return kind;
    }
    return kind;
  }

  /** The cells meant by a part of a formula; a single one is remembered. */
  #places(cells: Leaf, page: number, most?: number): readonly Place[] {
    if (cells.is !== "name" && cells.is !== "cell") return this.#cellsOf(cells, page, most);
    const key = `${page} ${cells.text}`;
    let places = this.#meant.get(key);
    if (!places) {
      places = this.#cellsOf(cells, page);
      this.#meant.set(key, places);
    }
    return places;
  }

  #cellsOf(leaf: Leaf, page: number, most = MOST_CELLS): readonly Place[] {
    const area = areaOf(this.#book, leaf, page);
    return area ? cellsIn(this.#book, area, most) : [];
  }

  #columnKind(page: number, column: number) {
    return this.#book.pages[page]?.columns[column]?.kind ?? "any";
  }

  #understood(typed: string, page: number, column: number): Content {
    return understand(typed, this.#columnKind(page, column), this.#book.unit, this.#book.decimal);
  }

  /** The kind of a typed cell, as far as the kinds expected of it are known. */
  #typedKind({ page, row, column }: Place, key: string): Kind {
    const typed = typedAt(this.#book, page, row, column);
    const asked = this.#asked.get(key);
    const content = this.#understood(typed, page, column);
    switch (content.is) {
      case "length":
        // A number in a column of lengths is not a length when formulas take it only for a share, a count or the like.
        if (content.sure) return asked && !namesUnit(typed) ? asked : "length";
        return asked ?? this.#fraction;
      case "number": {
        const kind = this.#columnKind(page, column);
        if (kind === "money") return kind;
        return kind === "date" ? "days" : (asked ?? "figure");
      }
      case "date":
        return "days";
      case "text":
        return asked === "piece" ? "piece" : "text";
      case "blank":
        return this.#columnKind(page, column) === "text" ? "text" : (asked ?? "figure");
      case "formula":
        return asked ?? "figure";
      default:
        return content.is;
    }
  }

  #work(): void {
    if (this.#worked) return;
    this.#worked = true;
    const formulas = this.#inOrder();
    const settle = () => {
      for (let turn = 0; turn < MOST_TURNS && this.#turn(formulas); turn += 1);
    };
    settle();
    // Where no formula expects a kind, a fraction is a length and any other number a plain number.
    this.#fraction = "length";
    settle();
    this.#careful = false;
    settle();
  }

  /** One turn: from the typed cells up to the last formula, then down again; whether anything changed. */
  #turn(formulas: readonly Formula[]): boolean {
    let fresh = false;
    for (const { place, key, tree } of formulas) {
      const kind = this.#formulaKind(place, key, tree);
      if (this.#kinds.get(key) === kind) continue;
      this.#kinds.set(key, kind);
      fresh = true;
    }
    for (const { place, key, tree } of formulas.toReversed()) {
      const kind = this.#kinds.get(key)!;
      const otherwise = this.#careful ? null : "figure";
      const known = new Map<Tree, Kind>();
      spread(tree, kind === "figure" ? (this.#asked.get(key) ?? otherwise) : kind, {
        kindOf: (part) => this.#treeKind(part, place.page, known),
        careful: this.#careful,
        isWide: isWide(this.#book, place.page),
        expect: (leaf, want) => {
          if (this.#expect(leaf, want, place.page)) fresh = true;
        },
        list: (leaf, form) => {
          if (this.#expectColumns(leaf, form, place.page)) fresh = true;
        },
      });
    }
    return fresh;
  }

  #formulaKind({ page, column }: Place, key: string, tree: Tree): Kind {
    const kind = this.#treeKind(tree, page);
    if (kind === "text" && this.#asked.get(key) === "piece") return "piece";
    if (kind !== "figure") return kind;
    const of = this.#columnKind(page, column);
    if (of === "length") return this.#asked.get(key) ?? of;
    if (of === "money") return of;
    return of === "date" ? "days" : (this.#asked.get(key) ?? "figure");
  }

  #expect(leaf: Leaf, want: Kind, page: number): boolean {
    if (want === "block") return this.#expectOutlines(leaf, page);
    return this.#expectAt(this.#places(leaf, page), want);
  }

  /** What the columns of a list hold, by their headings. */
  #expectColumns(leaf: Leaf, form: ListForm, page: number): boolean {
    const area = areaOf(this.#book, leaf, page);
    if (!area || area.right === area.left) return false;
    const { rows = [], columns: over = [] } = this.#book.pages[area.page] ?? {};
    const wide = Array.from({ length: area.right - area.left + 1 }, (_, i) => area.left + i);
    const block = asBlock(
      wide.map((column) => rows[area.top]?.[column] ?? ""),
      wide.length,
      wide.map((column) => over[column]?.heading ?? ""),
    );
    let columns: ReadonlyMap<string, number>;
    try {
      columns = listOf(block, form).columns;
    } catch {
      // The function refuses the list, and says why.
      return false;
    }
    let fresh = false;
    for (const [field, at] of columns) {
      const column = area.left + at;
      const { kind } = form.columns[field]!.take;
      const cells = typedIn(this.#book, { ...area, left: column, right: column }, MOST_CELLS);
      const typed = ({ row }: Place) => rows[row]?.[column] ?? "";
      const meant =
        kind === "piece" ? cells.filter((cell) => /^\s*(?:=|[Mm][\s\d.+-])/.test(typed(cell))) : cells;
      if (this.#expectAt(meant, kind)) fresh = true;
    }
    return fresh;
  }

  #expectAt(places: readonly Place[], want: Kind): boolean {
    const weight = WEIGHT[want];
    if (!weight) return false;
    let fresh = false;
    for (const place of places) {
      const key = placeKey(place);
      if (weight <= (WEIGHT[this.#asked.get(key) ?? "text"] ?? 0)) continue;
      this.#asked.set(key, want);
      fresh = true;
    }
    return fresh;
  }

  /** The typed outlines in a list that is read by its headings. */
  #expectOutlines(leaf: Leaf, page: number): boolean {
    let fresh = false;
    for (const place of this.#places(leaf, page)) {
      const typed = typedAt(this.#book, place.page, place.row, place.column);
      if (!/^\s*[Mm][\s\d.+-]/.test(typed) || this.#asked.get(placeKey(place)) === "piece") continue;
      this.#asked.set(placeKey(place), "piece");
      fresh = true;
    }
    return fresh;
  }

  /** The formulas of the book, each after those it rests on, except in circles. */
  #inOrder(): Formula[] {
    const formulas = new Map<string, Formula>();
    this.#book.pages.forEach((page, index) => {
      page.rows.forEach((row, r) => {
        row.forEach((typed, column) => {
          if (!isFormula(typed)) return;
          const place = { page: index, row: r, column };
          formulas.set(placeKey(place), { place, key: placeKey(place), tree: formulaTree(typed) });
        });
      });
    });
    const order: Formula[] = [];
    const begun = new Set<string>();
    for (const formula of formulas.values()) {
      const stack: { formula: Formula; rests: Formula[] }[] = [];
      const enter = (one: Formula) => {
        begun.add(one.key);
        const rests = leavesOf(one.tree).flatMap((leaf) =>
          this.#places(leaf, one.place.page, 40).flatMap((place) => formulas.get(placeKey(place)) ?? []),
        );
        stack.push({ formula: one, rests });
      };
      if (!begun.has(formula.key)) enter(formula);
      for (let top = stack.at(-1); top; top = stack.at(-1)) {
        const next = top.rests.pop();
        if (!next) order.push(stack.pop()!.formula);
        else if (!begun.has(next.key)) enter(next);
      }
    }
    return order;
  }
}
