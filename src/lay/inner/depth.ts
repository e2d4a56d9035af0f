/** How deep an offset lies inside a no-fit polygon, as field.ts lays it out: the shortest move that frees the two outlines, the wanted gap included. */
import {
  ADDRESSES,
  BLOCK,
  BLOCKS,
  CELLS,
  FIELD_GAP,
  HIGH,
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
  RIGHT,
  UNKNOWN,
  UX,
  UY,
  WAY_X,
  WAY_Y,
} from "./layout.ts";
import { f, fill, n, setF, smaller, whole } from "./memory.ts";

/** Where the list of the cell with this offset is; `OUTSIDE` where there is nothing to be asked. */
export function listAt(field: i32, x: f64, y: f64): i32 {
  if (!(x > f(field + LEFT) && x < f(field + RIGHT) && y > f(field + LOW) && y < f(field + HIGH)))
    return OUTSIDE;
  const cx = whole((x - f(field + LEFT)) * f(field + PER_X));
  const cy = whole((y - f(field + LOW)) * f(field + PER_Y));
  const last = n(field + LAST);
  const lastRow = n(field + LAST + 4);
  const cell = smaller(cy, lastRow) * (last + 1) + smaller(cx, last);
  const list = n(field + CELLS + (cell << 2));
  return list === UNKNOWN ? fill(field, cell) : list;
}

/** Depth of the offset, 0 outside. Where it is above 0 the shortest way out is kept in `WAY_X` and `WAY_Y`. */
export function depth(field: i32, x: f64, y: f64): f64 {
  const list = listAt(field, x, y);
  if (list === OUTSIDE) return 0;
  const length = n(list + LIST_LENGTH);
  let least: f64 = Infinity;
  let sign: f64 = 0;
  let ox: f64 = 0;
  let oy: f64 = 0;
  for (let k = 0; k < length; k++) {
    const e = n(list + BLOCKS + (k >> 2) * BLOCK + ADDRESSES + ((k & 3) << 2));
    const ux = f(e + UX);
    const uy = f(e + UY);
    const long = f(e + LONG);
    const rx = x - f(e);
    const ry = y - f(e + 8);
    const t = rx * ux + ry * uy;
    const within: f64 = t > 0 ? Math.min(t, long) : 0;
    const sx = rx - ux * within;
    const sy = ry - uy * within;
    const d = sx * sx + sy * sy;
    if (d < least) {
      least = d;
      ox = -sx;
      oy = -sy;
      if (t <= 0) sign = sx * f(e + OUT_X) + sy * f(e + OUT_Y);
      else if (t >= long) sign = sx * f(e + NEXT_OUT_X) + sy * f(e + NEXT_OUT_Y);
      else sign = sx * uy - sy * ux;
    }
  }
  const away = Math.sqrt(least);
  const gap = f(field + FIELD_GAP);
  // Inside, the way out leads to the nearest border; within the gap, on from it.
  const toward: f64 = sign < 0 ? 1 : -1;
  const scale: f64 = away > 0 ? toward / away : 0;
  setF(WAY_X, ox * scale);
  setF(WAY_Y, oy * scale);
  const deep = sign < 0 ? gap + away : gap - away;
  return Math.max(deep, 0);
}
