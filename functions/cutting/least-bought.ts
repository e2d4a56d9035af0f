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
  /** All copies of the cut list. */
  readonly copies: number;
  /** The copies that are not too large for every cloth in stock. */
  readonly mayLie: number;
  /** Whether ways to share out the pieces were looked for; false of more than `MOST_COPIES`. */
  readonly isSearched: boolean;
  /** Whether it is proved that no way to share out the pieces needs less. */
  isProved(): boolean;
}

/** Copies of each piece that are bought, in the order of the question. */
type Counts = readonly number[];

/**
 * The work of the lays that one search may make: about 0.2 s. A quick lay on bought cloth takes as long as the square
 * of its copies; one on the stock, where it looks long for a place for the last piece, as long as their number.
 */
const WORK = 4000;
const ON_STOCK = 50;
const ON_BOUGHT = 10;
/** More copies than this are shared out as the one lay on the stock has them. */
export const MOST_COPIES = 60;
/** Up to this many ways are all tried. */
const MOST_WAYS = 500;
const SAME = 1e-9;

const total = (counts: Counts): number => counts.reduce((sum, count) => sum + count, 0);

const areaOf = ({ outline }: LayPiece): number => Math.abs(signedArea(outline));

/** What some copies of a question's pieces ask: on the cloths in stock, or on the bought cloth. */
function waysOf(stock: LayQuestion, bought: LayCloth) {
  const { pieces, cloths } = stock;
  const all: Counts = pieces.map(({ quantity }) => quantity);
  const some = (counts: Counts) =>
    pieces.flatMap((piece, i) => (counts[i]! > 0 ? [{ ...piece, quantity: counts[i]! }] : []));
  return {
    all,
    /** The copies whose box is within one of the cloths in stock. */
    may: pieces.map((piece): number =>
      cloths.some((cloth) => mayLie(piece, cloth)) ? piece.quantity : 0,
    ) as Counts,
    onStock: (kept: Counts): LayQuestion => ({ ...stock, pieces: some(kept) }),
    onBought: (counts: Counts): LayQuestion => ({ ...stock, pieces: some(counts), cloths: [bought] }),
  };
}

const less = (from: Counts, counts: Counts): Counts => from.map((count, i) => count - counts[i]!);

/**
 * The answer to a question with `sharing`: tries ways to share out the copies, each with a quick lay. It takes too
 * long for a page that goes on while its maker types.
 */
export function shareOut(
  { sharing, passing, ...stock }: LayQuestion & { readonly sharing: NonNullable<LayQuestion["sharing"]> },
  plan: Planner,
): Lay {
  const { bought, left } = sharing;
  const ways = waysOf(stock, bought);
  const search = new Search(stock.pieces, bought, plan, ways);
  search.take(left, true);
  search.take(ways.all, true);
  if (total(ways.all) <= MOST_COPIES) search.look();
  const counts = search.best?.counts ?? left;
  return {
    placements: [],
    lengths: stock.cloths.map(() => 0),
    density: 0,
    missing: counts.flatMap((count, i) => (count > 0 ? [[i, count] as const] : [])),
  };
}

/** `stock` is the question for the cloths in stock, whose list may be empty; `bought` is the cloth that can be bought. */
export function leastBought(stock: LayQuestion, bought: LayCloth, plan: Planner): LeastBought | NoLay {
  const { pieces } = stock;
  const { all, may, onStock, onBought } = waysOf(stock, bought);
  const laid = indicesOf(may);
  const first = laid.length > 0 ? plan({ ...onStock(may), start: true }) : null;
  if (first && "refusal" in first) return first;
  const out = new Map(first?.missing.map(([piece, count]) => [laid[piece], count]));
  const left: Counts = all.map((count, i) => count - may[i]! + (out.get(i) ?? 0));
  let best: Counts = left;
  if (first && total(left) > 0) {
    const shared = plan({ ...stock, passing: true, sharing: { bought, left } });
    if ("refusal" in shared) return shared;
    const counts = new Map(shared.missing);
    best = all.map((_, i) => counts.get(i) ?? 0);
  }

  // The lays of the best way are lays of the cell's own, which a search may shorten. The copies that the first lay has
  // room for may find none in a lay of their own.
  const kept = less(all, best);
  const own = total(kept) > 0 ? plan(onStock(kept)) : null;
  const isOwn = own && ("refusal" in own || own.missing.length === 0);
  const lays = [
    own && (isOwn ? { lay: own, indices: indicesOf(kept) } : { lay: first!, indices: laid }),
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
  const used = cloths.reduce((sum, { width }, i) => sum + width * lengths[i]!, 0);
  const area = pieces.reduce((sum, piece) => sum + piece.quantity * areaOf(piece), 0);
  return {
    question: { ...stock, cloths },
    lay: { placements, lengths, density: area / used, missing: [] },
    length,
    copies: total(all),
    mayLie: total(may),
    isSearched: total(left) === 0 || !first || total(all) <= MOST_COPIES,
    isProved: () => length <= leastToBuy(stock, bought) * (1 + 1e-6),
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
  #work = 0;
  readonly #seen = new Set<string>();

  constructor(
    readonly pieces: readonly LayPiece[],
    readonly bought: LayCloth,
    readonly plan: Planner,
    readonly ways: ReturnType<typeof waysOf>,
  ) {}

  get isOver(): boolean {
    return this.#work > WORK;
  }

  #lay(question: LayQuestion): Lay | NoLay {
    const copies = question.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    this.#work += question.cloths[0] === this.bought ? ON_BOUGHT + copies ** 2 : ON_STOCK * copies;
    return this.plan({ ...question, passing: true });
  }

  /** A lower bound of the length that these copies take when they are bought. */
  #least(counts: Counts): number {
    return total(counts) === 0 ? 0 : leastLength(this.ways.onBought(counts));
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
    const stock = this.ways.onStock(less(this.ways.all, counts));
    if (!isKnown && isTooMuch(stock)) return false;
    if (!isKnown && stock.pieces.length > 0) {
      const kept = this.#lay(stock);
      if ("refusal" in kept || kept.missing.length > 0) return false;
    }
    const rest = total(counts) === 0 ? null : this.#lay(this.ways.onBought(counts));
    if (rest && "refusal" in rest) return false;
    const length = rest ? rest.lengths[0]! : 0;
    if (this.#isWorse(length, area)) return false;
    this.best = { counts, length, area };
    return true;
  }

  look(): void {
    const ways = this.ways.may.reduce((product, count) => product * (count + 1), 1);
    if (ways <= MOST_WAYS) this.#all();
    if (!this.isOver) this.#near();
  }

  /** Tries all ways, those with the least lower bound first. */
  #all(): void {
    const { all, may } = this.ways;
    let ways: number[][] = [[]];
    for (const [piece, count] of may.entries())
      ways = ways.flatMap((way) =>
        Array.from({ length: count + 1 }, (_, i) => [...way, all[piece]! - count + i]),
      );
    const sorted = ways
      .map((counts) => ({ counts, least: this.#least(counts) }))
      .toSorted((a, b) => a.least - b.least || total(a.counts) - total(b.counts));
    for (const { counts, least } of sorted) {
      if (this.isOver || (this.best && least > this.best.length * (1 + SAME))) return;
      this.take(counts);
    }
  }

  /** Tries ways that differ from the best so far in one copy, or in two copies that change places, until none of them is better. */
  #near(): void {
    const { all, may } = this.ways;
    for (let found = true; found && !this.isOver; ) {
      found = false;
      const from = this.best?.counts ?? all;
      const ways = from.flatMap((count, i) =>
        count === all[i]! - may[i]!
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
