/**
 * The lay that is there at once: pieces go down one after the other, each where it ends nearest
 * to the beginning of the cloth, holes between earlier ones included; several orders are tried
 * and the best lay kept. It works on the outlines themselves, cut into slabs (slices.ts), and
 * ends with exact slides. The same question always gets the same answer.
 */

import { shareOut } from "../../functions/cutting/least-bought.ts";
import type { Lay, LayQuestion, Placement, Planner } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { answerFrom, isBetter, missingArea } from "./answer.ts";
import { Bench, type Down } from "./bench.ts";
import { checkLay } from "./check.ts";
import { compact } from "./compact.ts";
import { isSmall, layExactly } from "./exact.ts";
import { type Copy, neighbours, type Order, orderKey, sortedOrders } from "./orders.ts";
import { refusalOf } from "./refuse.ts";
import { inRows } from "./rows.ts";
import { type Shape, shapesOf } from "./shape.ts";
import { withoutTwins } from "./twins.ts";

/**
 * Work allowed for n copies, in stretches looked at (some 30 million are a second): 4 ms for 10
 * copies, 40 ms for 40, 1 s for 300.
 */
const workFor = (copies: number): number =>
  0.5 * Math.max(14_000 + 350 * copies ** 2, Math.min(3_000_000, 150_000 + 2500 * copies ** 2));

export const quickLay: Planner = (question) => quickLayWith(question, quickLay);

/** The same; cloth that falls short is laid once more without an end. `open` may remember that lay, and those of a sharing out. */
export function quickLayWith(question: LayQuestion, open: Planner): ReturnType<Planner> {
  const { sharing } = question;
  if (sharing) return shareOut({ ...question, sharing }, open);
  const refusal = refusalOf(question);
  if (refusal) return { refusal };
  return firstLay(question, 1, open);
}

/** The quick lay of a strip without an end, or when the time is over before there is one, boxes in rows. */
export function quickLayUntil(question: LayQuestion, isOver: () => boolean): ReturnType<Planner> {
  const refusal = refusalOf(question);
  if (refusal) return { refusal };
  return firstLay(question, 1, undefined, isOver);
}

/**
 * The quick lay of a question that is known to make sense, or why no lay can be made. `work` above 1
 * tries more orders, and finer slabs, in about so many times the time.
 */
export function firstLay(
  asked: LayQuestion,
  work = 1,
  open: Planner = (other) => firstLay(other, work),
  isOver: () => boolean = () => false,
): Lay | { readonly refusal: string } {
  const { question, split } = withoutTwins(asked);
  const shapes = shapesOf(question);
  if (isOver()) return split(inRows(question, shapes));
  const pins: Down[] = (question.pinned ?? []).map((pin) => ({
    ...pin,
    shape: shapes[pin.piece]!.find((s) => (s.turn - pin.turn) % 360 === 0)!,
  }));
  const clash = pinClash(question);
  if (clash) return { refusal: clash };
  const bench = new Bench(question, shapes, pins, work, isOver);
  const pinned = new Set(pins.map((pin) => `${pin.piece} ${pin.copy}`));
  const copies: Copy[] = question.pieces.flatMap((piece, i) =>
    Array.from({ length: piece.quantity }, (_, copy) => ({ piece: i, copy })).filter(
      ({ copy }) => !pinned.has(`${i} ${copy}`),
    ),
  );
  // Orders are compared as the slabs have them; only the best is pulled together.
  const order = bestOrder(question, bench, copies, shapes, work * workFor(copies.length));
  if (!order) {
    bench.release();
    return split(inRows(question, shapes));
  }
  let best = better(question, null, compact(order.down, question, pins, isOver));
  // Slabs are a little wider than what they hold: on a repeat they can send a row a whole repeat too far.
  const rows =
    question.repeat > 0 && isEndless(question) && pins.length === 0 ? inRows(question, shapes) : null;
  if (rows && isBetter(question, rows, best.lay)) best = { ...best, lay: rows };
  if (isSmall(question, shapes)) best = exactly(question, copies, shapes, best);
  if (best.lay.missing.length > 0) best = closer(question, { copies, shapes, bench, pins, work, open }, best);
  bench.release();
  return split(best.lay);
}

/**
 * The best of several orders: first large before small by several measures, then, from the best
 * of these on, each order differs a little from the best before it, until the work allowed is
 * done. Null when the time is over before one of them is laid.
 */
function bestOrder(
  question: LayQuestion,
  bench: Bench,
  copies: readonly Copy[],
  shapes: readonly Shape[][],
  limit: number,
): Tried | null {
  let best: Tried | null = null;
  let from: Order | null = null;
  const seen = new Set<string>();
  /** How many orders had been tried when the best was found. */
  let bestAt = 0;
  const take = (order: Order) => {
    const down = bench.lay(order, atMost(question, best?.lay));
    if (!down) return;
    const now = better(question, best, down);
    // An order that is as good as the best is gone on from: the next may differ from it in more.
    if (now !== best || !isBetter(question, best.lay, answerFrom(question, down.map(placementOf))))
      from = order;
    if (now !== best) bestAt = seen.size;
    best = now;
  };
  const isNew = (order: Order) => {
    const key = orderKey(order);
    return seen.has(key) ? false : seen.add(key) !== undefined;
  };
  for (const order of sortedOrders(copies, shapes)) if (isNew(order)) take(order);
  if (copies.length < 2 || !from) return best;
  const next = neighbours(shapes);
  const goesOn = (tries: number) =>
    bench.work <= limit &&
    tries < MOST_ORDERS &&
    seen.size <= IN_VAIN * bestAt + MOST_IN_VAIN &&
    !bench.isOver();
  for (let tries = 0; goesOn(tries); tries++) {
    const order = next(from);
    if (isNew(order)) take(order);
  }
  return best;
}

