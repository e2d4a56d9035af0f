/**
 * Lengths, such as bones or hoops, cut from as few stock lengths as possible. A stock length is one
 * length as it is bought:
 *
 *     stock length 1   |---- 24 ----|---- 24 ----|-- 10 --|xx|     xx is waste
 *     stock length 2   |--- 18 ---|--- 18 ---|--- 18 ---|xxxx|
 *
 * 1. The first cutting follows the rule that a cutter uses: take the longest length first, and cut each
 *    from the first stock length that has room for it (`longestFirst`).
 * 2. `lowerBound` proves a number of stock lengths that no cutting can go below. If the first cutting
 *    takes just that many, it is the answer.
 * 3. Otherwise a search looks for a cutting that takes one stock length fewer, then two fewer, and so
 *    on (`Search`). It fills the stock lengths one after the other. The longest length that is left must
 *    be cut from some stock length, so the search cuts it from the next one. Beside it the search tries
 *    every set of other lengths that leaves no room for a further one; a set that leaves room need not
 *    be tried, because a length of a later stock length could be moved there.
 * 4. The search gives up a branch when its stock lengths already waste more than the wanted number of
 *    stock lengths allows in all. It remembers which lengths did not fit into how many stock lengths,
 *    and never tries the same again.
 *
 * Steps 3 and 4 are the bin completion of Korf, "A New Algorithm for Optimal Bin Packing", AAAI-02.
 * The work is limited: for a list that is too long the answer is the best cutting found, and `least`
 * says that fewer may be possible.
 */
import { remember } from "../memo.ts";
import { roundUpToWhole } from "../whole-number.ts";

export interface StockCutting {
  /** The lengths cut from each stock length. */
  readonly cuts: readonly (readonly number[])[];
  /** No cutting takes fewer stock lengths than this. */
  readonly least: number;
}

/** The search ends after it has looked at this many lengths, which takes some tenths of a second. */
const MAX_LOOKED_AT = 2_000_000;

/** Kept because the answer of a cell, its Working and its Drawing each ask for the same cutting. */
const known = remember<string, StockCutting>(20);

/** Cuts `lengths` from stock lengths of `stock`. Each cut loses `loss`, but the end of a stock length needs no cut. */
export const cutStock = (lengths: readonly number[], stock: number, loss: number): StockCutting =>
  known(JSON.stringify([lengths, stock, loss]), () => cut(lengths, stock, loss));

function cut(lengths: readonly number[], stock: number, loss: number): StockCutting {
  const all = lengths.toSorted((a, b) => b - a);
  const hair = 1e-9 * stock;
  const room = stock + loss;
  const needs = all.map((length) => length + loss);
  let cuts = longestFirst(all, room, loss, hair);
  let least = lowerBound(needs, room, hair);
  if (cuts.length === least) return { cuts, least };
  const search = new Search(all, room, loss, hair);
  while (cuts.length > least) {
    const found = search.into(cuts.length - 1);
    if (found === undefined) break;
    if (found === null) least = cuts.length;
    else cuts = found;
  }
  return { cuts, least };
}

function longestFirst(all: readonly number[], room: number, loss: number, hair: number): number[][] {
  const left: number[] = [];
  const cuts: number[][] = [];
  for (const length of all) {
    let at = left.findIndex((one) => one + hair >= length + loss);
    if (at < 0) {
      at = left.push(room) - 1;
      cuts.push([]);
    }
    left[at]! -= length + loss;
    cuts[at]!.push(length);
  }
  return cuts;
}

/**
 * A number of stock lengths that every cutting needs. It is the greatest of several such numbers:
 *
 * - the sum of all lengths, divided by the room of one stock length and rounded up;
 * - the number of lengths longer than half the room, because no two of them share a stock length;
 * - for each length x up to half the room: the lengths so long that x does not fit beside them
 *   (`alone`), then the other lengths above half the room (`half`), then the stock lengths for what
 *   remains of the lengths from x to half the room (`rest`) when the room beside `half` is used up.
 *
 * Source: Martello and Toth, Knapsack Problems, 1990, section 8.3.
 */
