/**
 * One order of copies laid without any slabs: each on that touching place where it ends soonest.
 * For a few outlines of few points it is quick, and finds what fits only to a hair: gores whose
 * slanted sides lie on one another across the full width.
 */
import type { LayCloth, LayQuestion } from "../../functions/lay.ts";
import type { Down } from "./bench.ts";
import type { Order } from "./orders.ts";
import type { Shape } from "./shape.ts";
import { Touch } from "./touch.ts";

/** More points than this on all copies together, and slabs are the quicker way. */
const MOST_POINTS = 60;
const MOST_COPIES = 10;
const TOUCHING = 2e-7;

/** Whether the question is plain and small enough to be laid this way. */
export function isSmall(question: LayQuestion, shapes: readonly (readonly Shape[])[]): boolean {
  const { pieces, cloths, repeat, pinned = [] } = question;
  if (repeat > 0 || pinned.length > 0) return false;
  if (cloths.some(({ outline, flaws = [] }) => outline || flaws.length > 0)) return false;
  const copies = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  const points = pieces.reduce((sum, { quantity }, i) => sum + quantity * shapes[i]![0]!.points.length, 0);
  return copies <= MOST_COPIES && points <= MOST_POINTS;
}

/** The copies in this order; those that find no place are left out. */
export function layExactly(
  question: LayQuestion,
  shapes: readonly (readonly Shape[])[],
  order: Order,
): Down[] {
  const down: Down[] = [];
  const slack = TOUCHING * Math.max(...question.cloths.map(({ width }) => width));
  const hints = question.cloths.map(() => new Map<Shape, number>());
  order.forEach(({ piece, copy, turn }) => {
    const own = shapes[piece]!;
    const turns = turn === undefined ? own : [own[turn]!];
    for (let cloth = 0; cloth < question.cloths.length; cloth += 1) {
      let best: Down | null = null;
      const lying = down.filter((one) => one.cloth === cloth);
      for (const shape of turns) {
        const most = best ? best.x + best.shape.bounds.right - shape.bounds.right + slack : Infinity;
        const place = soonest(question.cloths[cloth]!, lying, shape, hints[cloth]!, most, slack);
        if (!place) continue;
        const now = { piece, copy, cloth, turn: shape.turn, x: place[0], y: place[1], shape };
        if (!best || endsSooner(now, best, slack)) best = now;
      }
      if (!best) continue;
      down.push(best);
      break;
    }
  });
  return down;
}

/**
 * Where the shape ends soonest along the cloth, with x at most `most`, and lowest across it among
 * such places. The cloth is looked through in windows, from where the last copy of the shape lies.
 */
function soonest(
  { width, length }: LayCloth,
  down: readonly Down[],
  shape: Shape,
  hints: Map<Shape, number>,
  most: number,
  slack: number,
): readonly [number, number] | null {
  const { left, right, low, high } = shape.bounds;
  const lying = down.map(({ shape: { full }, x, y }) => ({ outline: full, x, y }));
  const past = down.reduce((end, one) => Math.max(end, one.x + one.shape.fullBounds.right), 0);
  const end = length ?? past - shape.fullBounds.left + right;
  const span = { left: -left, right: end - right, low: -low, high: width - high };
  if (span.right < span.left - slack || span.high < span.low - slack) return null;
  span.right = Math.max(span.left, span.right);
  span.high = Math.max(span.low, span.high);
  const touch = new Touch(shape.full, lying, span, slack);
  const step = (right - left) / 4;
  for (let from = hints.get(shape) ?? span.left; from <= Math.min(span.right, most); from += step) {
    const found = touch
      .places({ ...span, left: from - slack, right: Math.min(from + step, most) }, [from, span.low])
      .sort((a, b) => (Math.abs(a[0] - b[0]) > slack ? a[0] - b[0] : a[1] - b[1]))
      .find(([x, y]) => touch.isFree(x, y));
    if (found) {
      hints.set(shape, found[0]);
      return found;
    }
  }
  return null;
}

function endsSooner(a: Down, b: Down, slack: number): boolean {
  const ends = ({ x, shape }: Down) => x + shape.bounds.right;
  const tops = ({ y, shape }: Down) => y + shape.bounds.high;
  return Math.abs(ends(a) - ends(b)) > slack ? ends(a) < ends(b) : tops(a) < tops(b) - slack;
}
