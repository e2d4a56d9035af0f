/** What is taken of a cloth, slab by slab along its length, and where a sliced outline still fits. */
import type { Slices } from "./slices.ts";

/** Stretches kept per slab; when there are more the narrowest hole between two is given up. */
const MOST = 40;
/** Figures of a slab: two for each stretch. */
const STRIDE = 2 * MOST;

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
  /** The stretches of each slab in order, each as lo, hi: what is looked at together stands together. */
  private taken = new Float64Array(0);
  /** The greatest height that is free in each slab, from `low` to `high`. */
  private room = new Float64Array(0);
  private low = 0;
  private high = 0;
  /** How far `roomy` has seen, and the last column up to there with less room than the tallest slab. */
  private seen = 0;
  private lowColumn = -1;

  private reach(columns: number): void {
    if (columns <= this.count.length) return;
    const size = Math.max(columns, this.count.length * 2, 128);
    const count = new Int32Array(size);
    const taken = new Float64Array(size * STRIDE);
    count.set(this.count);
    taken.set(this.taken);
    const room = new Float64Array(size).fill(this.high - this.low);
    room.set(this.room);
    this.room = room;
    this.count = count;
    this.taken = taken;
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
    this.seen = 0;
    this.lowColumn = -1;
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
  private roomy({ count, tall, tallest }: Slices, column: number, eps: number): number {
    const { room } = this;
    let first = column;
    for (;;) {
      // Past the last column that is lower than the tallest slab all have room.
      const end = Math.min(first + count, room.length);
      if (end > this.seen) {
        let at = end - 1;
        const from = Math.max(first, this.seen);
        while (at >= from && room[at]! + eps >= tallest) at--;
        if (at >= from) this.lowColumn = at;
        this.seen = end;
      }
      // From the last slab: one that is too tall there lets the outline skip the most columns.
      let k = this.lowColumn - first;
      while (k >= 0 && tall[k]! <= room[first + k]! + eps) k--;
      if (k < 0) return first;
      const free = room[first + k]! + eps;
      const at = first + k;
      do k--;
      while (k >= 0 && tall[k]! > free);
      this.probes += at - first - k;
      first = at - k;
    }
  }

  /**
   * The least y from `from` to `to` at which the slices, their first slab on `column`, keep clear
   * of all that is taken; NaN when no place is free. `eps` lets stretches touch in spite of rounding.
   */
  private lowest(slices: Slices, column: number, from: number, to: number, eps: number): number {
    const { count, taken } = this;
    const { start, lo: ownLo, hi: ownHi } = slices;
    const last = Math.min(slices.count, count.length - column) | 0;
    let y = from;
    if (y > to + eps) return Number.NaN;
    let probes = 0;
    // A full round of slabs without a clash ends it; each clash only ever lifts the outline.
    let calm = 0;
    for (let k = 0; calm < last; k = k + 1 < last ? k + 1 : 0) {
      calm++;
      const base = (column + k) * STRIDE;
      const end = base + 2 * count[column + k]!;
      if (end === base) continue;
      for (let s = start[k]!; s < start[k + 1]!; s++) {
        const a = ownLo[s]!;
        const b = ownHi[s]!;
        for (let j = base; j < end; j += 2) {
          probes++;
          const hi = taken[j + 1]!;
          if (hi <= y + a + eps) continue;
          if (taken[j]! >= y + b - eps) break;
          y = hi - a;
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
    const { taken } = this;
    const base = column * STRIDE;
    const end = base + 2 * this.count[column]!;
    let i = base;
    while (i < end && taken[i + 1]! < from) i += 2;
    let j = i;
    let a = from;
    let b = to;
    while (j < end && taken[j]! <= to) {
      if (taken[j]! < a) a = taken[j]!;
      if (taken[j + 1]! > b) b = taken[j + 1]!;
      j += 2;
    }
    // Stretches i to j are swallowed by the new one.
    const grow = i + 2 - j;
    if (grow > 0) for (let k = end - 1; k >= i; k--) taken[k + 2] = taken[k]!;
    else if (grow < 0) taken.copyWithin(j + grow, j, end);
    taken[i] = a;
    taken[i + 1] = b;
    this.count[column] = (end - base + grow) / 2;
    if (end - base + grow === STRIDE) this.giveUpNarrowest(column);
    this.room[column] = this.roomIn(column);
  }

  /** The greatest height that is free in a column. */
  private roomIn(column: number): number {
    const { taken } = this;
    const base = column * STRIDE;
    const end = base + 2 * this.count[column]!;
    let room = this.high - taken[end - 1]!;
    let from = this.low;
    for (let i = base; i < end; i += 2) {
      if (taken[i]! - from > room) room = taken[i]! - from;
      from = taken[i + 1]!;
    }
    return room;
  }

  private giveUpNarrowest(column: number): void {
    const { taken } = this;
    const base = column * STRIDE;
    const end = base + 2 * this.count[column]!;
    const gap = (i: number) => taken[i + 2]! - taken[i + 1]!;
    let at = base;
    for (let i = base; i + 2 < end; i += 2) if (gap(i) < gap(at)) at = i;
    taken[at + 1] = taken[at + 3]!;
    taken.copyWithin(at + 2, at + 4, end);
    this.count[column]!--;
  }
}
