/** Makes a kept place better: pushes it straight out of what it overlaps, then goes by steps that halve. */
import { clampY, isMatched, range, snap } from "./fit.ts";
import { contacts, judge } from "./judge.ts";
import { PLACE_CLOTH, PLACE_STANCE, PLACE_X, PLACE_Y, PUSH, PUSH_BY, PUSH_SIZE, PUSH_Y } from "./layout.ts";
import { f, n, setF, setN, whole } from "./memory.ts";
import { random } from "./random.ts";

/** How often in a row an item is pushed straight out of what it overlaps. */
const PUSHES = 2;

export function setPlace(place: i32, loss: f64, s: i32, c: i32, x: f64, y: f64): void {
  setF(place, loss);
  setF(place + PLACE_X, x);
  setF(place + PLACE_Y, y);
  setN(place + PLACE_STANCE, s);
  setN(place + PLACE_CLOTH, c);
}

/**
 * Pushes a place straight out of what it overlaps, out of one or of two at once: onto the border
 * of their no-fit polygons, or a crossing of two of them, where a tight lay has its pieces.
 */
export function push(i: i32, place: i32): void {
  const s = n(place + PLACE_STANCE);
  const c = n(place + PLACE_CLOTH);
  if (isMatched(s) || !range(s, c)) return;
  for (let turn = 0; turn < PUSHES && f(place) > 0; turn++) {
    const px = f(place + PLACE_X);
    const py = f(place + PLACE_Y);
    const count = contacts(i, s, c, px, py);
    const end = PUSH + count * PUSH_SIZE;
    let best = f(place);
    let x = px;
    let y = py;
    for (let a = PUSH; a < end; a += PUSH_SIZE)
      for (let b = a; b < end; b += PUSH_SIZE) {
        let vx = f(a) * f(a + PUSH_BY);
        let vy = f(a + PUSH_Y) * f(a + PUSH_BY);
        if (a !== b) {
          const det = f(a) * f(b + PUSH_Y) - f(a + PUSH_Y) * f(b);
          if (Math.abs(det) < 0.05) continue;
          vx = (f(a + PUSH_BY) * f(b + PUSH_Y) - f(b + PUSH_BY) * f(a + PUSH_Y)) / det;
          vy = (f(a) * f(b + PUSH_BY) - f(b) * f(a + PUSH_BY)) / det;
        }
        const tx = snap(s, px + vx);
        const ty = clampY(py + vy);
        const loss = judge(i, s, c, tx, ty, best);
        if (loss < best) {
          best = loss;
          x = tx;
          y = ty;
        }
      }
    if (best >= f(place)) return;
    setPlace(place, best, s, c, x, y);
  }
}

/** Steps along the axes and the diagonals from a place, longer after a gain, halved after none. */
export function polish(i: i32, place: i32, first: f64, last: f64): void {
  const s = n(place + PLACE_STANCE);
  const c = n(place + PLACE_CLOTH);
  if (!range(s, c)) return;
  const matched = isMatched(s);
  let best = f(place);
  let x = f(place + PLACE_X);
  let y = f(place + PLACE_Y);
  let step = first;
  while (step > last && best > 0) {
    const way = whole(random() * 4);
    const dx = way === 1 || matched ? 0 : step;
    const dy = way === 0 && !matched ? 0 : way === 3 ? -step : step;
    let tx = matched ? x : snap(s, x + dx);
    let ty = clampY(y + dy);
    let loss = judge(i, s, c, tx, ty, best);
    if (!(loss < best)) {
      tx = matched ? x : snap(s, x - dx);
      ty = clampY(y - dy);
      loss = judge(i, s, c, tx, ty, best);
    }
    if (loss < best) {
      best = loss;
      x = tx;
      y = ty;
      step *= 1.1;
    } else step *= 0.5;
  }
  setPlace(place, best, s, c, x, y);
}
