/** The areas of cells that formulas name, and the formulas that name each. An area is a number. */
import type { At } from "./cell-numbers.ts";
import { type Area, isIn } from "./references.ts";

/** Rows that are looked up together. */
const ROWS = 64;

/** An area that reaches into more groups of rows than this is looked through for every cell. */
const MOST_GROUPS = 4;

const groupOf = (row: number): number => Math.floor(row / ROWS);

export class NamedAreas {
  readonly #areas: Area[] = [];
  readonly #known = new Map<string, number>();
  /** By area, the formulas that name it. */
  readonly #users: number[][] = [];
  /** By page and group of rows, the areas with cells there; a long column of short areas has a few in each group. */
  readonly #groups = new Map<string, number[]>();
  /** The areas that reach far. */
  readonly #tall: number[] = [];

  get size(): number {
    return this.#areas.length;
  }

  at(index: number): Area {
    return this.#areas[index]!;
  }

  /** The number of an area that a formula names. */
  add(area: Area, formula: number): number {
    const key = `${area.page}.${area.top}.${area.left}.${area.bottom}.${area.right}`;
    let index = this.#known.get(key);
    if (index === undefined) {
      index = this.#areas.length;
      this.#areas.push(area);
      this.#known.set(key, index);
      this.#users.push([]);
      this.#file(area, index);
    }
    this.#users[index]!.push(formula);
    return index;
  }

  #file({ page, top, bottom }: Area, index: number): void {
    const [first, last] = [groupOf(top), groupOf(bottom)];
    if (last - first >= MOST_GROUPS) {
      this.#tall.push(index);
      return;
    }
    for (let group = first; group <= last; group += 1) {
      const key = `${page}.${group}`;
      const there = this.#groups.get(key);
      if (there) there.push(index);
      else this.#groups.set(key, [index]);
    }
  }

  /** Whether `is` answers true for an area with this cell in it. */
  someWith(at: At, is: (area: Area, index: number) => boolean): boolean {
    const here = (index: number) => {
      const area = this.#areas[index]!;
      return isIn(area, at) && is(area, index);
    };
    return (this.#groups.get(`${at.page}.${groupOf(at.row)}`) ?? []).some(here) || this.#tall.some(here);
  }

  /** Calls with each formula that names an area with this cell in it, until `look` answers true. */
  eachUser(at: At, look: (formula: number) => unknown): void {
    this.someWith(at, (_, index) => this.#users[index]!.some((formula) => look(formula) === true));
  }
}
