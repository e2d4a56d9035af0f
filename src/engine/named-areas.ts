/** The areas of cells that formulas name, and the formulas that name each. An area is a number. */
import type { At } from "./cell-numbers.ts";
import { type Area, isIn } from "./references.ts";

export class NamedAreas {
  readonly #areas: Area[] = [];
  readonly #known = new Map<string, number>();
  /** By area, the formulas that name it. */
  readonly #users: number[][] = [];

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
    }
    this.#users[index]!.push(formula);
    return index;
  }

  some(is: (area: Area, index: number) => boolean): boolean {
    return this.#areas.some(is);
  }

  /** Calls with each formula that names an area with this cell in it, until `look` answers true. */
  eachUser(at: At, look: (formula: number) => unknown): void {
    for (let i = 0; i < this.#areas.length; i += 1) {
      if (!isIn(this.#areas[i]!, at)) continue;
      for (const formula of this.#users[i]!) if (look(formula) === true) return;
    }
  }
}
