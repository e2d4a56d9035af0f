/**
 * The cap of a set-in sleeve, fitted to its armhole.
 *
 *                     crown
 *                   .--o--.
 *                .´        `.
 *      back    .´            \     front
 *            .´               \
 *       __.-´                  `-.__
 *     o- - - - - - - - - - - - - - - o    the width of the sleeve
 *     underarm                 underarm
 *
 * Each half is one shape, stretched to its width across and to the height of the cap: two cubic
 * curves that meet with one direction and no bend at the balance point, level at the underarm and
 * level at the crown, so that the halves run into each other. The seams of a sleeve leave the underarm straight
 * down (`upright-seam.ts`), so that they close without a corner. The front is hollowed deeper below its balance point, the back is fuller above it (common practice).
 *
 * That the fit has one solution at most: along a half, u runs across from 0 to 1 and v up from 0 to 1,
 * neither ever turning back. The half is ∫ √((width·u′)² + (height·v′)²) long. This grows with the
 * width and with the height, from the width itself (height 0) or the height itself (width 0) without
 * end. So a front half of a given length has one height for each width up to its length, and the
 * height falls as the width grows. The back half has that same height, and the rest of the sleeve's width, which
 * falls too: its length falls as the front half grows wider, and passes the length wanted once.
 */

import { reaching } from "../geometry/increasing-root.ts";
import { type Curve, type Edge, type Point, strokeLength } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { Refusal } from "../refusal.ts";

/** Where a half passes from hollow to full, as shares of its width and height from the underarm, and how steeply in these shares. */
interface HalfShape {
  readonly balance: Point;
  readonly steepness: number;
}

const FRONT: HalfShape = { balance: [0.5, 0.47], steepness: 2.5 };
const BACK: HalfShape = { balance: [0.4, 0.38], steepness: 2.2 };

export interface Cap {
  /** From the line between the underarm points up to the crown. */
  readonly height: number;
  /** Straight across from the crown to the underarm point in front, and at the back. */
  readonly front: number;
  readonly back: number;
}

/** How long the two halves of a cap are along their curves, and how wide the sleeve is at the underarm. */
interface CapMeasures {
  readonly front: number;
  readonly back: number;
  readonly width: number;
}

/**
 * A half from the underarm at (0, 0) to the crown at (`width`, −`height`). Each curve's handles lie on
 * the tangent at the balance point, which takes the bend away there, and on the level at its other end.
 */
function half({ balance: [u, v], steepness }: HalfShape, width: number, height: number): Curve[] {
  const at = (across: number, up: number): Point => [width * across, -height * up];
  const low = u - v / steepness;
  const high = u + (1 - v) / steepness;
  const balance = at(u, v);
  return [
    { kind: "curve", from: at(0, 0), c1: at(low, 0), c2: at((low + u) / 2, v / 2), to: balance },
    { kind: "curve", from: balance, c1: at((high + u) / 2, (1 + v) / 2), c2: at(high, 1), to: at(1, 1) },
  ];
}

const halfLength = (shape: HalfShape, width: number, height: number): number =>
  half(shape, width, height).reduce((sum, curve) => sum + strokeLength(curve), 0);

/** The height at which a half of this width is as long as wanted; 0 for one as wide as it is long. */
const heightFor = (shape: HalfShape, long: number, width: number): number =>
  reaching((height) => halfLength(shape, width, height), long, 0, long);

/** The cap whose halves are as long as wanted and together as wide as the sleeve. Refuses a sleeve too wide or too narrow for it. */
export function fitCap({ front, back, width }: CapMeasures): Cap {
  const whole = front + back;
  if (width >= whole * (1 - 1e-6)) {
    throw new Refusal(
      (say) =>
        phrase`bicep must be less than the cap, which is ${say(whole, width)} long with its ease, not ${say(width, whole)}: the cap has to rise above the straight line across the sleeve`,
    );
  }
  // No half may be higher than it is long: the narrowest sleeve has the shorter half upright.
  const [shorter, longer, other] = front < back ? [front, back, BACK] : [back, front, FRONT];
  const narrowest = reaching((across) => halfLength(other, across, shorter), longer, 0, longer);
  if (width <= narrowest + 1e-6 * whole) {
    throw new Refusal(
      (say) =>
        phrase`bicep must be more than ${say(narrowest, width)} for a cap with halves of ${say(front)} and ${say(back)}, not ${say(width, narrowest)}: the cap would stand straight up`,
    );
  }
  const heightOf = (across: number) => heightFor(FRONT, front, across);
  const off = (across: number) => -halfLength(BACK, width - across, heightOf(across));
  const across = reaching(off, -back, 0, Math.min(front, width));
  return { height: heightOf(across), front: across, back: width - across };
}

/** The halves of the cap from underarm to crown, the crown at (0, 0), the back at the left. */
export function capHalves({ height, front, back }: Cap): { front: Edge; back: Edge } {
  const placed = (curves: readonly Curve[], width: number, side: 1 | -1): Edge =>
    curves.map(({ from, c1, c2, to }): Curve => {
      const move = ([x, y]: Point): Point => [side * (width - x), y + height];
      return { kind: "curve", from: move(from), c1: move(c1), c2: move(c2), to: move(to) };
    });
  return {
    front: placed(half(FRONT, front, height), front, 1),
    back: placed(half(BACK, back, height), back, -1),
  };
}

/** The cap from the back underarm over the crown to the front underarm. */
export function capEdge(cap: Cap): Edge {
  const { front, back } = capHalves(cap);
  return [...back, ...reverseEdge(front)];
}
