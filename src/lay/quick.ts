/**
 * The lay that is there at once: pieces go down one after the other, each where it ends nearest
 * to the beginning of the cloth, holes between earlier ones included; several orders are tried
 * and the best lay kept. It works on the outlines themselves, cut into slabs (slices.ts), and
 * ends with exact slides. The same question always gets the same answer.
 */
import type { Lay, LayQuestion, Placement, Planner } from "../../functions/lay.ts";
import { answerFrom, isBetter, missingArea } from "./answer.ts";
import { Bench, type Down } from "./bench.ts";
import { checkLay } from "./check.ts";
import { isSmall, layExactly } from "./exact.ts";
import { pull } from "./pull.ts";
import { seeded } from "./random.ts";
import { plain, refusalOf } from "./refuse.ts";
import { type Shape, shapesOf } from "./shape.ts";

/** Work allowed for n copies, in stretches looked at (some 30 million are a second): 2 ms for 10 copies, 1 s for 300. */
const workFor = (copies: number): number => 14_000 + 350 * copies ** 2;

export const quickLay: Planner = (question) => quickLayWith(question, quickLay);

/** The same; cloth that falls short is laid once more without an end, and `open` may remember that lay. */
export function quickLayWith(question: LayQuestion, open: Planner): ReturnType<Planner> {
  const refusal = refusalOf(question);
  if (refusal) return { refusal };
  return firstLay(question, shapesOf(question), 1, open);
}

/**
 * The quick lay of a question that is known to make sense, or why there is none. `work` above 1
 * tries more orders, and finer slabs, in about so many times the time.
 */
export function firstLay(
  question: LayQuestion,
  shapes: readonly Shape[][],
  work = 1,
  open: Planner = (other) => firstLay(other, shapes, work),
): Lay | { readonly refusal: string } {
  const pins: Down[] = (question.pinned ?? []).map((pin) => ({
    ...pin,
    shape: shapes[pin.piece]!.find((s) => (s.turn - pin.turn) % 360 === 0)!,
  }));
  const clash = pinClash(question);
  if (clash) return { refusal: clash };
  const bench = new Bench(question, shapes, pins, work);
  const pinned = new Set(pins.map((pin) => `${pin.piece} ${pin.copy}`));
  const copies: Copy[] = question.pieces.flatMap((piece, i) =>
    Array.from({ length: piece.quantity }, (_, copy) => ({ piece: i, copy })).filter(
      ({ copy }) => !pinned.has(`${i} ${copy}`),
    ),
  );
  // Orders are compared as the slabs have them; only the best is pulled together.
  let best: Tried | null = null;
  const limit = work * workFor(copies.length);
  for (const { order, firstTurn } of orders(copies, shapes)) {
    if (best && bench.work > limit) break;
    const down = bench.lay(order, { firstTurn, ...atMost(question, best?.lay) });
    if (down) best = better(question, best, down);
    if (order.length < 2) break;
  }
  best = better(question, null, pull(best!.down, question, pins));
  if (isSmall(question, shapes)) best = exactly(question, copies, shapes, best);
  if (best.lay.missing.length > 0) best = closer(question, { copies, shapes, bench, pins, work, open }, best);
  return best.lay;
}

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
  let rounds = 0;
  for (const { order } of orders(copies, shapes)) {
    if (rounds++ === EXACT_ORDERS) break;
    shapes[order[0]!.piece]!.forEach((_, firstTurn) => {
      best = better(question, best, layExactly(question, shapes, order, firstTurn));
    });
  }
  return best;
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
  for (const { order, firstTurn } of orders(copies, shapes)) {
    for (const lenient of LENIENT) {
      const { spare } = atMost(question, best.lay);
      const down = bench.lay(order, { firstTurn, lenient, spare });
      if (down) best = better(question, best, withinLength(question, pull(down, question, pins)));
    }
    if (best.lay.missing.length === 0 || bench.work > limit || order.length < 2) break;
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
  return fault ? `${fault}, pinned as it is: move or unpin it` : null;
}

export interface Copy {
  readonly piece: number;
  readonly copy: number;
}

function placementOf({ piece, copy, cloth, turn, x, y }: Down): Placement {
  return { piece, copy, cloth, turn, x, y };
}

interface Order {
  readonly order: Copy[];
  /** The turn of the first copy, by number; null leaves it to the place it finds. */
  readonly firstTurn: number | null;
}

/** Orders to try, each once: of a few copies many come out the same. Without end while there are others. */
function* orders(copies: readonly Copy[], shapes: readonly Shape[][]): Generator<Order> {
  const seen = new Set<string>();
  let again = 0;
  for (const one of everyOrder(copies, shapes)) {
    const key = `${one.firstTurn} ${one.order.map(({ piece }) => piece).join(" ")}`;
    if (!seen.has(key)) yield one;
    else if (++again > MOST_REPEATS) return;
    seen.add(key);
  }
}

const MOST_REPEATS = 100;

/**
 * Large before small by several measures, then the same a little shuffled and with the first copy
 * turned by turns, without end.
 */
function* everyOrder(copies: readonly Copy[], shapes: readonly Shape[][]): Generator<Order> {
  const measures = shapes.map((turns) => {
    const { left, right, low, high } = turns[0]!.bounds;
    const area = turns[0]!.area;
    return [
      area,
      (right - left) * (high - low),
      right - left,
      high - low,
      Math.max(right - left, high - low),
    ];
  });
  // What differs by rounding only, as a piece and its mirror image do, is equal: else another unit gives another order.
  const larger = (a: number, b: number): number => (Math.abs(b - a) > 1e-8 * Math.max(a, b) ? b - a : 0);
  const by = (m: number) =>
    [...copies].sort(
      (a, b) =>
        larger(measures[a.piece]![m]!, measures[b.piece]![m]!) || a.piece - b.piece || a.copy - b.copy,
    );
  for (let m = 0; m < 5; m++) yield { order: by(m), firstTurn: null };
  const random = seeded(20_261);
  for (let round = 0; ; round++) {
    const base = by(round % 2 === 0 ? 0 : 4);
    // Each copy moves a few places up or down.
    const reach = Math.max(2, copies.length * 0.2);
    const keys = new Map(base.map((copy, i) => [copy, i + reach * (random() - 0.5) * 2]));
    const order = base.sort((a, b) => keys.get(a)! - keys.get(b)!);
    yield { order, firstTurn: round % 4 === 3 ? round >> 2 : null };
  }
}

/** By how much the copies that found no place miss, in one sentence per kind of piece. */
export function shortfall(question: LayQuestion, lay: Lay): string[] {
  return lay.missing.map(([piece, count]) => {
    const what = question.pieces[piece]!;
    const shapes = shapesOf({ ...question, pieces: [what] })[0]!;
    const long = Math.min(...shapes.map(({ bounds }) => bounds.right - bounds.left));
    const lengths = question.cloths.map((cloth, i) => (cloth.length ?? Infinity) - lay.lengths[i]!);
    const room = Math.max(0, ...lengths);
    const names = count === 1 ? `1 ${what.name} finds` : `${count} × ${what.name} find`;
    return `${names} no place: it is ${plain(long)} long, and past the last pieces ${plain(room)} is left`;
  });
}
