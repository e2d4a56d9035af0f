/** What is taken of a cloth, slab by slab along its length, and where a sliced outline still fits. */
import type { Slices } from "./slices.ts";

/** Stretches kept per slab; when there are more the narrowest hole between two is given up. */
const MOST = 40;

export class Columns {
  /** Stretches looked at so far: the work done, the same on every machine. */
  probes = 0;
  private count = new Int32Array(0);
  private lo = new Float64Array(0);
  private hi = new Float64Array(0);

  private reach(columns: number): void {
    if (columns <= this.count.length) return;
    const size = Math.max(columns, this.count.length * 2, 128);
    const count = new Int32Array(size);
    const lo = new Float64Array(size * MOST);
    const hi = new Float64Array(size * MOST);
    count.set(this.count);
    lo.set(this.lo);
    hi.set(this.hi);
    this.count = count;
    this.lo = lo;
    this.hi = hi;
  }

  clear(): void {
    this.count.fill(0);
  }

  /**
   * The least y from `from` to `to` at which the slices, their first slab on `column`, keep clear
   * of all that is taken; NaN when no place is free. `eps` lets stretches touch in spite of rounding.
   */
  lowest(slices: Slices, column: number, from: number, to: number, eps: number): number {
    const { count, lo, hi } = this;
    const { start, lo: ownLo, hi: ownHi } = slices;
    const last = Math.min(slices.count, count.length - column);
    let y = from;
    if (y > to + eps) return NaN;
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
            return NaN;
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
    const n = this.count[column]!;
    let i = base;
    while (i < base + n && hi[i]! < from) i++;
    let j = i;
    let a = from;
    let b = to;
    while (j < base + n && lo[j]! <= to) {
      if (lo[j]! < a) a = lo[j]!;
      if (hi[j]! > b) b = hi[j]!;
      j++;
    }
    // Stretches i to j are swallowed by the new one.
    const grow = 1 - (j - i);
    if (grow !== 0) {
      lo.copyWithin(j + grow, j, base + n);
      hi.copyWithin(j + grow, j, base + n);
    }
    lo[i] = a;
    hi[i] = b;
    this.count[column] = n + grow;
    if (n + grow === MOST) this.giveUpNarrowest(column);
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
