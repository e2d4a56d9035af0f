/**
 * What formulas that are alike have in common as far as kinds go: their parts, where these stand from
 * the formula's own cell, and what was found out for the kinds of its cells.
 */
import type { Kind, ListForm } from "../../functions/define.ts";
import type { Place } from "../book/address.ts";
import type { Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { spread } from "./expected-kinds.ts";
import { filledArea, type Stays, staysIn } from "./filled.ts";
import { type Code, codeOf, FIGURE, kindOfCode, NONE } from "./kind-codes.ts";
import { type Cells, kindOfTree, leavesOf } from "./kind-of-tree.ts";
import { type Area, areaOf, isWide } from "./references.ts";

/** The most cells of a range or of what a name stands for whose kinds say which kind the whole has; of whole rows and columns one. */
const MOST_READ = 40;

/** A part of a formula that means cells. */
export interface Part {
  /** Where it is for the formula that the pattern was made from; null when it means no cell. */
  readonly area: Area | null;
  readonly stays: Stays;
  /** How many of its cells are read. */
  readonly read: number;
}

/** Numbers of 4 bits that fit in one key. */
const MOST_PACKED = 11;

export class KindPattern {
  readonly parts: readonly Part[];
  /** The parts that are lists read by their headings. */
  readonly lists: readonly { readonly part: number; readonly form: ListForm }[];
  readonly #tree: Tree;
  readonly #at: ReadonlyMap<Tree, number>;
  readonly #wide: ReadonlySet<Tree>;
  readonly #kinds = new Map<number | string, Code>();
  readonly #wants = new Map<number | string, Uint8Array>();
  readonly #home: Place;

  /** `home` is the cell of the formula. */
  constructor(book: Book, tree: Tree, home: Place) {
    const leaves = leavesOf(tree).flatMap((leaf): Cells[] =>
      // Of a table whose last column is looked up, the last cell says the kind.
      leaf.is === "range" && (leaf.to.is === "cell" || leaf.to.is === "name") ? [leaf, leaf.to] : [leaf],
    );
    this.#tree = tree;
    this.#home = home;
    this.#at = new Map(leaves.map((leaf, i) => [leaf, i]));
    this.#wide = wideParts(tree, isWide(book, home.page));
    this.parts = leaves.map((leaf) => ({
      area: areaOf(book, leaf, home.page),
      stays: staysIn(leaf),
      read: leaf.is === "range" || leaf.is === "name" ? MOST_READ : 1,
    }));
    const lists: { part: number; form: ListForm }[] = [];
    spread(tree, null, {
      kindOf: () => "figure",
      isWide: (part) => this.#wide.has(part),
      expect: () => {},
      list: (leaf, form) => {
        const part = this.#at.get(leaf);
        if (part !== undefined) lists.push({ part, form });
      },
    });
    this.lists = lists;
  }

  /** Where a part is for the formula of a cell. */
  areaFor({ area, stays }: Part, row: number, column: number): Area | null {
    return area && filledArea(area, stays, row - this.#home.row, column - this.#home.column);
  }

  /** The kind of the whole, given those of its parts. */
  kind(parts: ArrayLike<Code>, careful: boolean): Code {
    const key = keyOf(parts, this.parts.length, careful ? 1 : 0);
    let code = this.#kinds.get(key);
    if (code === undefined) {
      code = codeOf(kindOfTree(this.#tree, (cells) => this.#kindAt(cells, parts), careful));
      this.#kinds.set(key, code);
    }
    return code;
  }

  /** The kind that is expected of each part, given the kinds of all of them, when `want` is expected of the whole. */
  wants(parts: ArrayLike<Code>, want: Code, careful: boolean): Uint8Array {
    const key = keyOf(parts, this.parts.length, want * 2 + (careful ? 1 : 0));
    let wants = this.#wants.get(key);
    if (!wants) {
      wants = this.#spread(parts, want, careful);
      this.#wants.set(key, wants);
    }
    return wants;
  }

  #kindAt(cells: Tree, parts: ArrayLike<Code>): Kind {
    const at = this.#at.get(cells);
    return kindOfCode(at === undefined ? FIGURE : parts[at]!);
  }

  #spread(parts: ArrayLike<Code>, want: Code, careful: boolean): Uint8Array {
    const wants = new Uint8Array(this.parts.length);
    const known = new Map<Tree, Kind>();
    spread(this.#tree, want === NONE ? null : kindOfCode(want), {
      kindOf: (part) => kindOfTree(part, (cells) => this.#kindAt(cells, parts), careful, known),
      careful,
      isWide: (part) => this.#wide.has(part),
      expect: (leaf, kind) => {
        const at = this.#at.get(leaf);
        if (at !== undefined) wants[at] = codeOf(kind);
      },
      list: () => {},
    });
    return wants;
  }
}

/** A key of the kinds of some parts and one more number, which is less than 32. */
function keyOf(parts: ArrayLike<Code>, count: number, more: number): number | string {
  if (count > MOST_PACKED) return `${more} ${Array.from({ length: count }, (_, i) => parts[i]).join(" ")}`;
  let key = more;
  for (let i = 0; i < count; i += 1) key = key * 16 + parts[i]!;
  return key;
}

function wideParts(tree: Tree, wide: (tree: Tree) => boolean): Set<Tree> {
  const found = new Set<Tree>();
  const visit = (part: Tree): void => {
    if (wide(part)) found.add(part);
    if (part.is === "call" || part.is === "sign") for (const arg of part.args) if (arg) visit(arg);
    if (part.is === "list") part.items.forEach(visit);
  };
  visit(tree);
  return found;
}
