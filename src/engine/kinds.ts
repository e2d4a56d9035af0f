/**
 * What kind of quantity each cell holds, so that a length is shown as the tape shows it and a
 * share is not. A formula's kind is read off its signs and functions; that of a bare number off
 * what the formulas make of it. Each helps the other, so they are found in turns until nothing changes.
 */
import type { Kind } from "../../functions/define.ts";
import type { Place } from "../book/address.ts";
import { changedRows } from "../book/changed-rows.ts";
import type { Tree } from "../book/formula.ts";
import { sameNames } from "../book/names.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { atOnce } from "./at-once.ts";
import { KindCells } from "./kind-cells.ts";
import { followTurns } from "./kind-changes.ts";
import { type Code, kindOfCode, NONE } from "./kind-codes.ts";
import { holdsAt, isFormulaHeld, isTextHeld, kindOfTyped } from "./kind-content.ts";
import { type Cells, kindOfTree } from "./kind-of-tree.ts";
import { findTurns, LAST_PHASE, type Turn } from "./kind-turns.ts";
import { areaOf, cellsIn } from "./references.ts";

/** The most cells of a range, or of what a name stands for, that are looked at one by one. */
const MOST_READ = 40;

/** With more cells changed at once, everything is found anew. */
const MOST_EDITS = 200;

/** The kinds of the cells of one book, found when the first one is asked for. */
export class Kinds {
  #book: Book;
  #found: { readonly cells: KindCells; readonly turns: Turn[] } | null = null;

  constructor(book: Book) {
    this.#book = book;
  }

  /** The kinds of the next book: only what differs is found anew. These kinds are of no more use then. */
  follow(next: Book): Kinds {
    const found = this.#found;
    const edits = found && editsBetween(this.#book, next);
    if (!edits) return new Kinds(next);
    const kinds = new Kinds(next);
    this.#found = null;
    if (edits.length === 0) found.cells.take(next);
    else {
      const changed = found.cells.change(next, edits);
      if (!changed || !followTurns(found.cells, found.turns, changed)) return kinds;
    }
    kinds.#found = found;
    return kinds;
  }

  /** Whether these kinds are known, from the book before or because one of them was asked for. */
  get isFollowed(): boolean {
    return this.#found !== null;
  }

  of({ page, row, column }: Place): Kind {
    const { cells, turns } = this.#all();
    const cell = cells.known(page, row, column);
    return kindOfCode(
      cell === undefined
        ? kindOfTyped(holdsAt(this.#book, page, row, column), NONE, LAST_PHASE.fraction)
        : this.#kindOfCell(cells, turns.at(-1)!, cell),
    );
  }

  /** The kind of a tree of a formula on `page`. */
  ofTree(tree: Tree, page: number): Kind {
    return this.onPage(page)(tree);
  }

  /** The kinds of the parts of one formula on `page`, each found once. */
  onPage(page: number): (tree: Tree) => Kind {
    const known = new Map<Tree, Kind>();
    return (tree) => kindOfTree(tree, (cells) => this.#ofCells(cells, page), LAST_PHASE.careful, known);
  }

  /** The kind of a cell, or of the first of a range that holds something of a kind. */
  #ofCells(part: Cells, page: number): Kind {
    const area = areaOf(this.#book, part, page);
    const most = part.is === "range" || part.is === "name" ? MOST_READ : 1;
    let kind: Kind = "figure";
    for (const place of area ? cellsIn(this.#book, area, most) : []) {
      kind = this.of(place);
      if (kind !== "text") return kind;
    }
    return kind;
  }

  #kindOfCell(cells: KindCells, { kinds, asked }: Turn, cell: number): Code {
    if (cells.isFormula(cell)) return kinds[cell]!;
    return kindOfTyped(cells.holds(cell), asked[cell] ?? NONE, LAST_PHASE.fraction);
  }

  #all(): { readonly cells: KindCells; readonly turns: readonly Turn[] } {
    if (!this.#found) atOnce(this.find());
    return this.#found!;
  }

  /** Finds the kinds in slices. */
  *find(): Generator<void> {
    const cells = new KindCells(this.#book);
    yield* cells.read();
    const turns = yield* findTurns(cells);
    this.#found = { cells, turns };
  }

  /** The cells of the book as far as their kinds go. */
  get cells(): KindCells {
    return this.#all().cells;
  }
}

/** The cells that differ as far as kinds go; null when everything is to be found anew. */
function editsBetween(old: Book, next: Book): Place[] | null {
  if (old.unit !== next.unit || old.decimal !== next.decimal || !sameNames(old, next)) return null;
  const edits: Place[] = [];
  for (const [page, is] of next.pages.entries()) {
    const was = old.pages[page]!;
    if (was === is) continue;
    if (was.title !== is.title || was.columns !== is.columns) return null;
    for (const row of changedRows(was.rows, is.rows)) {
      const [a, b] = [was.rows[row], is.rows[row]];
      for (let column = 0; column < Math.max(a?.length ?? 0, b?.length ?? 0); column += 1) {
        const place = { page, row, column };
        if ((a?.[column] ?? "") !== (b?.[column] ?? "") && !isLike(old, next, place)) edits.push(place);
      }
      if (edits.length > MOST_EDITS) return null;
    }
  }
  return edits;
}

/** Whether a cell holds the same in both books as far as kinds go. What a text says may be a heading. */
function isLike(old: Book, next: Book, { page, row, column }: Place): boolean {
  const holds = holdsAt(next, page, row, column);
  if (holds !== holdsAt(old, page, row, column) || isFormulaHeld(holds) || isTextHeld(holds)) return false;
  // A blank is part of no list, a space is.
  return (typedAt(old, page, row, column) === "") === (typedAt(next, page, row, column) === "");
}
