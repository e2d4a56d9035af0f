/** The table the quick lay works on: every cloth cut into slabs, and one order of copies laid down. */
import type { LayQuestion, Placement } from "../../functions/lay.ts";
import { ANY_COLUMN, Columns } from "./columns.ts";
import type { Order } from "./orders.ts";
import { type Bounds, boundingBox } from "./outline.ts";
import type { Shape } from "./shape.ts";
import { type Slices, slice } from "./slices.ts";

/** A copy laid down, with the shape it lies in. */
export interface Down extends Placement {
  readonly shape: Shape;
}

interface Sliced {
  readonly shape: Shape;
  readonly slices: Slices;
}

interface Manner {
  readonly lenient?: number;
  /** On a cloth without an end: the length that may not be exceeded. */
  readonly within?: number;
  /** The area of copies without a place from which on the order is given up. */
  readonly spare?: number;
}

/** Slabs along an average piece: more where copies are few and a slanted side counts for more. */
const slabsPerPiece = (copies: number): number => Math.max(22, Math.min(32, 1800 / copies), 150 / copies);
/** At most so many over the whole length expected. */
const MOST_SLABS = 1500;

/** No cloth has more columns. */
const FARTHEST = 1e9;

/** Tables that no bench works on: a lay is made some hundred times in a second, and a table is large. */
const spare: Columns[] = [];

export class Bench {
  readonly columns: Columns[];
  /** Width of a slab. */
  readonly h: number;
  private readonly half: number;
  private readonly sliced = new Map<Shape, Sliced>();
  private readonly margins: Bounds[];
  private lenience = 0;
  private readonly pad: number;
  private within = Infinity;

  constructor(
    private readonly question: LayQuestion,
    private readonly shapes: readonly Shape[][],
    private readonly pins: readonly Down[],
    work: number,
    /** Whether the time is over: an order is then given up. */
    readonly isOver: () => boolean,
  ) {
    this.half = question.gap / 2;
    this.h = this.slabWidth(work);
    this.pad = Math.max(
      ...shapes
        .flat()
        .map(({ bounds, fullBounds }) =>
          Math.max(bounds.low - fullBounds.low, fullBounds.high - bounds.high),
        ),
    );
    this.columns = question.cloths.map(() => spare.pop() ?? new Columns());
    for (const one of this.columns) one.probes = 0;
    this.margins = question.cloths.map(({ width, length, outline }) => {
      const full = { left: 0, right: length ?? Infinity, low: 0, high: width };
      if (!outline) return full;
      const own = boundingBox(outline);
      return {
        left: Math.max(0, own.left),
        right: Math.min(full.right, own.right),
        low: Math.max(0, own.low),
        high: Math.min(width, own.high),
      };
    });
  }

  /** Leaves its table to the next bench: nothing is laid on this one any more. */
  release(): void {
    spare.push(...this.columns.splice(0));
  }

  /** Stretches looked at so far. */
  get work(): number {
    return this.columns.reduce((sum, c) => sum + c.probes, 0);
  }

  private slabWidth(work: number): number {
    let area = 0;
    let long = 0;
    let copies = 0;
    this.question.pieces.forEach(({ quantity }, i) => {
      const { bounds, area: own } = this.shapes[i]![0]!;
      area += own * quantity;
      long += (bounds.right - bounds.left) * quantity;
      copies += quantity;
    });
    const widest = Math.max(...this.question.cloths.map((c) => c.width));
    const fine = work > 1 ? 2 : 1;
    const h = Math.max(long / copies / slabsPerPiece(copies), area / widest / 0.7 / MOST_SLABS) / fine;
    const { repeat } = this.question;
    return repeat > 0 ? repeat / Math.ceil(repeat / h) : h;
  }

  private slicesOf(shape: Shape): Sliced {
    let known = this.sliced.get(shape);
    if (!known) {
      const { left, right } = boundingBox(shape.inSlabs);
      // With a repeat the match point lies on a slab's side, so that whole slabs keep it matched.
      const origin =
        shape.match === null ? left : shape.match - Math.ceil((shape.match - left) / this.h) * this.h;
      const count = Math.max(1, Math.ceil((right - origin) / this.h - 1e-9));
      known = { shape, slices: slice(shape.inSlabs, origin, this.h, count) };
      this.sliced.set(shape, known);
    }
    return known;
  }

  /** What pins, flaws and the odd outline take of each cloth, seen from slabs that start at `origin`. */
  private clear(origin: number): void {
    const { question, h } = this;
    question.cloths.forEach((cloth, i) => {
      const columns = this.columns[i]!;
      columns.clear(this.margins[i]!.low - this.pad, this.margins[i]!.high + this.pad);
      for (const flaw of cloth.flaws ?? []) this.block(columns, flaw, origin);
      if (!cloth.outline) return;
      const { right } = boundingBox(cloth.outline);
      const span = { low: -cloth.width, high: 2 * cloth.width };
      columns.add(slice(cloth.outline, origin, h, Math.ceil((right - origin) / h) + 1, span), 0, 0);
    });
    for (const { shape, cloth, x, y } of this.pins)
      this.block(
        this.columns[cloth]!,
        shape.full.map((p) => [p[0] + x, p[1] + y] as const),
        origin,
      );
  }

