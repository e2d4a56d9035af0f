/**
 * How badly two items overlap: the innermost step of the search, taken tens of millions of times. Here in plain
 * TypeScript, one number at a time; where the loop becomes WebAssembly, simd/clash.as is built in place of this file.
 * Both take the same steps in the same order and precision, so that their answers are the same to the last bit.
 */
import { listAt } from "./depth.ts";
import {
  AHEAD,
  ALONG_X,
  ALONG_Y,
  BACK,
  BLOCK,
  BLOCK_COUNT,
  BLOCKS,
  COS,
  FIELD,
  FIELD_GAP,
  FIRST_OUT_X,
  FIRST_OUT_Y,
  FOOT_X,
  FOOT_Y,
  HIGH,
  LAST_OUT_X,
  LAST_OUT_Y,
  LEFT,
  LOW,
  OUTSIDE,
  PAIR,
  PAIRS,
  PROBE,
  RIGHT,
  SIN,
  SIZE,
  STANCE,
  STANCE_COUNT,
  TOLERANCE,
  X,
  Y,
} from "./layout.ts";
import { f, n, prepare, single } from "./memory.ts";

/**
 * How badly this stance, where the probe is, overlaps an item; 0 when clear. The depth alone would not tell a long
 * overlap from a short one of the same depth, so it is multiplied by how much the boxes share, and clashes of large
 * pieces count more.
 */
export function clash(item: i32, stance: i32): f64 {
  const other = n(item + STANCE);
  const pair = n(PAIRS) + (other * n(STANCE_COUNT) + stance) * PAIR;
  let field = n(pair + FIELD);
  if (field === 0) field = prepare(other, stance);
  const dx = f(PROBE + X) - f(item + X);
  const dy = f(PROBE + Y) - f(item + Y);
  const c = f(pair + COS);
  const s = f(pair + SIN);
  const x = c * dx + s * dy;
  const y = c * dy - s * dx;
  const list = listAt(field, x, y);
  if (list === OUTSIDE) return 0;
  const deep = f(field + FIELD_GAP) - signedDistance(list, x, y);
  if (!(deep > f(TOLERANCE))) return 0;
  const wide = Math.min(f(PROBE + RIGHT), f(item + RIGHT)) - Math.max(f(item + LEFT), f(PROBE + LEFT));
  const tall = Math.min(f(PROBE + HIGH), f(item + HIGH)) - Math.max(f(item + LOW), f(PROBE + LOW));
  return Math.sqrt(deep * (wide + tall)) * f(pair + SIZE);
}

/** Distance of the offset from the nearest edge of the list; below 0 where it is inside. */
function signedDistance(list: number, x: number, y: number): number {
  const px = one(x - f(list));
  const py = one(y - f(list + 8));
  const blocks = list + BLOCKS;
  const end = blocks + n(list + BLOCK_COUNT) * BLOCK;
  let least = Infinity;
  for (let block = blocks; block < end; block += BLOCK)
    for (let edge = block; edge < block + 16; edge += 4) least = Math.min(least, square(edge, px, py));
  const away = one(Math.sqrt(least));
  bits[0] = least;
  return (whole[0]! & 1) === 1 ? -away : away;
}

/** Rounds to single precision. */
const one = Math.fround;
/** The bits of a number in single precision. */
const bits = new Float32Array(1);
const whole = new Int32Array(bits.buffer);

/** Square of the distance from an edge, its lowest bit 1 where the offset is inside of the edge. */
function square(edge: number, x: number, y: number): number {
  const rx = one(x - single(edge + FOOT_X));
  const ry = one(y - single(edge + FOOT_Y));
  const ux = single(edge + ALONG_X);
  const uy = single(edge + ALONG_Y);
  const back = single(edge + BACK);
  const ahead = single(edge + AHEAD);
  const along = one(one(rx * ux) + one(ry * uy));
  const t = Math.min(Math.max(along, back), ahead);
  const sx = one(rx - one(ux * t));
  const sy = one(ry - one(uy * t));
  const atStart = along <= back;
  const atEnd = along >= ahead;
  const outX = atStart ? single(edge + FIRST_OUT_X) : atEnd ? single(edge + LAST_OUT_X) : uy;
  const outY = atStart ? single(edge + FIRST_OUT_Y) : atEnd ? single(edge + LAST_OUT_Y) : -ux;
  const out = one(one(sx * outX) + one(sy * outY));
  bits[0] = one(one(sx * sx) + one(sy * sy));
  whole[0] = (whole[0]! & ~1) | (out < 0 ? 1 : 0);
  return bits[0]!;
}
