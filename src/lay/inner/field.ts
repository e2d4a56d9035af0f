/**
 * The field of a no-fit polygon, laid out in the inner loop's memory. Asked millions of times a
 * second, so the plane is laid out in cells that remember, from the first time they are asked,
 * which few edges can be nearest.
 */
import type { Point } from "../../../functions/geometry/strokes.ts";
import {
  ADDRESSES,
  BLOCK,
  BLOCK_COUNT,
  BLOCKS,
  CELLS,
  EDGE,
  EDGE_COUNT,
  EDGES,
  FIELD_GAP,
  LAST,
  LEFT,
  LIST_LENGTH,
  LONG,
  LOW,
  NEXT_OUT_X,
  NEXT_OUT_Y,
  OUT_X,
  OUT_Y,
  OUTSIDE,
  PER_X,
  PER_Y,
  UNKNOWN,
  UX,
  UY,
} from "./layout.ts";
import type { Room } from "./room.ts";

/** Cells along the longer side; with more, their lists no longer stay in the processor's cache. */
const ACROSS = 14;

/** Lays out the field of these rings; returns its address. */
export function makeField(room: Room, rings: readonly (readonly Point[])[], gap: number): number {
  const edges: number[] = [];
  for (const ring of rings) addRing(ring, edges);
  const count = edges.length / (EDGE / 8);
  if (count > away.length) away = new Float64Array(count * 2);
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
  const columns = Math.max(1, Math.ceil(wide / cell));
  const rows = Math.max(1, Math.ceil(tall / cell));
  const field = room.allocate(CELLS + columns * rows * 4);
  const at = room.allocate(edges.length * 8);
  const { floats, ints } = room;
  floats.set([left - gap, low - gap, right + gap, high + gap], (field + LEFT) >> 3);
  floats.set([columns / wide, rows / tall, gap], (field + PER_X) >> 3);
  ints.set([columns - 1, rows - 1, at, count], (field + LAST) >> 2);
  ints.fill(UNKNOWN, (field + CELLS) >> 2, ((field + CELLS) >> 2) + columns * rows);
  floats.set(edges, at >> 3);
  return field;
}

/** Works out which edges can be nearest to a point of the cell; returns the address of the list, or `OUTSIDE`. */
export function fillCell(room: Room, field: number, cell: number): number {
  const f = (at: number) => room.floats[at >> 3]!;
  const n = (at: number) => room.ints[at >> 2]!;
  const columns = n(field + LAST) + 1;
  const wide = 1 / f(field + PER_X);
  const tall = 1 / f(field + PER_Y);
  const x = f(field + LEFT) + ((cell % columns) + 0.5) * wide;
  const y = f(field + LOW) + (Math.floor(cell / columns) + 0.5) * tall;
  const reach = Math.hypot(wide, tall) * 0.500001;
  const first = n(field + EDGES);
  const count = n(field + EDGE_COUNT);
  const { floats } = room;
  let least = Infinity;
  let nearest = 0;
  for (let i = 0; i < count; i++) {
    const e = first + i * EDGE;
    const d = distance(floats, e >> 3, x, y);
    away[i] = d;
    if (d < least) {
      least = d;
      nearest = e;
    }
  }
  const e = nearest;
  const rx = x - f(e);
  const ry = y - f(e + 8);
  const t = rx * f(e + UX) + ry * f(e + UY);
  const long = f(e + LONG);
  let sign = rx * f(e + UY) - ry * f(e + UX);
  if (t <= 0) sign = rx * f(e + OUT_X) + ry * f(e + OUT_Y);
  else if (t >= long)
    sign = (rx - f(e + UX) * long) * f(e + NEXT_OUT_X) + (ry - f(e + UY) * long) * f(e + NEXT_OUT_Y);
  const cells = (field + CELLS) >> 2;
  if (sign > 0 && least > reach + f(field + FIELD_GAP)) {
    room.ints[cells + cell] = OUTSIDE;
    return OUTSIDE;
  }
  const list: number[] = [];
  for (let i = 0; i < count; i++) if (away[i]! <= least + 2 * reach) list.push(first + i * EDGE);
  const rows = n(field + LAST + 4) + 1;
  const at = listBeside(room.ints, cells, columns, rows, cell, list) ?? writeList(room, list, x, y);
  room.ints[cells + cell] = at;
  return at;
}

/** Writes the list of these edges as it is seen from (x, y). What is left of the last block is edges too far off to be nearest. */
function writeList(room: Room, list: readonly number[], x: number, y: number): number {
  const blocks = Math.ceil(list.length / 4);
  const at = room.allocate(BLOCKS + blocks * BLOCK);
  const { floats, ints, singles } = room;
  floats.set([x, y], at >> 3);
  ints.set([blocks, list.length], (at + BLOCK_COUNT) >> 2);
  for (let k = 0; k < blocks * 4; k++) {
    const lane = ((at + BLOCKS + (k >> 2) * BLOCK) >> 2) + (k & 3);
    const edge = list[k] ?? 0;
    const figures = edge > 0 ? seenFrom(floats, edge >> 3, x, y) : [FAR];
    figures.forEach((figure, i) => {
      singles[lane + i * 4] = figure;
    });
    ints[lane + (ADDRESSES >> 2)] = edge;
  }
  return at;
}

const FAR = 1e15;

/** The figures of an edge as they stand in a block. */
function seenFrom(floats: Float64Array, e: number, x: number, y: number): number[] {
  const [sx, sy, ux, uy, long, ...out] = floats.subarray(e, e + EDGE / 8) as unknown as [
    number,
    number,
    number,
    number,
    number,
    ...number[],
  ];
  const t = Math.min(Math.max((x - sx) * ux + (y - sy) * uy, 0), long);
  return [sx + t * ux - x, sy + t * uy - y, ux, uy, -t, long - t, ...out];
}

/** Where a cell beside this one keeps the very same list: the fewer lists there are, the more of them stay in the processor's cache. */
function listBeside(
  ints: Int32Array,
  cells: number,
  columns: number,
  rows: number,
  cell: number,
  list: readonly number[],
): number | undefined {
  for (const beside of [cell - 1, cell + 1, cell - columns, cell + columns]) {
    const at = beside >= 0 && beside < columns * rows ? ints[cells + beside]! : UNKNOWN;
    if (at < 0 || ints[(at + LIST_LENGTH) >> 2] !== list.length) continue;
    const address = (k: number) => (at + BLOCKS + (k >> 2) * BLOCK + ADDRESSES + (k & 3) * 4) >> 2;
    if (list.every((edge, k) => ints[address(k)] === edge)) return at;
  }
  return undefined;
}

function distance(floats: Float64Array, e: number, x: number, y: number): number {
  const rx = x - floats[e]!;
  const ry = y - floats[e + 1]!;
  const ux = floats[e + 2]!;
  const uy = floats[e + 3]!;
  const t = Math.min(Math.max(rx * ux + ry * uy, 0), floats[e + 4]!);
  return Math.sqrt((rx - t * ux) ** 2 + (ry - t * uy) ** 2);
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
}
