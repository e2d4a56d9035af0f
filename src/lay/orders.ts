/** The orders in which copies are laid: sorted by size, and small changes to an order. */
import { seeded } from "./random.ts";
import type { Shape } from "./shape.ts";

export interface Copy {
  readonly piece: number;
  readonly copy: number;
  /** The only turn it may lie in, counted in its list of shapes; left out, any turn that its grain allows. */
  readonly turn?: number;
}

export type Order = readonly Copy[];

/** Two orders with the same key lay the same outlines in the same turns. */
export const orderKey = (order: Order): string =>
  order.map(({ piece, turn }) => (turn === undefined ? piece : `${piece}.${turn}`)).join(" ");

/** Large before small, by area, by the area of the box, by length, by breadth and by the longer of the two. */
export function sortedOrders(copies: readonly Copy[], shapes: readonly Shape[][]): Order[] {
  const measures = shapes.map((turns) => {
    const { left, right, low, high } = turns[0]!.bounds;
    const [long, wide] = [right - left, high - low];
    return [turns[0]!.area, long * wide, long, wide, Math.max(long, wide)];
  });
  // What differs by rounding only, as a piece and its mirror image do, is equal: else another unit gives another order.
  const larger = (a: number, b: number): number => (Math.abs(b - a) > 1e-8 * Math.max(a, b) ? b - a : 0);
  return [0, 1, 2, 3, 4].map((m) =>
    [...copies].sort(
      (a, b) =>
        larger(measures[a.piece]![m]!, measures[b.piece]![m]!) || a.piece - b.piece || a.copy - b.copy,
    ),
  );
}

/** Gives orders that differ a little from the one given; always the same ones after one another. */
export function neighbours(shapes: readonly Shape[][]): (order: Order) => Order {
  const random = seeded(20_261);
  const some = (n: number) => Math.floor(random() * n);
  return (order) => {
    const next = [...order];
    for (let changes = 1 + some(3); changes > 0; changes--) {
      const i = some(next.length);
      const what = random();
      if (what < 0.4) {
        const j = some(next.length);
        [next[i], next[j]] = [next[j]!, next[i]!];
      } else if (what < 0.8) {
        const [moved] = next.splice(i, 1);
        next.splice(some(next.length + 1), 0, moved!);
      } else {
        const { piece, copy, turn } = next[i]!;
        const turns = shapes[piece]!.length;
        next[i] = turn === undefined && turns > 1 ? { piece, copy, turn: some(turns) } : { piece, copy };
      }
    }
    return next;
  };
}
