/** Sentences about many cells: how many there are, and where the first of them stand. */

import { phrase } from "../../functions/phrase.ts";

/** "1,600" */
export const counted = (count: number): string => count.toLocaleString("en");

/** "A1, B2, C3 and 4 more". */
export const addresses = (list: readonly string[]): string =>
  list.length > 4 ? phrase`${list.slice(0, 3).join(", ")} and ${list.length - 3} more` : list.join(", ");

/** The cells of a sheet that something happened to, under the kind of thing that happened. */
export class CellReport {
  readonly #places = new Map<string, string[]>();
  add(what: string, address: string): void {
    const list = this.#places.get(what);
    if (list) list.push(address);
    else this.#places.set(what, [address]);
  }
  /** The sentence about the cells of this kind; nothing when there are no such cells. */
  sentence(what: string, write: (count: number, where: string) => string): string[] {
    const list = this.#places.get(what);
    return list ? [write(list.length, addresses(list))] : [];
  }
}
