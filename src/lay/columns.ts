/** What is taken of a cloth, slab by slab along its length, and where a sliced outline still fits. */
import type { Slices } from "./slices.ts";

/** Stretches kept per slab; when there are more the narrowest hole between two is given up. */
const MOST = 40;

/** On a repeat only the columns `phase`, `phase` + `cycle` and so on will do. */
export interface Cycle {
  readonly cycle: number;
  readonly phase: number;
}

export const ANY_COLUMN: Cycle = { cycle: 1, phase: 0 };

export class Columns {
  /** Stretches looked at so far: the work done, the same on every machine. */
  probes = 0;
  private count = new Int32Array(0);
  private lo = new Float64Array(0);
  private hi = new Float64Array(0);
  /** The greatest height that is free in each slab, from `low` to `high`. */
  private room = new Float64Array(0);
  private low = 0;
  private high = 0;

  private reach(columns: number): void {
    if (columns <= this.count.length) return;
    const size = Math.max(columns, this.count.length * 2, 128);
    const count = new Int32Array(size);
    const lo = new Float64Array(size * MOST);
    const hi = new Float64Array(size * MOST);
    count.set(this.count);
    lo.set(this.lo);
    hi.set(this.hi);
    const room = new Float64Array(size).fill(this.high - this.low);
    room.set(this.room);
    this.room = room;
    this.count = count;
    this.lo = lo;
    this.hi = hi;
  }

  /** Frees the whole cloth. No stretch of a copy will ever lie below `low` or above `high`. */
  clear(low: number, high: number): void {
    this.low = low;
    this.high = high;
    this.count.fill(0);
    this.room.fill(high - low);
  }

  /** The y at which `soonest` found a free place; NaN when there was none. */
  height = Number.NaN;

  /**
   * The first column from `column` on, at most `most`, on which the slices find a free place from
   * `from` to `to` across the cloth; `height` is the least such y there. Columns are counted in steps
   * of `cycle` from `phase`. When there is no place, it answers a column before which no place is.
   */
  soonest(
    slices: Slices,
    column: number,
    most: number,
    { cycle, phase }: Cycle,
    from: number,
    to: number,
    eps: number,
  ): number {
    this.height = Number.NaN;
    for (let at = column; ; at++) {
      at = this.roomy(slices, at, eps);
      const off = cycle > 1 ? (((phase - at) % cycle) + cycle) % cycle : 0;
      if (off > 0) {
        at += off - 1;
        continue;
      }
      if (at > most) return at;
      const y = this.lowest(slices, at, from, to, eps);
      if (Number.isNaN(y)) continue;
      this.height = y;
      return at;
    }
  }

  /** The first column from `column` on at which no slab of the slices is taller than what is free there. */
  private roomy({ count, tall }: Slices, column: number, eps: number): number {
    const { room } = this;
    let first = column;
    // From the last slab: one that is too tall there lets the outline skip the most columns.
    let k = Math.min(count, room.length - first) - 1;
    while (k >= 0) {
      const free = room[first + k]! + eps;
      if (tall[k]! <= free) {
        k--;
        continue;
      }
      const at = first + k;
      do k--;
      while (k >= 0 && tall[k]! > free);
      this.probes += at - first - k;
      first = at - k;
      k = Math.min(count, room.length - first) - 1;
    }
    return first;
  }

  /**
   * The least y from `from` to `to` at which the slices, their first slab on `column`, keep clear
   * of all that is taken; NaN when no place is free. `eps` lets stretches touch in spite of rounding.
   */
  private lowest(slices: Slices, column: number, from: number, to: number, eps: number): number {
    const { count, lo, hi } = this;
    const { start, lo: ownLo, hi: ownHi } = slices;
    const last = Math.min(slices.count, count.length - column) | 0;
    let y = from;
    if (y > to + eps) return Number.NaN;
    let probes = 0;
    // A full round of slabs without a clash ends it; each clash only ever lifts the outline.
    let calm = 0;
    for (let k = 0; calm < last; k = k + 1 < last ? k + 1 : 0) {
      calm++;
      const base = (column + k) * MOST;
      const end = base + count[column + k]!;
      if (end === base) continue;
      for (let s = start[k]!; s < start[k + 1]!; s++) {
        const a = ownLo[s]!;
        const b = ownHi[s]!;
        for (let j = base; j < end; j++) {
          probes++;
          if (hi[j]! <= y + a + eps) continue;
          if (lo[j]! >= y + b - eps) break;
          y = hi[j]! - a;
          calm = 0;
          if (y > to + eps) {
            this.probes += probes;
            return Number.NaN;
          }
        }
      }
    }
    this.probes += probes + last;
    return Math.min(y, to);
  }

  /** Takes what the slices cover when their first slab lies on `column`. */
  add(slices: Slices, column: number, y: number): void {
    this.reach(column + slices.count);
    for (let k = Math.max(0, -column); k < slices.count; k++)
      for (let s = slices.start[k]!; s < slices.start[k + 1]!; s++)
        this.take(column + k, slices.lo[s]! + y, slices.hi[s]! + y);
  }

  private take(column: number, from: number, to: number): void {
    const { lo, hi } = this;
    const base = column * MOST;
    const end = base + this.count[column]!;
    let i = base;
    while (i < end && hi[i]! < from) i++;
    let j = i;
    let a = from;
    let b = to;
    while (j < end && lo[j]! <= to) {
      if (lo[j]! < a) a = lo[j]!;
      if (hi[j]! > b) b = hi[j]!;
      j++;
    }
    // Stretches i to j are swallowed by the new one.
    const grow = 1 - (j - i);
    if (grow > 0)
      for (let k = end; k > i; k--) {
        lo[k] = lo[k - 1]!;
        hi[k] = hi[k - 1]!;
      }
    else if (grow < 0) {
      lo.copyWithin(j + grow, j, end);
      hi.copyWithin(j + grow, j, end);
    }
    lo[i] = a;
    hi[i] = b;
    this.count[column] = end - base + grow;
    if (end - base + grow === MOST) this.giveUpNarrowest(column);
    this.room[column] = this.roomIn(column);
  }

  /** The greatest height that is free in a column. */
  private roomIn(column: number): number {
    const { lo, hi } = this;
    const base = column * MOST;
    const end = base + this.count[column]!;
    let room = this.high - hi[end - 1]!;
    let from = this.low;
    for (let i = base; i < end; i++) {
      if (lo[i]! - from > room) room = lo[i]! - from;
      from = hi[i]!;
    }
    return room;
  }

  private giveUpNarrowest(column: number): void {
    const { lo, hi } = this;
    const base = column * MOST;
    const end = base + this.count[column]!;
    let at = base;
    for (let i = base; i + 1 < end; i++) if (lo[i + 1]! - hi[i]! < lo[at + 1]! - hi[at]!) at = i;
    hi[at] = hi[at + 1]!;
    lo.copyWithin(at + 1, at + 2, end);
    hi.copyWithin(at + 1, at + 2, end);
    this.count[column]!--;
  }
}