function lowerBound(needs: readonly number[], room: number, hair: number): number {
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  let least = roundUpToWhole(sum(needs) / room);
  for (const short of new Set(needs.filter((need) => need <= room / 2))) {
    const alone = needs.filter((need) => need > room - short + hair);
    const half = needs.filter((need) => need > room / 2 + hair && need <= room - short + hair);
    const rest = needs.filter((need) => need >= short && need <= room / 2 + hair);
    const more = (sum(rest) - (half.length * room - sum(half))) / room;
    least = Math.max(least, alone.length + half.length + Math.max(0, roundUpToWhole(more - 1e-9)));
  }
  return Math.max(least, needs.filter((need) => need > room / 2 + hair).length, 1);
}

/** The search for a cutting that takes a given number of stock lengths. */
class Search {
  /** The different lengths, the longest first, and how many of each are still to be cut. */
  private readonly kinds: readonly number[];
  private counts: number[];
  private readonly room: number;
  private readonly loss: number;
  private readonly hair: number;
  private readonly sum: number;
  private looks = MAX_LOOKED_AT;
  private cuts: number[][] = [];
  /** Counts of lengths that were found not to fit, each with the number of stock lengths. */
  private readonly failed = new Set<string>();

  constructor(all: readonly number[], room: number, loss: number, hair: number) {
    this.kinds = [...new Set(all)];
    this.counts = this.kinds.map((kind) => all.filter((length) => length === kind).length);
    this.room = room;
    this.loss = loss;
    this.hair = hair;
    this.sum = all.reduce((a, b) => a + b + loss, 0);
  }

  /** A cutting from `number` stock lengths; null when no such cutting exists, undefined when the search reached its limit. */
  into(number: number): number[][] | null | undefined {
    this.failed.clear();
    this.cuts = [];
    const counts = [...this.counts];
    if (this.next(number, number * this.room - this.sum)) {
      this.counts = counts;
      return this.cuts;
    }
    return this.looks > 0 ? null : undefined;
  }

  /** Cuts all lengths that are left from `number` stock lengths, which may waste at most `waste` together. Returns whether that is possible. */
  private next(number: number, waste: number): boolean {
    const first = this.counts.findIndex((count) => count > 0);
    if (first < 0) return true;
    if (number === 0) return false;
    this.looks -= this.kinds.length;
    const state = `${number}:${this.counts.join()}`;
    if (this.failed.has(state)) return false;
    const cut = [this.kinds[first]!];
    this.counts[first]! -= 1;
    this.cuts.push(cut);
    if (this.fill(cut, first, this.room - this.kinds[first]! - this.loss, number, waste)) return true;
    this.cuts.pop();
    this.counts[first]! += 1;
    if (this.looks > 0) this.failed.add(state);
    return false;
  }

  /** Fills the `room` left in one stock length in every way, with lengths no longer than kind `from`; each time cuts the rest from the other stock lengths. */
  private fill(cut: number[], from: number, room: number, number: number, waste: number): boolean {
    this.looks -= this.kinds.length - from + 1;
    if (this.looks <= 0) return false;
    for (let kind = from; kind < this.kinds.length; kind += 1) {
      const need = this.kinds[kind]! + this.loss;
      if (this.counts[kind]! === 0 || need > room + this.hair) continue;
      this.counts[kind]! -= 1;
      cut.push(this.kinds[kind]!);
      if (this.fill(cut, kind, room - need, number, waste)) return true;
      cut.pop();
      this.counts[kind]! += 1;
    }
    const wasted = Math.max(0, room);
    if (wasted > waste + this.hair * 100) return false;
    const fits = (kind: number, i: number) => this.counts[i]! > 0 && kind + this.loss <= room + this.hair;
    if (this.kinds.some(fits)) return false;
    return this.next(number - 1, waste - wasted);
  }
}
