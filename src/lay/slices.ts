/**
 * An outline cut into upright slabs of one width: for each slab the stretches across the cloth
 * that the outline takes up anywhere within the slab. Outlines whose slabs line up overlap only
 * if their stretches do, so a quick lay needs no other geometry. (Semi-discrete nesting, after
 * Chehrazad, Roose and Wauters, arXiv:2103.08739.)
 */
import type { Point } from "../../functions/geometry/strokes.ts";

export interface Slices {
  /** x of the first slab's left side. */
  readonly origin: number;
  readonly count: number;
  /** Stretches of slab k are those from start[k] up to start[k + 1]. */
  readonly start: Int32Array;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** The height of the tallest stretch of each slab. */
  readonly tall: Float64Array;
  /** The height of the tallest stretch of all. */
  readonly tallest: number;
}

/** Pairs of figures in as many lists as there are slabs; kept from one outline to the next. */
class Lists {
  /** The newest pair of each list, and the one before each pair; -1 for none. */
  newest = new Int32Array(0);
  before = new Int32Array(256);
  a = new Float64Array(256);
  b = new Float64Array(256);
  private used = 0;

  clear(count: number): void {
    if (count > this.newest.length) this.newest = new Int32Array(2 * count);
    this.newest.fill(-1, 0, count);
    this.used = 0;
  }

  push(k: number, a: number, b: number): void {
    if (this.used === this.a.length) {
      this.a = larger(this.a, new Float64Array(2 * this.used));
      this.b = larger(this.b, new Float64Array(2 * this.used));
      this.before = larger(this.before, new Int32Array(2 * this.used));
    }
    const i = this.used++;
    this.a[i] = a;
    this.b[i] = b;
    this.before[i] = this.newest[k]!;
    this.newest[k] = i;
  }
}

function larger<T extends Float64Array | Int32Array>(old: T, array: T): T {
  array.set(old);
  return array;
}

const stretches = new Lists();
const cuts = new Lists();

/**
 * Stretches of the outline (or, with `around`, of everything from `around.low` to `around.high`
 * that is not inside it) in `count` slabs of width `h` from `origin`.
 */
export function slice(
  outline: readonly Point[],
  origin: number,
  h: number,
  count: number,
  around?: { low: number; high: number },
): Slices {
  stretches.clear(count);
  cuts.clear(count);
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const p = outline[i]!;
    const q = outline[i + 1 === n ? 0 : i + 1]!;
    const [a, b] = p[0] <= q[0] ? [p, q] : [q, p];
    const first = Math.floor((a[0] - origin) / h);
    const last = Math.floor((b[0] - origin) / h);
    const slope = b[0] > a[0] ? (b[1] - a[1]) / (b[0] - a[0]) : 0;
    for (let k = Math.max(first, 0); k <= last && k < count; k++) {
      const x0 = origin + k * h;
      const ya = k === first ? a[1] : a[1] + (x0 - a[0]) * slope;
      const yb = k === last ? b[1] : a[1] + (x0 + h - a[0]) * slope;
      stretches.push(k, Math.min(ya, yb), Math.max(ya, yb));
      // Half-open in x, so that a corner on a slab's side counts once.
      if (k > first) cuts.push(k, ya, 0);
    }
    if (last === count && count > 0 && b[0] - origin <= h * count * (1 + 1e-12) && a === b)
      stretches.push(count - 1, Math.min(a[1], b[1]), Math.max(a[1], b[1]));
  }
  const start = new Int32Array(count + 1);
  const lo: number[] = [];
  const hi: number[] = [];
  const own: number[] = [];
  const cut: number[] = [];
  for (let k = 0; k < count; k++) {
    own.length = 0;
    cut.length = 0;
    for (let i = stretches.newest[k]!; i >= 0; i = stretches.before[i]!)
      own.push(stretches.a[i]!, stretches.b[i]!);
    for (let i = cuts.newest[k]!; i >= 0; i = cuts.before[i]!) cut.push(cuts.a[i]!);
    if (cut.length > 2) cut.sort((s, t) => s - t);
    else if (cut[0]! > cut[1]!) cut.reverse();
    if (around) {
      let from = around.low;
      for (let i = 0; i + 1 < cut.length; i += 2) {
        if (cut[i]! > from) own.push(from, cut[i]!);
        from = cut[i + 1]!;
      }
      if (around.high > from) own.push(from, around.high);
    } else for (let i = 0; i + 1 < cut.length; i += 2) own.push(cut[i]!, cut[i + 1]!);
    merge(own, lo, hi);
    start[k + 1] = lo.length;
  }
  const tall = new Float64Array(count);
  for (let k = 0; k < count; k++)
    for (let i = start[k]!; i < start[k + 1]!; i++) tall[k] = Math.max(tall[k]!, hi[i]! - lo[i]!);
  let tallest = 0;
  for (let k = 0; k < count; k++) if (tall[k]! > tallest) tallest = tall[k]!;
  return { origin, count, start, lo: new Float64Array(lo), hi: new Float64Array(hi), tall, tallest };
}

/** Sorts stretches given as lo, hi, lo, hi ... and joins those that meet. */
function merge(own: number[], lo: number[], hi: number[]): void {
  // Few stretches per slab: sorting by insertion is quickest.
  for (let i = 2; i < own.length; i += 2) {
    const a = own[i]!;
    const b = own[i + 1]!;
    let j = i - 2;
    for (; j >= 0 && own[j]! > a; j -= 2) {
      own[j + 2] = own[j]!;
      own[j + 3] = own[j + 1]!;
    }
    own[j + 2] = a;
    own[j + 3] = b;
  }
  const base = lo.length;
  for (let i = 0; i < own.length; i += 2) {
    const last = lo.length - 1;
    if (last >= base && own[i]! <= hi[last]!) hi[last] = Math.max(hi[last]!, own[i + 1]!);
    else {
      lo.push(own[i]!);
      hi.push(own[i + 1]!);
    }
  }
}
