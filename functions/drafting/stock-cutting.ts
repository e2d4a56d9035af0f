/**
 * Lengths cut from as few stock lengths as possible.
 *
 * The first try is the rule a cutter uses: the longest first, each from the first stock length with
 * room. If that takes no more than a proved least number, it is the best. Else one fewer is tried, and so on
 * down, one stock length at a time: the longest that is left must be cut from some stock length,
 * so it is cut from the next one, together with every set of others that leaves no room for another
 * (a set with room left can be filled up from later ones). A try ends where more is wasted than the
 * number leaves to waste, and what was once found not to fit is not tried again: the bin completion
 * of Korf, "A New Algorithm for Optimal Bin Packing", AAAI-02. The work is limited; a list that is
 * too long for it is answered with the best cutting found.
 */
import { remember } from "../memo.ts";
import { roundUpToWhole } from "../whole-number.ts";

export interface StockCutting {
  /** The lengths cut from each stock length. */
  readonly cuts: readonly (readonly number[])[];
  /** No cutting takes fewer stock lengths than this. */
  readonly least: number;
}

/** Lengths looked at before the search ends: some tenths of a second. */
const MAX_LOOKED_AT = 2_000_000;

/** The answer, its doubts, its working and its drawing ask for the same cutting. */
const known = remember<string, StockCutting>(20);

/** Cuts `lengths` from lengths of `stock`, losing `loss` at each cut but not off the end of the stock. */
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
 * The stock lengths that are needed whatever the cutting: by the sum of all, and for each length x
 * by those above half the room, no two of which share a stock length, and by those from x to half
 * the room, which only fit beside the shorter ones of them (Martello and Toth, Knapsack Problems,
 * 1990, section 8.3).
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

class Search {
  private readonly kinds: readonly number[];
  private counts: number[];
  private readonly room: number;
  private readonly loss: number;
  private readonly hair: number;
  private readonly sum: number;
  private looks = MAX_LOOKED_AT;
  private cuts: number[][] = [];
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

  /** Cuts what is left from `number` stock lengths, wasting at most `waste`. */
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

  /** Fills one stock length with kinds from `from` on in every way, then cuts the next. */
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