  private block(columns: Columns, ring: readonly (readonly [number, number])[], origin: number): void {
    const { left, right } = boundingBox(ring);
    const first = Math.floor((left - origin) / this.h);
    const from = origin + first * this.h;
    columns.add(slice(ring, from, this.h, Math.floor((right - from) / this.h) + 1), first, 0);
  }

  /**
   * Lays the copies down in this order, each where it ends soonest on the first cloth that takes
   * it. With `lenient` a cloth is filled so many slabs past its end. Null when
   * more than `spare` finds no place `within` the length told.
   */
  lay(order: Order, { lenient = 0, within = Infinity, spare = Infinity }: Manner = {}): Down[] | null {
    const { question, h } = this;
    this.lenience = lenient * h;
    this.within = within;
    const down: Down[] = [...this.pins];
    const lead = down.find((d) => d.shape.match !== null);
    const origin = this.originFor(order, lead);
    // The slab, modulo the repeat, on which match points fall; null until one is laid.
    const cycle = question.repeat > 0 ? Math.round(question.repeat / h) : 1;
    let phase = lead ? mod(Math.round((lead.x + lead.shape.match! - origin) / h), cycle) : null;
    this.clear(origin);
    const hints = new Map<Shape, number[]>();
    let without = 0;
    for (const { piece, copy, turn } of order) {
      if (this.isOver()) return null;
      const before = down.length;
      const own = this.shapes[piece]!;
      const turns = turn === undefined ? own : [own[turn]!];
      for (let cloth = 0; cloth < question.cloths.length; cloth++) {
        const found = this.best(turns, cloth, origin, phase, cycle, hints);
        if (!found) continue;
        const { shape, column, y } = found;
        const { slices } = this.slicesOf(shape);
        this.columns[cloth]!.add(slices, column, y);
        const x = origin + column * h - slices.origin;
        if (shape.match !== null && phase === null)
          phase = mod(Math.round((x + shape.match - origin) / h), cycle);
        down.push({ piece, copy, cloth, turn: shape.turn, x, y, shape });
        break;
      }
      if (down.length === before) without += own[0]!.area;
      if (without > spare) return null;
    }
    return down;
  }

  /** Where slabs begin: at the cloth's beginning (less half the gap), or so that the first match point lies on a slab's side. */
  private originFor(order: Order, lead: Down | undefined): number {
    const at = lead ? lead.x + lead.shape.match! : null;
    let anchor = at;
    if (anchor === null) {
      const first = order.find(({ piece }) => this.shapes[piece]![0]!.match !== null);
      if (!first) return -this.half;
      const shape = this.shapes[first.piece]![0]!;
      anchor = shape.match! - shape.bounds.left;
    }
    const start = -this.half;
    return anchor - Math.ceil((anchor - start) / this.h - 1e-9) * this.h;
  }

  private best(
    turns: readonly Shape[],
    cloth: number,
    origin: number,
    phase: number | null,
    cycle: number,
    hints: Map<Shape, number[]>,
  ): { shape: Shape; column: number; y: number } | null {
    const { h } = this;
    const columns = this.columns[cloth]!;
    const margin = this.margins[cloth]!;
    const eps = 1e-9 * this.question.cloths[cloth]!.width;
    let best: { shape: Shape; column: number; y: number } | null = null;
    let end = Infinity;
    let low = Infinity;
    let deep = Infinity;
    for (const shape of turns) {
      const { slices } = this.slicesOf(shape);
      const { bounds } = shape;
      const from = margin.low - bounds.low;
      const to = margin.high - bounds.high;
      if (to < from - eps) continue;
      const shift = slices.origin - origin;
      const least = Math.ceil((margin.left - bounds.left + shift) / h - 1e-9);
      const hint = hints.get(shape) ?? [];
      hints.set(shape, hint);
      const bound = Math.min(margin.right + this.lenience + eps, this.within + eps, end + h * 1e-6);
      const most = Math.min(Math.floor((bound - bounds.right + shift) / h), FARTHEST) | 0;
      const steps =
        phase !== null && shape.match !== null
          ? { cycle, phase: phase - Math.round((shape.match - shift - origin) / h) }
          : ANY_COLUMN;
      const first = Math.max(hint[cloth] ?? 0, least) | 0;
      const column = columns.soonest(slices, first, most, steps, from, to, eps);
      const y = columns.height;
      if (!Number.isNaN(y)) {
        const reach = column * h - shift + bounds.right;
        // At equal reach and height the turn with its weight further down leaves more above it.
        const top = y + bounds.high;
        const heart = y + shape.heart;
        if (reach < end - h * 1e-6 || top < low - eps || (top < low + eps && heart < deep - eps)) {
          best = { shape, column, y };
          end = reach;
          low = top;
          deep = heart;
        }
      }
      // What is full stays full: the next copy need not look before here.
      hint[cloth] = column;
    }
    return best;
  }
}

function mod(a: number, n: number): number {
  return ((a % n) + n) % n;
}
