/**
 * How deep an offset lies inside a no-fit polygon: the shortest move that frees the two outlines,
 * the wanted gap included. Asked millions of times a second, so the plane is laid out in cells
 * that remember, from the first time they are asked, which few edges can be nearest.
 */
import type { Point } from "../../functions/geometry/strokes.ts";

/** Numbers kept per edge: start, direction, length, and the outward direction at its two ends. */
const EDGE = 9;
/** Cells along the longer side; with more, their lists no longer stay in the processor's cache. */
const ACROSS = 28;

export class DepthField {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
  /** After `depth` was above 0: the direction of the shortest way out. */
  outX = 0;
  outY = 0;
  private readonly edges: Float64Array;
  private readonly count: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly perX: number;
  private readonly perY: number;
  /** Where a cell's list begins in `lists`; -1 not asked yet, -2 wholly outside. */
  private readonly cells: Int32Array;
  private lists = new Int32Array(256);
  private used = 0;

  constructor(
    rings: readonly (readonly Point[])[],
    private readonly gap: number,
  ) {
    const edges: number[] = [];
    for (const ring of rings) addRing(ring, edges);
    this.edges = Float64Array.from(edges);
    this.count = edges.length / EDGE;
    let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const ring of rings)
      for (const [x, y] of ring) {
        left = Math.min(left, x);
        right = Math.max(right, x);
        low = Math.min(low, y);
        high = Math.max(high, y);
      }
    this.left = left - gap;
    this.right = right + gap;
    this.low = low - gap;
    this.high = high + gap;
    const wide = this.right - this.left;
    const tall = this.high - this.low;
    const cell = Math.max(wide, tall) / ACROSS;
    this.columns = Math.max(1, Math.ceil(wide / cell));
    this.rows = Math.max(1, Math.ceil(tall / cell));
    this.perX = this.columns / wide;
    this.perY = this.rows / tall;
    this.cells = new Int32Array(this.columns * this.rows).fill(-1);
  }

  /** Depth of the offset, 0 outside. */
  depth(x: number, y: number): number {
    if (!(x > this.left && x < this.right && y > this.low && y < this.high)) return 0;
    const cx = ((x - this.left) * this.perX) | 0;
    const cy = ((y - this.low) * this.perY) | 0;
    const cell =
      (cy < this.rows ? cy : this.rows - 1) * this.columns + (cx < this.columns ? cx : this.columns - 1);
    let at = this.cells[cell]!;
    if (at === -1) at = this.fill(cell);
    if (at === -2) return 0;
    const { edges, lists } = this;
    const end = at + 1 + lists[at]!;
    let least = Infinity;
    let sign = 0;
    let ox = 0;
    let oy = 0;
    for (let k = at + 1; k < end; k++) {
      const e = lists[k]!;
      const ux = edges[e + 2]!;
      const uy = edges[e + 3]!;
      const rx = x - edges[e]!;
      const ry = y - edges[e + 1]!;
      const t = rx * ux + ry * uy;
      if (t <= 0) {
        const d = rx * rx + ry * ry;
        if (d < least) {
          least = d;
          sign = rx * edges[e + 5]! + ry * edges[e + 6]!;
          ox = -rx;
          oy = -ry;
        }
      } else if (t >= edges[e + 4]!) {
        const sx = rx - ux * edges[e + 4]!;
        const sy = ry - uy * edges[e + 4]!;
        const d = sx * sx + sy * sy;
        if (d < least) {
          least = d;
          sign = sx * edges[e + 7]! + sy * edges[e + 8]!;
          ox = -sx;
          oy = -sy;
        }
      } else {
        const side = rx * uy - ry * ux;
        const d = side * side;
        if (d < least) {
          least = d;
          sign = side;
          ox = -uy * side;
          oy = ux * side;
        }
      }
    }
    const away = Math.sqrt(least);
    const deep = sign < 0 ? this.gap + away : this.gap - away;
    if (deep <= 0) return 0;
    // Inside, the way out leads to the nearest border; within the gap, on from it.
    const scale = away > 0 ? (sign < 0 ? 1 : -1) / away : 0;
    this.outX = ox * scale;
    this.outY = oy * scale;
    return deep;
  }

  /** Works out which edges can be nearest to a point of the cell. */
  private fill(cell: number): number {
    const wide = 1 / this.perX;
    const tall = 1 / this.perY;
    const x = this.left + ((cell % this.columns) + 0.5) * wide;
    const y = this.low + (Math.floor(cell / this.columns) + 0.5) * tall;
    const reach = Math.hypot(wide, tall) * 0.500001;
    const { edges, count } = this;
    let least = Infinity;
    let sign = 0;
    for (let i = 0; i < count; i++) {
      const e = i * EDGE;
      const d = this.distance(e, x, y);
      away[i] = d;
      if (d < least) {
        least = d;
        const rx = x - edges[e]!;
        const ry = y - edges[e + 1]!;
        const t = rx * edges[e + 2]! + ry * edges[e + 3]!;
        const long = edges[e + 4]!;
        if (t <= 0) sign = rx * edges[e + 5]! + ry * edges[e + 6]!;
        else if (t >= long)
          sign = (rx - edges[e + 2]! * long) * edges[e + 7]! + (ry - edges[e + 3]! * long) * edges[e + 8]!;
        else sign = rx * edges[e + 3]! - ry * edges[e + 2]!;
      }
    }
    if (sign > 0 && least > reach + this.gap) {
      this.cells[cell] = -2;
      return -2;
    }
    if (this.used + count + 1 > this.lists.length) {
      const more = new Int32Array(this.lists.length * 2 + count + 1);
      more.set(this.lists);
      this.lists = more;
    }
    const at = this.used;
    let n = 0;
    for (let i = 0; i < count; i++) if (away[i]! <= least + 2 * reach) this.lists[at + 1 + n++] = i * EDGE;
    this.lists[at] = n;
    this.used = at + 1 + n;
    this.cells[cell] = at;
    return at;
  }

  private distance(e: number, x: number, y: number): number {
    const { edges } = this;
    const rx = x - edges[e]!;
    const ry = y - edges[e + 1]!;
    const ux = edges[e + 2]!;
    const uy = edges[e + 3]!;
    const t = Math.min(Math.max(rx * ux + ry * uy, 0), edges[e + 4]!);
    return Math.sqrt((rx - t * ux) ** 2 + (ry - t * uy) ** 2);
  }
}

/** Distances of all edges from one cell, while it is being filled. */
let away = new Float64Array(1024);

/** Edges of a ring with the inside on their left; at each corner the sum of both edges' outward directions. */
function addRing(ring: readonly Point[], edges: number[]): void {
  const sides: { p: Point; ux: number; uy: number; long: number }[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const long = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (long > 0) sides.push({ p, ux: (q[0] - p[0]) / long, uy: (q[1] - p[1]) / long, long });
  });
  const n = sides.length;
  sides.forEach(({ p, ux, uy, long }, i) => {
    const before = sides[(i + n - 1) % n]!;
    const after = sides[(i + 1) % n]!;
    edges.push(p[0], p[1], ux, uy, long, before.uy + uy, -before.ux - ux, uy + after.uy, -ux - after.ux);
  });
  if (edges.length / EDGE > away.length) away = new Float64Array((edges.length / EDGE) * 2);
}
