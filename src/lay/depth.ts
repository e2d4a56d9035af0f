/**
 * How deep an offset lies inside a no-fit polygon: the shortest move that frees the two outlines,
 * the wanted gap included. Asked millions of times a second, so the plane is laid out in cells
 * that remember, from the first time they are asked, which few edges can be nearest.
 */
import type { Point } from "../../functions/geometry/strokes.ts";

/** Numbers kept per edge: start, direction, length, and the outward direction at its two ends. */
const EDGE = 9;
/** Numbers kept before the edges. */
const FRAME = 7;
/** Cells along the longer side; with more, their lists no longer stay in the processor's cache. */
const ACROSS = 20;

/** Offset and depth, on their way in and out of `measure`: numbers handed to a long method as such become objects. */
const io = new Float64Array(3);

/** After `depth` was above 0: the direction of the shortest way out, x and y. */
export const wayOut = new Float64Array(2);

export class DepthField {
  /** Bounds, cells per unit along and across, and the gap, then the edges: in one array, since each question reads them. */
  private readonly figures: Float64Array;
  private readonly count: number;
  private readonly columns: number;
  private readonly rows: number;
  /**
   * For each cell where its list begins further on; -1 not asked yet, -2 wholly outside. Then the
   * lists, which cells side by side share: how many edges, and where each begins in `figures`.
   */
  private lists: Int32Array;
  private used: number;

