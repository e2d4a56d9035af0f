/** The waist seam that dips, worked another way than functions/drafting/body-cone.ts does: by vectors from the apex and by bisection. */

/** A body and the seam on it; `more` is what the hip has beyond the waist. */
export interface Dipping {
  readonly waist: number;
  readonly more: number;
  readonly drop: number;
  readonly front: number;
  readonly back: number;
  readonly start: number;
}

const at = (radius: number, turn: number) => [radius * Math.cos(turn), radius * Math.sin(turn)] as const;

/**
 * Where the straight part begins and ends, in shares of the girth from centre back, and the level
 * of the seam at any share. The end nearer the apex moves towards the other until the straight
 * line moves away from the apex there, so that it stays on the far side of the level line.
 */
export function dippingSeam({ waist, more, drop, front, back, start }: Dipping) {
  const angle = more / drop;
  const straight = [start / 2, 0.5] as [number, number];
  if (angle === 0) {
    const level = (share: number) =>
      share <= start / 2 ? back : back + ((front - back) * (share - start / 2)) / (0.5 - start / 2);
    return { straight, level };
  }
  const tip = waist / angle;
  const radii = [Math.abs(tip + back), Math.abs(tip + front)] as const;
  const turn = (share: number) => Math.abs(angle) * share;
  const near = radii[0] <= radii[1] ? 0 : 1;
  const away = (share: number) => {
    const [nx, ny] = at(radii[near], turn(share));
    const [fx, fy] = at(radii[1 - near]!, turn(straight[1 - near]!));
    return (fx - nx) * nx + (fy - ny) * ny >= 0;
  };
  if (!away(straight[near])) {
    let [risen, clear] = [straight[near], straight[1 - near]!];
    for (let i = 0; i < 60; i += 1) {
      const middle = (risen + clear) / 2;
      if (away(middle)) clear = middle;
      else risen = middle;
    }
    straight[near] = clear;
  }
  const [from, to] = straight;
  const [r, s, span] = [tip + back, tip + front, angle * (to - from)];
  const level = (share: number) => {
    if (share <= from) return back;
    if (share >= to) return front;
    const gone = angle * (share - from);
    return (r * s * Math.sin(span)) / (r * Math.sin(gone) + s * Math.sin(span - gone)) - tip;
  };
  return { straight, level };
}

/** A place on the standing cone: a level down the slope and a share of the way round. */
export function standing({ waist, more, drop }: Dipping, level: number, share: number) {
  const slope = more / (2 * Math.PI) / drop;
  const radius = waist / (2 * Math.PI) + slope * level;
  const turn = 2 * Math.PI * share;
  return [radius * Math.cos(turn), radius * Math.sin(turn), level * Math.sqrt(1 - slope * slope)] as const;
}

/** The tape laid over the standing cone along a line given by its level at each share of the girth. */
export function taped(
  body: Dipping,
  from: number,
  to: number,
  level: (share: number) => number,
  steps = 2000,
): number {
  let [sum, last] = [0, standing(body, level(from), from)];
  for (let i = 1; i <= steps; i += 1) {
    const share = from + ((to - from) * i) / steps;
    const next = standing(body, level(share), share);
    sum += Math.hypot(next[0] - last[0], next[1] - last[1], next[2] - last[2]);
    last = next;
  }
  return sum;
}