/** Once this many times as many orders were tried as it took to find the best, and these more, a better one is not waited for. */
const IN_VAIN = 2;
const MOST_IN_VAIN = 100;

/** Of few copies there are not many orders, and where nothing fits an order is no work. */
const MOST_ORDERS = 400;

/** An order that leaves out more than the best lay, or comes out longer, is given up as soon as it shows. */
function atMost(question: LayQuestion, best: Lay | undefined): { spare: number; within: number } {
  if (!best) return { spare: Infinity, within: Infinity };
  const [cloth, ...others] = question.cloths;
  const isOpen = cloth!.length === null && others.length === 0;
  return { spare: missingArea(question, best) * (1 + 1e-9), within: isOpen ? best.lengths[0]! : Infinity };
}

interface Tried {
  readonly down: readonly Down[];
  readonly lay: Lay;
}

/** The better of what is there and another try. */
function better(question: LayQuestion, best: Tried | null, down: readonly Down[]): Tried {
  const lay = answerFrom(question, down.map(placementOf));
  return !best || isBetter(question, lay, best.lay) ? { down, lay } : best;
}

function exactly(
  question: LayQuestion,
  copies: readonly Copy[],
  shapes: readonly Shape[][],
  found: Tried,
): Tried {
  let best = found;
  for (const [first, ...others] of sortedOrders(copies, shapes).slice(0, EXACT_ORDERS))
    shapes[first!.piece]!.forEach((_, turn) => {
      best = better(question, best, layExactly(question, shapes, [{ ...first!, turn }, ...others]));
    });
  return best;
}

/** Whether the question has one cloth, without an end and without flaws. */
function isEndless({ cloths }: LayQuestion): boolean {
  const [cloth, ...others] = cloths;
  return others.length === 0 && cloth!.length === null && !cloth!.outline && !cloth!.flaws?.length;
}

/** Orders tried without slabs. */
const EXACT_ORDERS = 2;

/** How far past its end a cloth may be filled before all is pulled together, in slabs. */
const LENIENT = [2, 5, 10];

/**
 * What found no place in slabs may yet find one when all is pulled together: a cloth is filled a
 * little past its end, pulled, and what still sticks out is taken off. A single cloth is laid as
 * if it had no end, too.
 */
function closer(
  question: LayQuestion,
  { copies, shapes, bench, pins, work, open }: Trying,
  found: Tried,
): Tried {
  const limit = bench.work + work * workFor(copies.length);
  let best = found;
  const next = neighbours(shapes);
  const sorted = sortedOrders(copies, shapes);
  let order = sorted.shift()!;
  for (let tries = 0; tries < MOST_ORDERS; tries++) {
    for (const lenient of LENIENT) {
      const { spare } = atMost(question, best.lay);
      const down = bench.lay(order, { lenient, spare });
      if (down) best = better(question, best, withinLength(question, compact(down, question, pins)));
    }
    if (best.lay.missing.length === 0 || bench.work > limit || order.length < 2) break;
    order = sorted.shift() ?? next(order);
  }
  const [cloth, ...others] = question.cloths;
  if (best.lay.missing.length === 0 || others.length > 0 || cloth!.length === null) return best;
  const endless = open({ ...question, cloths: [{ ...cloth!, length: null }] });
  if ("refusal" in endless || endless.lengths[0]! > cloth!.length * (1 + 1e-9)) return best;
  return { ...best, lay: endless };
}

interface Trying {
  readonly copies: readonly Copy[];
  readonly shapes: readonly Shape[][];
  readonly bench: Bench;
  readonly pins: readonly Down[];
  readonly work: number;
  /** Lays a question without an end to its cloth. */
  readonly open: Planner;
}

function withinLength({ cloths }: LayQuestion, down: readonly Down[]): Down[] {
  return down.filter(({ cloth, x, shape }) => {
    const { length } = cloths[cloth]!;
    return length === null || x + shape.bounds.right <= length * (1 + 1e-9);
  });
}

/** Why the pinned copies can not all stay, or null: the checker looks at them alone. */
function pinClash(question: LayQuestion): string | null {
  const { pinned = [] } = question;
  if (pinned.length === 0) return null;
  const [fault] = checkLay(question, answerFrom(question, pinned));
  return fault ? phrase`${fault}, pinned as it is: move or unpin it` : null;
}

function placementOf({ piece, copy, cloth, turn, x, y }: Down): Placement {
  return { piece, copy, cloth, turn, x, y };
}
