/** Where a place along one edge of a seam meets the other edge. */

/** An edge, the edge it is sewn to, and the part of the first edge over which the difference is eased in evenly. */
export interface Eased {
  readonly first: number;
  readonly second: number;
  readonly from: number;
  readonly to: number;
}

/** The share of the ease that lies before a place along the first edge. */
export const easedShare = ({ from, to }: Eased, at: number): number =>
  Math.min(1, Math.max(0, (at - from) / (to - from)));

/** The place along the second edge that meets `at` along the first, both from the same end. */
export const matchPlace = (eased: Eased, at: number): number =>
  at - (eased.first - eased.second) * easedShare(eased, at);

/** The place along the first edge that meets `at` along the second: `matchPlace` the other way, by bisection. */
export function matchBack(eased: Eased, at: number): number {
  let [low, high] = [0, eased.first];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (matchPlace(eased, middle) < at) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