  constructor(rings: readonly (readonly Point[])[], gap: number) {
    const edges: number[] = [];
    for (const ring of rings) addRing(ring, edges);
    this.count = edges.length / EDGE;
    let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const ring of rings)
      for (const [x, y] of ring) {
        left = Math.min(left, x);
        right = Math.max(right, x);
        low = Math.min(low, y);
        high = Math.max(high, y);
      }
    const wide = right - left + 2 * gap;
    const tall = high - low + 2 * gap;
    const cell = Math.max(wide, tall) / ACROSS;
    this.columns = Math.max(1, Math.ceil(wide / cell));
    this.rows = Math.max(1, Math.ceil(tall / cell));
    const [perX, perY] = [this.columns / wide, this.rows / tall];
    this.figures = new Float64Array(FRAME + edges.length);
    this.figures.set([left - gap, right + gap, low - gap, high + gap, perX, perY, gap]);
    this.figures.set(edges, FRAME);
    this.used = this.columns * this.rows;
    this.lists = new Int32Array(this.used + 256).fill(-1, 0, this.used);
  }

  get left(): number {
    return this.figures[0]!;
  }
  get right(): number {
    return this.figures[1]!;
  }
  get low(): number {
    return this.figures[2]!;
  }
  get high(): number {
    return this.figures[3]!;
  }

  /** Depth of the offset, 0 outside. */
  depth(x: number, y: number): number {
    const { figures } = this;
    if (!(x > figures[0]! && x < figures[1]! && y > figures[2]! && y < figures[3]!)) return 0;
    io[0] = x;
    io[1] = y;
    io[2] = 0;
    this.measure();
    return io[2]!;
  }

  private measure(): void {
    const x = io[0]!;
    const y = io[1]!;
    const { figures } = this;
    const cx = ((x - figures[0]!) * figures[4]!) | 0;
    const cy = ((y - figures[2]!) * figures[5]!) | 0;
    const cell =
      (cy < this.rows ? cy : this.rows - 1) * this.columns + (cx < this.columns ? cx : this.columns - 1);
    let at = this.lists[cell]!;
    if (at === -1) at = this.fill(cell);
    if (at === -2) return;
    const { lists } = this;
    const end = at + 1 + lists[at]!;
    let least = Infinity;
    let sign = 0;
    let ox = 0;
    let oy = 0;
    for (let k = at + 1; k < end; k++) {
      const e = lists[k]!;
      const ux = figures[e + 2]!;
      const uy = figures[e + 3]!;
      const rx = x - figures[e]!;
      const ry = y - figures[e + 1]!;
      const t = rx * ux + ry * uy;
      if (t <= 0) {
        const d = rx * rx + ry * ry;
        if (d < least) {
          least = d;
          sign = rx * figures[e + 5]! + ry * figures[e + 6]!;
          ox = -rx;
          oy = -ry;
        }
      } else if (t >= figures[e + 4]!) {
        const sx = rx - ux * figures[e + 4]!;
        const sy = ry - uy * figures[e + 4]!;
        const d = sx * sx + sy * sy;
        if (d < least) {
          least = d;
          sign = sx * figures[e + 7]! + sy * figures[e + 8]!;
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
    const gap = figures[6]!;
    const deep = sign < 0 ? gap + away : gap - away;
    if (deep <= 0) return;
    // Inside, the way out leads to the nearest border; within the gap, on from it.
    const scale = away > 0 ? (sign < 0 ? 1 : -1) / away : 0;
    wayOut[0] = ox * scale;
    wayOut[1] = oy * scale;
    io[2] = deep;
  }

  /** Works out which edges can be nearest to a point of the cell. */
  private fill(cell: number): number {
    const wide = 1 / this.figures[4]!;
    const tall = 1 / this.figures[5]!;
    const gap = this.figures[6]!;
    const x = this.left + ((cell % this.columns) + 0.5) * wide;
    const y = this.low + (Math.floor(cell / this.columns) + 0.5) * tall;
    const reach = Math.hypot(wide, tall) * 0.500001;
    const { count, figures } = this;
    let least = Infinity;
    let sign = 0;
    for (let i = 0; i < count; i++) {
      const e = FRAME + i * EDGE;
      const d = this.distance(e, x, y);
      away[i] = d;
      if (d < least) {
        least = d;
        const rx = x - figures[e]!;
        const ry = y - figures[e + 1]!;
        const t = rx * figures[e + 2]! + ry * figures[e + 3]!;
        const long = figures[e + 4]!;
        if (t <= 0) sign = rx * figures[e + 5]! + ry * figures[e + 6]!;
        else if (t >= long)
          sign =
            (rx - figures[e + 2]! * long) * figures[e + 7]! + (ry - figures[e + 3]! * long) * figures[e + 8]!;
        else sign = rx * figures[e + 3]! - ry * figures[e + 2]!;
      }
    }
    if (sign > 0 && least > reach + gap) {
      this.lists[cell] = -2;
      return -2;
    }
    if (this.used + count + 1 > this.lists.length) {
      const more = new Int32Array(this.lists.length * 2 + count + 1);
      more.set(this.lists);
      this.lists = more;
    }
    const at = this.used;
    let n = 0;
    for (let i = 0; i < count; i++)
      if (away[i]! <= least + 2 * reach) this.lists[at + 1 + n++] = FRAME + i * EDGE;
    this.lists[at] = n;
    const same = this.listBeside(cell, at);
    if (same === -1) this.used = at + 1 + n;
    this.lists[cell] = same === -1 ? at : same;
    return this.lists[cell]!;
  }

  /** Where a cell beside this one keeps the very list that begins at `at`, or -1: the fewer lists there are, the more of them stay in the processor's cache. */
  private listBeside(cell: number, at: number): number {
    const { lists, columns } = this;
    for (const beside of [cell - 1, cell + 1, cell - columns, cell + columns]) {
      const other = beside >= 0 && beside < columns * this.rows ? lists[beside]! : -1;
      if (other < 0) continue;
      let k = 0;
      while (k <= lists[at]! && lists[other + k] === lists[at + k]) k++;
      if (k > lists[at]!) return other;
    }
    return -1;
  }

  private distance(e: number, x: number, y: number): number {
    const { figures } = this;
    const rx = x - figures[e]!;
    const ry = y - figures[e + 1]!;
    const ux = figures[e + 2]!;
    const uy = figures[e + 3]!;
    const t = Math.min(Math.max(rx * ux + ry * uy, 0), figures[e + 4]!);
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
