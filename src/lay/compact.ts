/** Compaction of a lay: every copy slides to the beginning of the cloth and down, as far as its neighbours let it. */
import type { LayQuestion } from "../../functions/lay.ts";
import type { Down } from "./bench.ts";
import type { Shape } from "./shape.ts";
import { type Faces, facesOf, slideRoom } from "./slide.ts";

interface Loose {
  readonly down: Down;
  readonly fixed: boolean;
  x: number;
  y: number;
}

const known = { x: new WeakMap<Shape["full"], Faces>(), y: new WeakMap<Shape["full"], Faces>() };

function faces({ full }: Shape, axis: "x" | "y"): Faces {
  let own = known[axis].get(full);
  if (!own) {
    own = facesOf(full, axis);
    known[axis].set(full, own);
  }
  return own;
}

/** The same copies, closer together. Cloths with an odd outline are left as they are. */
export function compact(
  downs: readonly Down[],
  question: LayQuestion,
  pins: readonly Down[],
  isOver: () => boolean = () => false,
): Down[] {
  const loose: Loose[] = downs.map((down) => ({ down, fixed: pins.includes(down), x: down.x, y: down.y }));
  question.cloths.forEach((cloth, i) => {
    if (cloth.outline || (cloth.flaws ?? []).length > 0) return;
    const own = loose.filter((one) => one.down.cloth === i);
    const eps = 1e-9 * cloth.width;
    for (let round = 0; round < 2; round++) {
      own.sort((a, b) => a.x + a.down.shape.fullBounds.left - b.x - b.down.shape.fullBounds.left);
      for (const one of own)
        if (!one.fixed && one.down.shape.match === null && !isOver()) one.x -= roomFor(one, own, "x", eps);
      own.sort((a, b) => a.y + a.down.shape.fullBounds.low - b.y - b.down.shape.fullBounds.low);
      for (const one of own) if (!one.fixed && !isOver()) one.y -= roomFor(one, own, "y", eps);
    }
  });
  return loose.map(({ down, x, y }) => ({ ...down, x, y }));
}

function roomFor(one: Loose, others: readonly Loose[], axis: "x" | "y", eps: number): number {
  const { shape } = one.down;
  const box = shape.fullBounds;
  let room = axis === "x" ? one.x + shape.bounds.left : one.y + shape.bounds.low;
  if (room <= eps) return Math.max(room, 0);
  const own = faces(shape, axis);
  for (const other of others) {
    if (other === one || room <= eps) continue;
    const { fullBounds: ob } = other.down.shape;
    const dx = one.x - other.x;
    const dy = one.y - other.y;
    if (axis === "x") {
      if (dy + box.low >= ob.high - eps || ob.low >= dy + box.high - eps) continue;
      if (dx + box.right < ob.left || dx + box.left - ob.right >= room) continue;
      room = slideRoom(own, faces(other.down.shape, "x"), dx, dy, room, eps);
    } else {
      if (dx + box.left >= ob.right - eps || ob.left >= dx + box.right - eps) continue;
      if (dy + box.high < ob.low || dy + box.low - ob.high >= room) continue;
      room = slideRoom(own, faces(other.down.shape, "y"), dy, dx, room, eps);
    }
  }
  return room;
}
