/**
 * Which pieces to cut from the cloth in stock, and which from cloth that is bought, so that the length bought
 * is least. The ways to share out the copies are tried in the order of a lower bound of the bought
 * length; where there are many copies, only ways near the best so far are tried. The number of lays is bounded.
 */
import { boundingBox, radians, signedArea } from "../geometry/strokes.ts";
import type { Lay, LayCloth, LayPiece, LayQuestion, NoLay, Placement, Planner } from "../lay.ts";
import { leastLength, shareOfCloth } from "./least-length.ts";

export interface LeastBought {
  /** The cloths in stock, and behind them the cloth to buy, whose length is open. */
  readonly question: LayQuestion;
  readonly lay: Lay;
  /** The length to buy; 0 when the stock is enough. */
  readonly length: number;
  /** Ways to share out the pieces that were tried. */
  readonly tried: number;
  /** All copies of the cut list. */
  readonly copies: number;
  /** Whether ways to share out the pieces were looked for; false of more than `MOST_COPIES`. */
  readonly isSearched: boolean;
  /** Whether it is proved that no way to share out the pieces needs less. */
  readonly isProved: boolean;
}

/** Copies of each piece that are bought, in the order of the question. */
type Counts = readonly number[];

/**
 * Lays in passing that one search may make, by the square of their copies. A lay on the stock that leaves
 * pieces out takes long, some 30 ms, so that there are at most 26 of them.
 */
const WORK = 8000;
const ON_STOCK = 300;
const ON_BOUGHT = 10;
/** More copies than this are shared out as the one lay on the stock has them. */
export const MOST_COPIES = 60;
/** Up to this many ways are all tried. */
const MOST_WAYS = 500;
const SAME = 1e-9;

const total = (counts: Counts): number => counts.reduce((sum, count) => sum + count, 0);

const areaOf = ({ outline }: LayPiece): number => Math.abs(signedArea(outline));

/** `stock` is the question for the cloths in stock, whose list may be empty; `bought` is the cloth that can be bought. */
export function leastBought(stock: LayQuestion, bought: LayCloth, plan: Planner): LeastBought | NoLay {
  const { pieces } = stock;
  const all = pieces.map(({ quantity }) => quantity);
  const some = (counts: Counts) =>
    pieces.flatMap((piece, i) => (counts[i]! > 0 ? [{ ...piece, quantity: counts[i]! }] : []));
  const less = (counts: Counts) => all.map((count, i) => count - counts[i]!);
  const onStock = (kept: Counts): LayQuestion => ({ ...stock, pieces: some(kept) });
  const onBought = (counts: Counts): LayQuestion => ({ ...stock, pieces: some(counts), cloths: [bought] });

  const first = stock.cloths.length > 0 ? plan(stock) : null;
  if (first && "refusal" in first) return first;
  let left: Counts = all;
  if (first) {
    const missing = new Map(first.missing);
    left = all.map((_, i) => missing.get(i) ?? 0);
  }
  const search = new Search(pieces, bought, plan, onStock, onBought);
  if (total(left) > 0) {
    search.take(left, true);
    search.take(all, true);
    if (first && total(all) <= MOST_COPIES) search.look(all);
  }
  const best = total(left) === 0 ? left : (search.best?.counts ?? left);

  // The lays of the best way are lays of the cell's own, which a search may shorten.
  const kept = less(best);
  const isFirst = best.every((count, i) => count === left[i]);
  const lays = [
    total(kept) === 0 || !first
      ? null
      : isFirst
        ? { lay: first, indices: all.map((_, i) => i) }
        : { lay: plan(onStock(kept)), indices: indicesOf(kept) },
    total(best) === 0 ? null : { lay: plan(onBought(best)), indices: indicesOf(best) },
  ];
  const cloths = [...stock.cloths, bought];
  const placements: Placement[] = [];
  const lengths = cloths.map(() => 0);
  for (const [i, part] of lays.entries()) {
    if (!part) continue;
    const { lay, indices } = part;
    if ("refusal" in lay) return lay;
    const from = i === 0 ? 0 : stock.cloths.length;
    for (const one of lay.placements)
      placements.push({ ...one, piece: indices[one.piece]!, cloth: one.cloth + from });
    lay.lengths.forEach((length, cloth) => {
      lengths[cloth + from] = length;
    });
  }
  const length = lengths.at(-1)!;
  const isProved = length <= leastToBuy(stock, bought) * (1 + 1e-6);
  const used = cloths.reduce((sum, { width }, i) => sum + width * lengths[i]!, 0);
  const area = pieces.reduce((sum, piece) => sum + piece.quantity * areaOf(piece), 0);
  return {
    question: { ...stock, cloths },
    lay: { placements, lengths, density: area / used, missing: [] },
    length,
    tried: Math.max(1, search.tried),
    copies: total(all),
    isSearched: total(left) === 0 || !first || total(all) <= MOST_COPIES,
    isProved,
  };
}

const indicesOf = (counts: Counts): number[] => counts.flatMap((count, i) => (count > 0 ? [i] : []));

