/** Judges places of an item: how much it would overlap the others there. One pass over the items, boxes first. */

import { clash } from "./clash.ts";
import { depth } from "./depth.ts";
import {
  ABOUT_X,
  ABOUT_Y,
  CLASHES,
  CLOTH,
  COS,
  FIELD,
  GAP,
  HIGH,
  ITEM,
  ITEM_COUNT,
  ITEMS,
  LEFT,
  LOSSES,
  LOW,
  PAIR,
  PAIRS,
  PROBE,
  PUSH,
  PUSH_BY,
  PUSH_SIZE,
  PUSH_Y,
  REACH,
  RIGHT,
  SEEN,
  SEEN_COUNT,
  SIN,
  STANCE,
  STANCE_COUNT,
  STANCE_SIZE,
  STANCES,
  WAY_X,
  WAY_Y,
  WEIGHTS,
  X,
  Y,
} from "./layout.ts";
import { f, meet, n, prepare, setBox, setF, setN } from "./memory.ts";

const MOST_PUSHES = 6;

/** Address of item i. */
export function itemAt(i: i32): i32 {
  return n(ITEMS) + i * ITEM;
}
export function stanceAt(s: i32): i32 {
  return n(STANCES) + s * STANCE_SIZE;
}

/** Puts item i down; overlaps are not counted again until `settle`. */
export function put(i: i32, stance: i32, cloth: i32, x: f64, y: f64): void {
  const item = itemAt(i);
  const outer = stanceAt(stance);
  const gap = f(GAP);
  setF(item + X, x);
  setF(item + Y, y);
  setN(item + STANCE, stance);
  setN(item + CLOTH, cloth);
  setBox(
    item,
    f(outer + LEFT) + x - gap,
    f(outer + LOW) + y - gap,
    f(outer + RIGHT) + x + gap,
    f(outer + HIGH) + y + gap,
  );
}

function setProbe(stance: i32, x: f64, y: f64, by: f64): void {
  const outer = stanceAt(stance);
  setBox(
    PROBE,
    f(outer + LEFT) + x - by,
    f(outer + LOW) + y - by,
    f(outer + RIGHT) + x + by,
    f(outer + HIGH) + y + by,
  );
  setF(PROBE + X, x);
  setF(PROBE + Y, y);
}

/** From now on places of item i all over the cloths are judged. */
export function lookEverywhere(i: i32): void {
  const own = itemAt(i);
  const first = n(ITEMS);
  const end = first + n(ITEM_COUNT) * ITEM;
  const seen = n(SEEN);
  let at = seen;
  for (let item = first; item < end; item += ITEM)
    if (item !== own) {
      setN(at, item);
      at += 4;
    }
  setN(SEEN_COUNT, (at - seen) >> 2);
  setF(REACH, Infinity);
}

/**
 * From now on places of item i in this stance near one are judged, so that far items need not be looked
 * at. A place further off than `reach` is judged rightly, too: then the items are gathered anew.
 */
export function lookNear(i: i32, stance: i32, x: f64, y: f64, reach: f64): void {
  setProbe(stance, x, y, reach);
  const own = itemAt(i);
  const first = n(ITEMS);
  const end = first + n(ITEM_COUNT) * ITEM;
  const seen = n(SEEN);
  let at = seen;
  for (let item = first; item < end; item += ITEM)
    if (meet(item, PROBE) && item !== own) {
      setN(at, item);
      at += 4;
    }
  setN(SEEN_COUNT, (at - seen) >> 2);
  setF(REACH, reach);
  setF(ABOUT_X, x);
  setF(ABOUT_Y, y);
}

function isFar(x: f64, y: f64): bool {
  const reach = f(REACH);
  return Math.abs(x - f(ABOUT_X)) > reach || Math.abs(y - f(ABOUT_Y)) > reach;
}

