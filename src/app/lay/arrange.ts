/** Laying by hand: moving, turning and pinning the copies of a lay, one at a time. */
import type { LayQuestion, Placement } from "../../../functions/lay.ts";
import type { FreePlaces } from "../../lay/free-places.ts";
import { boundingBox, turned, wholeTurn } from "../../lay/outline.ts";

/** A copy's own key within its question. */
export const copyKey = ({ piece, copy }: Pick<Placement, "piece" | "copy">): string => `${piece} ${copy}`;

/** "sleeve 2", or "front" where there is only one. */
export function copyName(question: LayQuestion, { piece, copy }: Pick<Placement, "piece" | "copy">): string {
  const { name, quantity } = question.pieces[piece]!;
  return quantity > 1 ? `${name} ${copy + 1}` : name;
}

/** The placements with one of them replaced. */
export const replaced = (placements: readonly Placement[], one: Placement): Placement[] =>
  placements.map((old) => (copyKey(old) === copyKey(one) ? one : old));

export const boxOf = ({ pieces }: LayQuestion, { piece, turn, x, y }: Placement) =>
  boundingBox(turned(pieces[piece]!.outline, turn, x, y));

/** A step along or across the cloth; what is in the way is passed over. Null when there is nowhere to go. */
export function stepped(
  freePlaces: FreePlaces,
  question: LayQuestion,
  placements: readonly Placement[],
  from: Placement,
  [dx, dy]: readonly [number, number],
): Placement | null {
  const size = Math.hypot(dx, dy);
  const reach = question.cloths[from.cloth]!.width + Math.max(...placements.map(({ x }) => x)) + 2 * size;
  for (let times = 1; times * size <= 2 * reach; times *= 2) {
    const wanted = { ...from, x: from.x + dx * times, y: from.y + dy * times };
    const there = freePlaces.nearest(placements, wanted);
    if (there && (there.x - from.x) * dx + (there.y - from.y) * dy > 0.25 * size * size) return there;
  }
  return null;
}

/** Turned to the next turn the grain allows, about the middle of its box; null when there is no other. */
export function turnedRound(
  freePlaces: FreePlaces,
  question: LayQuestion,
  placements: readonly Placement[],
  from: Placement,
): Placement | null {
  const turns = [...new Set(question.pieces[from.piece]!.turns.map(wholeTurn))].sort((a, b) => a - b);
  const next = turns.find((turn) => turn > wholeTurn(from.turn)) ?? turns[0]!;
  if (next === wholeTurn(from.turn)) return null;
  const old = boxOf(question, from);
  const now = boxOf(question, { ...from, turn: next });
  return freePlaces.nearest(placements, {
    ...from,
    turn: next,
    x: from.x + (old.left + old.right - now.left - now.right) / 2,
    y: from.y + (old.low + old.high - now.low - now.high) / 2,
  });
}

/** The copy at or after the chosen one in reading order along the cloth, `by` steps on. */
export function neighbour(
  question: LayQuestion,
  placements: readonly Placement[],
  chosen: string | null,
  by: number,
): string | null {
  if (placements.length === 0) return null;
  const order = [...placements].sort((a, b) => {
    const [p, q] = [boxOf(question, a), boxOf(question, b)];
    return a.cloth - b.cloth || p.left - q.left || p.low - q.low;
  });
  const now = order.findIndex((one) => copyKey(one) === chosen);
  return copyKey(order[now < 0 ? 0 : (now + by + order.length) % order.length]!);
}
