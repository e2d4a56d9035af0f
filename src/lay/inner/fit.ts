/** Where a stance, a shape in one of its turns, may lie: within its cloth's width and the length now allowed, on the repeat when there is one. */
import { stanceAt } from "./judge.ts";
import {
  CLOTH_SIZE,
  CLOTHS,
  HIGH,
  LEFT,
  LIMIT,
  LOW,
  MATCH,
  PHASE,
  RANGE,
  REPEAT,
  RIGHT,
  TRUE,
  WIDTH,
} from "./layout.ts";
import { f, isMissing, missing, n, setBox } from "./memory.ts";

/** Sets the bounds for a stance on a cloth; false when it does not fit at all. */
export function range(stance: i32, cloth: i32): bool {
  const own = stanceAt(stance) + TRUE;
  const at = n(CLOTHS) + cloth * CLOTH_SIZE;
  const width = f(at + WIDTH);
  const left = -f(own + LEFT);
  const low = -f(own + LOW);
  let right = f(at + LIMIT) - f(own + RIGHT);
  let high = width - f(own + HIGH);
  const eps = 1e-9 * width;
  const fits = !(right < left - eps || high < low - eps);
  if (fits && right < left) right = left;
  if (fits && high < low) high = low;
  setBox(RANGE, left, low, right, high);
  return fits && (!isMatched(stance) || !isMissing(snap(stance, left)));
}

export function isMatched(stance: i32): bool {
  return !isMissing(f(stanceAt(stance) + MATCH));
}

/** The nearest x in the bounds, on the repeat where the stance is matched; NaN when the bounds hold no such x. */
export function snap(stance: i32, x: f64): f64 {
  const left = f(RANGE + LEFT);
  const right = f(RANGE + RIGHT);
  let inside = x > left ? x : left;
  inside = Math.min(inside, right);
  const match = f(stanceAt(stance) + MATCH);
  if (isMissing(match)) return inside;
  const from = f(PHASE) - match;
  const repeat = f(REPEAT);
  const first = Math.ceil((left - from) / repeat - 1e-9);
  const last = Math.floor((right - from) / repeat + 1e-9);
  if (first > last) return missing();
  const k = Math.min(last, Math.max(first, Math.floor((inside - from) / repeat + 0.5)));
  return from + k * repeat;
}

export function clampY(y: f64): f64 {
  const low = f(RANGE + LOW);
  const high = f(RANGE + HIGH);
  const inside = y > low ? y : low;
  return Math.min(inside, high);
}