/** Weighted loss of item i at a place; breaks off as soon as it reaches `limit`. */
export function judge(i: i32, stance: i32, cloth: i32, x: f64, y: f64, limit: f64): f64 {
  if (isFar(x, y)) lookNear(i, stance, x, y, f(REACH));
  setProbe(stance, x, y, 0);
  const seen = n(SEEN);
  const end = seen + (n(SEEN_COUNT) << 2);
  const items = n(ITEMS);
  const weights = n(WEIGHTS) + ((i * n(ITEM_COUNT)) << 3);
  let sum: f64 = 0;
  for (let k = seen; k < end; k += 4) {
    const item = n(k);
    if (!meet(item, PROBE)) continue;
    if (n(item + CLOTH) !== cloth) continue;
    const loss = clash(item, stance);
    if (loss > 0) {
      sum += loss * f(weights + ((item - items) >> 3));
      if (sum >= limit) {
        // What made one place too dear is likely to make the next one so: it is asked first from now on.
        setN(k, n(seen));
        setN(seen, item);
        break;
      }
    }
  }
  return sum;
}

/** Gathers up to `MOST_PUSHES` overlaps of item i at a place: the shortest way out of each. Returns how many. */
export function contacts(i: i32, stance: i32, cloth: i32, x: f64, y: f64): i32 {
  if (isFar(x, y)) lookNear(i, stance, x, y, f(REACH));
  setProbe(stance, x, y, 0);
  const seen = n(SEEN);
  const end = seen + (n(SEEN_COUNT) << 2);
  let count = 0;
  for (let k = seen; k < end && count < MOST_PUSHES; k += 4) {
    const item = n(k);
    if (!meet(item, PROBE)) continue;
    if (n(item + CLOTH) !== cloth) continue;
    const other = n(item + STANCE);
    const pair = n(PAIRS) + (other * n(STANCE_COUNT) + stance) * PAIR;
    let field = n(pair + FIELD);
    if (field === 0) field = prepare(other, stance);
    const c = f(pair + COS);
    const s = f(pair + SIN);
    const dx = x - f(item + X);
    const dy = y - f(item + Y);
    const deep = depth(field, c * dx + s * dy, c * dy - s * dx);
    if (deep <= 0) continue;
    const push = PUSH + count * PUSH_SIZE;
    setF(push, c * f(WAY_X) - s * f(WAY_Y));
    setF(push + PUSH_Y, s * f(WAY_X) + c * f(WAY_Y));
    setF(push + PUSH_BY, deep);
    count++;
  }
  return count;
}

/** Counts the losses of item i with all others anew. */
export function settle(i: i32): void {
  const count = n(ITEM_COUNT);
  const own = itemAt(i);
  const stance = n(own + STANCE);
  const cloth = n(own + CLOTH);
  const x = f(own + X);
  const y = f(own + Y);
  setProbe(stance, x, y, 0);
  const losses = n(LOSSES);
  const clashes = n(CLASHES);
  for (let j = 0; j < count; j++) {
    const item = itemAt(j);
    let now: f64 = 0;
    if (j !== i && cloth >= 0 && n(item + CLOTH) === cloth && meet(item, PROBE)) now = clash(item, stance);
    const at = losses + ((i * count + j) << 3);
    if (now > 0 !== f(at) > 0) {
      const one = now > 0 ? 1 : -1;
      setN(clashes + (i << 2), n(clashes + (i << 2)) + one);
      setN(clashes + (j << 2), n(clashes + (j << 2)) + one);
    }
    setF(at, now);
    setF(losses + ((j * count + i) << 3), now);
  }
}

/** Weighted loss of item i where it lies, from the counted losses. */
export function lossOf(i: i32): f64 {
  const count = n(ITEM_COUNT);
  const row = (i * count) << 3;
  const end = row + (count << 3);
  const losses = n(LOSSES);
  const weights = n(WEIGHTS);
  let sum: f64 = 0;
  for (let k = row; k < end; k += 8) sum += f(losses + k) * f(weights + k);
  return sum;
}
