/**
 * Finds one item a better place: places all over the cloth and near its own are judged, the best
 * few polished by steps that halve, the winner once more and finely.
 */
import { clampY, range, snap } from "./fit.ts";
import { itemAt, judge, lookEverywhere, lookNear, lossOf, put, settle, stanceAt } from "./judge.ts";
import {
  BEST,
  CLOTH,
  CLOTH_COUNT,
  CLOTH_SIZE,
  CLOTHS,
  FIRST_STANCE,
  HIGH,
  KEPT,
  LEFT,
  LIMIT,
  LOW,
  PLACE,
  PLACE_CLOTH,
  PLACE_STANCE,
  PLACE_X,
  PLACE_Y,
  RANGE,
  RIGHT,
  STANCE,
  STANCES_OF_KIND,
  TRUE,
  UNIT,
  X,
  Y,
} from "./layout.ts";
import { f, n, setN, toFloat, whole } from "./memory.ts";
import { polish, push, setPlace } from "./polish.ts";
import { random } from "./random.ts";

/** How many places are tried all over the cloth, near the item, and how many of them are polished. */
const WIDE = 10;
const NEAR = 4;
const POLISHED = 3;
/** How far from a place its neighbours are gathered while it is polished, as a share of the item's breadth. */
const NEARBY = 0.2;

function randomStance(item: i32): i32 {
  const count = n(item + STANCES_OF_KIND);
  return n(item + FIRST_STANCE) + whole(random() * toFloat(count));
}

/** Moves item i to the best place found; it stays when none is better. */
export function move(i: i32): void {
  const item = itemAt(i);
  setN(KEPT, 0);
  const here = lossOf(i);
  const stance = n(item + STANCE);
  const cloth = n(item + CLOTH);
  const x = f(item + X);
  const y = f(item + Y);
  keep(here, stance, cloth, x, y);
  lookEverywhere(i);
  const cloths = n(CLOTHS);
  const clothCount = n(CLOTH_COUNT);
  let total: f64 = 0;
  for (let c = 0; c < clothCount; c++) total += f(cloths + c * CLOTH_SIZE + LIMIT);
  for (let k = 0; k < WIDE; k++) {
    const s = randomStance(item);
    let c = 0;
    for (let at = random() * total; c + 1 < clothCount && at >= f(cloths + c * CLOTH_SIZE + LIMIT); c++)
      at -= f(cloths + c * CLOTH_SIZE + LIMIT);
    if (!range(s, c)) continue;
    const tx = snap(s, f(RANGE + LEFT) + random() * (f(RANGE + RIGHT) - f(RANGE + LEFT)));
    const ty = f(RANGE + LOW) + random() * (f(RANGE + HIGH) - f(RANGE + LOW));
    offer(i, s, c, tx, ty);
  }
  const size = sizeOf(stance);
  const spread = size * 0.5;
  for (let k = 0; k < NEAR; k++) {
    const s = k % 2 === 0 ? stance : randomStance(item);
    if (!range(s, cloth)) continue;
    // Another turn is tried about the middle of the item, not about its (0, 0).
    const cx = x + middleX(stance) - middleX(s);
    const cy = y + middleY(stance) - middleY(s);
    const tx = snap(s, cx + (random() * 2 - 1) * spread);
    const ty = clampY(cy + (random() * 2 - 1) * spread);
    offer(i, s, cloth, tx, ty);
  }
  const kept = n(KEPT);
  let best = BEST;
  for (let k = 0; k < kept; k++) {
    const place = BEST + k * PLACE;
    lookNear(i, n(place + PLACE_STANCE), f(place + PLACE_X), f(place + PLACE_Y), size * NEARBY);
    push(i, place);
    polish(i, place, size * 0.04, size * 0.005);
    if (f(place) < f(best)) best = place;
  }
  if (f(best) > 0) {
    lookNear(i, n(best + PLACE_STANCE), f(best + PLACE_X), f(best + PLACE_Y), size * NEARBY);
    push(i, best);
    polish(i, best, size * 0.005, f(UNIT) * 1e-5);
  }
  if (f(best) < here) {
    put(i, n(best + PLACE_STANCE), n(best + PLACE_CLOTH), f(best + PLACE_X), f(best + PLACE_Y));
    settle(i);
  }
}

function sizeOf(stance: i32): f64 {
  const own = stanceAt(stance) + TRUE;
  return Math.min(f(own + RIGHT) - f(own + LEFT), f(own + HIGH) - f(own + LOW));
}
function middleX(stance: i32): f64 {
  const own = stanceAt(stance) + TRUE;
  return (f(own + LEFT) + f(own + RIGHT)) / 2;
}
function middleY(stance: i32): f64 {
  const own = stanceAt(stance) + TRUE;
  return (f(own + LOW) + f(own + HIGH)) / 2;
}

function offer(i: i32, s: i32, c: i32, x: f64, y: f64): void {
  const kept = n(KEPT);
  const limit = kept < POLISHED ? Infinity : f(BEST + (kept - 1) * PLACE);
  const loss = judge(i, s, c, x, y, limit);
  if (loss < limit) keep(loss, s, c, x, y);
}

function keep(loss: f64, s: i32, c: i32, x: f64, y: f64): void {
  const kept = n(KEPT);
  let place = BEST + (kept < POLISHED ? kept : POLISHED - 1) * PLACE;
  if (kept < POLISHED) setN(KEPT, kept + 1);
  for (; place > BEST && f(place - PLACE) > loss; place -= PLACE) {
    const before = place - PLACE;
    setPlace(
      place,
      f(before),
      n(before + PLACE_STANCE),
      n(before + PLACE_CLOTH),
      f(before + PLACE_X),
      f(before + PLACE_Y),
    );
  }
  setPlace(place, loss, s, c, x, y);
}
