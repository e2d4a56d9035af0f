/**
 * Builds all that an engine needs for a book in slices, so that a page can paint, hear keys and stop it meanwhile.
 * HyperFormula takes the typed cells first, then the formulas, each after those that it rests on: so every formula
 * is calculated once. What comes of it is what an engine that is built at once has.
 */
import type { Book } from "../book/shape.ts";
import type { TimeLimits } from "./guards.ts";
import { Instance } from "./instance.ts";
import { Kinds } from "./kinds.ts";
import { type LayDesk, withOwnTime } from "./lay-desk.ts";
import { KeptUses } from "./uses-to-look-at.ts";

/** What an engine has of one book. */
export interface Prepared {
  readonly kinds: Kinds;
  readonly instance: Instance;
  readonly uses: KeptUses;
}

/** How many formulas are entered and calculated together. */
const TOGETHER = 1000;

/** Which share of the work is done when the kinds are found, and when all formulas are calculated. */
const SHARES = { kinds: 0.25, formulas: 0.9 } as const;

/** Gives, after each slice, which share of the work is done. A generator that is ended early leaves nothing behind. */
export function* prepare(book: Book, desk: LayDesk, limits: TimeLimits): Generator<number, Prepared> {
  const own = withOwnTime(desk, limits);
  const kinds = new Kinds(book);
  for (const _ of kinds.find()) yield 0;
  yield SHARES.kinds;
  const instance = new Instance(book, own.desk, own.limits, "values");
  let isWhole = false;
  try {
    yield SHARES.kinds;
    const order = kinds.inOrder();
    for (let from = 0; from < order.length && instance.has === "values"; from += TOGETHER) {
      instance.enter(order.slice(from, from + TOGETHER));
      yield SHARES.kinds + (SHARES.formulas - SHARES.kinds) * Math.min(1, (from + TOGETHER) / order.length);
    }
    instance.take(book, []);
    const uses = new KeptUses();
    for (const _ of uses.find(book)) yield SHARES.formulas;
    isWhole = true;
    return { kinds, instance, uses };
  } finally {
    if (!isWhole) instance.destroy();
  }
}