/** A lower bound of the bought length, from the pieces that fit on no cloth in stock, and from the area that the stock lacks. */
function leastToBuy({ pieces, cloths, ...rest }: LayQuestion, bought: LayCloth): number {
  const needed = pieces.reduce((sum, piece) => sum + piece.quantity * areaOf(piece), 0);
  const there = cloths.reduce((sum, { width, length }) => sum + width * length!, 0);
  const alone = pieces.filter((piece) => !cloths.some((cloth) => mayLie(piece, cloth)));
  return Math.max(
    (needed - there) / bought.width,
    alone.length > 0 ? leastLength({ ...rest, pieces: alone, cloths: [bought] }) : 0,
  );
}

/** Whether a piece's box is within the cloth's in one of its turns. */
function mayLie({ outline, turns }: LayPiece, { width, length }: LayCloth): boolean {
  return turns.some((turn) => {
    const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
    const { left, right, low, high } = boundingBox(
      outline.map(([x, y]): [number, number] => [x * cos - y * sin, x * sin + y * cos]),
    );
    return right - left <= length! * (1 + 1e-6) && high - low <= width * (1 + 1e-6);
  });
}

/** Whether the pieces have more area than the cloths, or a piece fits on no cloth. */
const isTooMuch = (question: LayQuestion): boolean =>
  question.pieces.length > 0 &&
  (shareOfCloth(question) > 1 + SAME ||
    question.pieces.some((piece) => !question.cloths.some((cloth) => mayLie(piece, cloth))));

class Search {
  best: { readonly counts: Counts; readonly length: number; readonly area: number } | null = null;
  tried = 0;
  #work = 0;
  readonly #seen = new Set<string>();

  constructor(
    readonly pieces: readonly LayPiece[],
    readonly bought: LayCloth,
    readonly plan: Planner,
    readonly onStock: (kept: Counts) => LayQuestion,
    readonly onBought: (counts: Counts) => LayQuestion,
  ) {}

  get isOver(): boolean {
    return this.#work > WORK;
  }

  #lay(question: LayQuestion): Lay | NoLay {
    const copies = question.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    this.#work += (question.cloths[0] === this.bought ? ON_BOUGHT : ON_STOCK) + copies ** 2;
    return this.plan({ ...question, passing: true });
  }

  /** A lower bound of the length that these copies take when they are bought. */
  #least(counts: Counts): number {
    return total(counts) === 0 ? 0 : leastLength(this.onBought(counts));
  }

  #isWorse(length: number, area: number): boolean {
    if (!this.best) return false;
    const difference = length - this.best.length;
    const same = SAME * Math.max(length, this.best.length);
    return difference > same || (difference > -same && area >= this.best.area * (1 - SAME));
  }

  /** Tries one way; `isKnown` says that the rest is known to fit on the stock. Returns whether the way is the best so far. */
  take(counts: Counts, isKnown = false): boolean {
    const key = counts.join(" ");
    if (this.#seen.has(key)) return false;
    this.#seen.add(key);
    const area = this.pieces.reduce((sum, piece, i) => sum + counts[i]! * areaOf(piece), 0);
    if (this.#isWorse(this.#least(counts), area)) return false;
    const stock = this.onStock(this.pieces.map(({ quantity }, i) => quantity - counts[i]!));
    if (!isKnown && isTooMuch(stock)) return false;
    this.tried += 1;
    if (!isKnown && stock.pieces.length > 0) {
      const kept = this.#lay(stock);
      if ("refusal" in kept || kept.missing.length > 0) return false;
    }
    const rest = total(counts) === 0 ? null : this.#lay(this.onBought(counts));
    if (rest && "refusal" in rest) return false;
    const length = rest ? rest.lengths[0]! : 0;
    if (this.#isWorse(length, area)) return false;
    this.best = { counts, length, area };
    return true;
  }

  look(all: Counts): void {
    const ways = all.reduce((product, count) => product * (count + 1), 1);
    if (ways <= MOST_WAYS) this.#all(all);
    if (!this.isOver) this.#near(all);
  }

  /** Tries all ways, those with the least lower bound first. */
  #all(all: Counts): void {
    let ways: number[][] = [[]];
    for (const count of all)
      ways = ways.flatMap((way) => Array.from({ length: count + 1 }, (_, i) => [...way, i]));
    const sorted = ways
      .map((counts) => ({ counts, least: this.#least(counts) }))
      .toSorted((a, b) => a.least - b.least || total(a.counts) - total(b.counts));
    for (const { counts, least } of sorted) {
      if (this.isOver || (this.best && least > this.best.length * (1 + SAME))) return;
      this.take(counts);
    }
  }

  /** Tries ways that differ from the best so far in one copy, or in two copies that change places, until none of them is better. */
  #near(all: Counts): void {
    for (let found = true; found && !this.isOver; ) {
      found = false;
      const from = this.best?.counts ?? all;
      const ways = from.flatMap((count, i) =>
        count === 0
          ? []
          : [
              from.with(i, count - 1),
              ...from.flatMap((other, j) =>
                j !== i && other < all[j]! ? [from.with(i, count - 1).with(j, other + 1)] : [],
              ),
            ],
      );
      for (const way of ways) {
        if (this.isOver) return;
        if (!this.take(way)) continue;
        found = true;
        break;
      }
    }
  }
}
