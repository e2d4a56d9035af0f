/**
 * How badly two items overlap, as WebAssembly: two numbers at a time, and four where edges are compared. ../clash.ts
 * takes the same steps one by one; a test compares both.
 */
import {
  AHEAD,
  ALONG_X,
  ALONG_Y,
  BACK,
  BLOCK,
  BLOCK_COUNT,
  BLOCKS,
  CELLS,
  COS,
  FIELD,
  FIELD_GAP,
  FIRST_OUT_X,
  FIRST_OUT_Y,
  FOOT_Y,
  LAST,
  LAST_OUT_X,
  LAST_OUT_Y,
  OUTSIDE,
  PAIR,
  PAIRS,
  PER_X,
  PROBE,
  RIGHT,
  SIN,
  SIZE,
  STANCE,
  STANCE_COUNT,
  TOLERANCE,
  UNKNOWN,
  X,
} from "./layout.ts";
import { fill, prepare } from "./memory.ts";

@inline
function swapped(v: v128): v128 {
  return v128.shuffle<f64>(v, v, 1, 0);
}

@inline
export function clash(item: i32, stance: i32): f64 {
  const other = load<i32>(item, STANCE);
  const pair = load<i32>(PAIRS) + (other * load<i32>(STANCE_COUNT) + stance) * PAIR;
  let field = load<i32>(pair, FIELD);
  if (field === 0) field = prepare(other, stance);
  const d = f64x2.sub(v128.load(PROBE, X), v128.load(item, X));
  const s = v128.xor(v128.load_splat<f64>(pair, SIN), i64x2(0, i64.MIN_VALUE));
  const p = f64x2.add(f64x2.mul(v128.load_splat<f64>(pair, COS), d), f64x2.mul(s, swapped(d)));
  const list = listAt(field, p);
  let loss = 0.0;
  if (list !== OUTSIDE) {
    const deep = load<f64>(field, FIELD_GAP) - signedDistance(list, p);
    if (deep > load<f64>(TOLERANCE)) {
      const least = f64x2.pmax(v128.load(item), v128.load(PROBE));
      const most = f64x2.pmin(v128.load(item, RIGHT), v128.load(PROBE, RIGHT));
      const shared = f64x2.sub(most, least);
      const sum = f64x2.extract_lane(f64x2.add(shared, swapped(shared)), 0);
      loss = Math.sqrt(deep * sum) * load<f64>(pair, SIZE);
    }
  }
  return loss;
}

@inline
function listAt(field: i32, p: v128): i32 {
  const first = v128.load(field);
  if (!i64x2.all_true(v128.and(f64x2.gt(p, first), f64x2.lt(p, v128.load(field, RIGHT))))) return OUTSIDE;
  const place = i32x4.min_s(
    i32x4.trunc_sat_f64x2_s_zero(f64x2.mul(f64x2.sub(p, first), v128.load(field, PER_X))),
    v128.load64_zero(field, LAST),
  );
  const cell = i32x4.extract_lane(place, 1) * (load<i32>(field, LAST) + 1) + i32x4.extract_lane(place, 0);
  const list = load<i32>(field + (cell << 2), CELLS);
  return list === UNKNOWN ? fill(field, cell) : list;
}

/** Distance of the offset from the nearest edge of the list; below 0 where it is inside. */
@inline
function signedDistance(list: i32, p: v128): f64 {
  const q = f32x4.demote_f64x2_zero(f64x2.sub(p, v128.load(list)));
  const x = v128.shuffle<f32>(q, q, 0, 0, 0, 0);
  const y = v128.shuffle<f32>(q, q, 1, 1, 1, 1);
  let block = list + BLOCKS;
  let least = squares(block, x, y);
  for (let more = load<i32>(list, BLOCK_COUNT) - 1; more > 0; more--) {
    block += BLOCK;
    least = f32x4.pmin(least, squares(block, x, y));
  }
  least = f32x4.pmin(least, v128.shuffle<f32>(least, least, 2, 3, 0, 1));
  least = f32x4.pmin(least, v128.shuffle<f32>(least, least, 1, 0, 3, 2));
  // The lowest bit says that it is inside; moved to the front it is the sign.
  return f64(f32x4.extract_lane(v128.or(f32x4.sqrt(least), i32x4.shl(least, 31)), 0));
}

/** Squares of the distances from four edges, the lowest bit of each 1 where the offset is inside of the edge. */
@inline
function squares(block: i32, x: v128, y: v128): v128 {
  const rx = f32x4.sub(x, v128.load(block));
  const ry = f32x4.sub(y, v128.load(block, FOOT_Y));
  const ux = v128.load(block, ALONG_X);
  const uy = v128.load(block, ALONG_Y);
  const back = v128.load(block, BACK);
  const ahead = v128.load(block, AHEAD);
  const along = f32x4.add(f32x4.mul(rx, ux), f32x4.mul(ry, uy));
  const t = f32x4.pmin(f32x4.pmax(along, back), ahead);
  const sx = f32x4.sub(rx, f32x4.mul(ux, t));
  const sy = f32x4.sub(ry, f32x4.mul(uy, t));
  const atStart = f32x4.le(along, back);
  const atEnd = f32x4.ge(along, ahead);
  const endX = v128.bitselect(v128.load(block, LAST_OUT_X), uy, atEnd);
  const endY = v128.bitselect(v128.load(block, LAST_OUT_Y), f32x4.neg(ux), atEnd);
  const outX = v128.bitselect(v128.load(block, FIRST_OUT_X), endX, atStart);
  const outY = v128.bitselect(v128.load(block, FIRST_OUT_Y), endY, atStart);
  const out = f32x4.add(f32x4.mul(sx, outX), f32x4.mul(sy, outY));
  const inside = i32x4.shr_u(f32x4.lt(out, f32x4.splat(0)), 31);
  const square = f32x4.add(f32x4.mul(sx, sx), f32x4.mul(sy, sy));
  return v128.or(v128.andnot(square, i32x4.splat(1)), inside);
}
