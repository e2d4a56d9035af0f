/** Sentences about many cells: how many there are, and where the first of them stand. */

export const many = (count: number, noun: string): string =>
  `${count.toLocaleString("en")} ${noun}${count === 1 ? "" : "s"}`;

/** "A1, B2, C3 and 4 more". */
export const addresses = (list: readonly string[]): string =>
  list.length > 4 ? `${list.slice(0, 3).join(", ")} and ${list.length - 3} more` : list.join(", ");

/** What happened to single cells of a sheet, by kind. */
export class Told {
  readonly #places = new Map<string, string[]>();
  add(what: string, address: string): void {
    const list = this.#places.get(what);
    if (list) list.push(address);
    else this.#places.set(what, [address]);
  }
  /** A sentence when something of this kind happened. */
  say(what: string, sentence: (count: number, where: string) => string): string[] {
    const list = this.#places.get(what);
    return list ? [sentence(list.length, addresses(list))] : [];
  }
}
