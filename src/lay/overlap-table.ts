/**
 * The overlap table of the search: which copy lies where, how much each pair overlaps and how heavily each
 * pair's overlap weighs. It lies in the memory of the inner loop, which does the work on it.
 */
import type { LayCloth } from "../../functions/lay.ts";
import { boundsOfStance, type Fields, type Stance } from "./fields.ts";
import { fillCell } from "./inner/field.ts";
import {
  CLASHES,
  CLOTH,
  CLOTH_COUNT,
  CLOTH_SIZE,
  CLOTHS,
  FIELD,
  GAP,
  ITEM,
  ITEM_COUNT,
  ITEMS,
  LIMIT,
  LOSSES,
  PAIR,
  PAIRS,
  PHASE,
  RANDOM_STATE,
  REPEAT,
  SEEN,
  STANCE,
  STANCE_COUNT,
  STANCE_SIZE,
  STANCES,
  TOLERANCE,
  UNIT,
  WEIGHTS,
  WIDTH,
  X,
  Y,
} from "./inner/layout.ts";
import type { Program, Room } from "./inner/room.ts";
import { newRoom } from "./inner/simd-room.ts";

/** A copy, or an obstacle, before it has a place. */
export interface Item {
  readonly kind: number;
  /** Stays where it is put. */
  readonly fixed: boolean;
}

/** What the search works under, the same from its beginning to its end. */
export interface Terms {
  readonly cloths: readonly LayCloth[];
  readonly gap: number;
  readonly repeat: number;
  /** The width of the widest cloth. */
  readonly unit: number;
  /** Overlaps no deeper than this count as touching. */
  readonly tolerance: number;
  readonly seed: number;
}

export class OverlapTable {
  readonly n: number;
  private readonly room: Room;
  /** The inner loop. */
  readonly program: Program;
  /** Pairs whose weight is above 1, each once. */
  private readonly heavy: number[] = [];

  constructor(
    readonly items: readonly Item[],
    readonly stances: readonly Stance[],
    private readonly source: Fields,
    terms: Terms,
    makeRoom = newRoom,
  ) {
    this.n = items.length;
    this.room = makeRoom({
      fill: (field, cell) => fillCell(this.room, field, cell),
      prepare: (a, b) => this.prepare(a, b),
    });
    this.program = this.room.program;
    const [n, s] = [items.length, stances.length];
    const sizes: [slot: number, size: number][] = [
      [ITEMS, n * ITEM],
      [STANCES, s * STANCE_SIZE],
      [PAIRS, s * s * PAIR],
      [CLOTHS, terms.cloths.length * CLOTH_SIZE],
      [WEIGHTS, n * n * 8],
      [LOSSES, n * n * 8],
      [CLASHES, n * 4],
      [SEEN, n * 4],
    ];
    for (const [slot, size] of sizes) {
      const at = this.room.allocate(size);
      this.room.ints[slot >> 2] = at;
    }
    this.writeTerms(terms);
    stances.forEach((stance, k) => {
      this.writeStance(stance, k);
    });
    items.forEach(({ kind }, i) => {
      const first = stances.findIndex((stance) => stance.kind === kind);
      const count = stances.filter((stance) => stance.kind === kind).length;
      this.room.ints.set([0, -1, first, count], (this.itemAt(i) + STANCE) >> 2);
    });
    this.forgetWeights();
  }

  private writeTerms({ cloths, gap, repeat, unit, tolerance, seed }: Terms): void {
    const { floats, ints } = this.room;
    ints[ITEM_COUNT >> 2] = this.n;
    ints[STANCE_COUNT >> 2] = this.stances.length;
    ints[CLOTH_COUNT >> 2] = cloths.length;
    ints[RANDOM_STATE >> 2] = seed;
    floats[GAP >> 3] = gap;
    floats[TOLERANCE >> 3] = tolerance;
    floats[UNIT >> 3] = unit;
    floats[REPEAT >> 3] = repeat;
    cloths.forEach(({ width }, k) => {
      floats[(this.clothAt(k) + WIDTH) >> 3] = width;
    });
  }

  private writeStance(stance: Stance, k: number): void {
    const outer = boundsOfStance(stance, this.source);
    const boxes = [outer, stance].flatMap(({ left, low, right, high }) => [left, low, right, high]);
    this.room.floats.set([...boxes, stance.match ?? Number.NaN], this.stanceAt(k) >> 3);
  }

  private itemAt(i: number): number {
    return this.room.ints[ITEMS >> 2]! + i * ITEM;
  }
  private stanceAt(k: number): number {
    return this.room.ints[STANCES >> 2]! + k * STANCE_SIZE;
  }
  private clothAt(k: number): number {
    return this.room.ints[CLOTHS >> 2]! + k * CLOTH_SIZE;
  }

  x(i: number): number {
    return this.room.floats[(this.itemAt(i) + X) >> 3]!;
  }
  y(i: number): number {
    return this.room.floats[(this.itemAt(i) + Y) >> 3]!;
  }
  /** Index of the stance item i lies in. */
  stance(i: number): number {
    return this.room.ints[(this.itemAt(i) + STANCE) >> 2]!;
  }
  /** The cloth item i lies on; -1 when it lies on none. */
  cloth(i: number): number {
    return this.room.ints[(this.itemAt(i) + CLOTH) >> 2]!;
  }
  /** Item i lies on no cloth any more. */
  takeAway(i: number): void {
    this.room.ints[(this.itemAt(i) + CLOTH) >> 2] = -1;
  }
  /** All items as they lie. */
  places(): Float64Array {
    const at = this.itemAt(0) >> 3;
    return this.room.floats.subarray(at, at + (this.n * ITEM) / 8);
  }

  /** How much of a cloth may be used at present. */
  limit(cloth: number): number {
    return this.room.floats[(this.clothAt(cloth) + LIMIT) >> 3]!;
  }
  setLimit(cloth: number, length: number): void {
    this.room.floats[(this.clothAt(cloth) + LIMIT) >> 3] = length;
  }
  /** Where on the repeat the match points fall. */
  setPhase(phase: number): void {
    this.room.floats[PHASE >> 3] = phase;
  }
  /** A number of the inner loop, by its address. */
  float(address: number): number {
    return this.room.floats[address >> 3]!;
  }

  /** Puts item i down; overlaps are not counted again until `settle`. */
  put(i: number, stance: number, cloth: number, x: number, y: number): void {
    this.program.put(i, stance, cloth, x, y);
  }
  /** Counts the losses of item i with all others anew. */
  settle(i: number): void {
    this.program.settle(i);
  }

  /** Makes what is asked of a pair of stances; returns the address of its field. */
  private prepare(a: number, b: number): number {
    const sa = this.stances[a]!;
    const sb = this.stances[b]!;
    // The field is that of the lower kind unturned; a is where it is, b is moved.
    const [low, high, sign] = sa.kind <= sb.kind ? [sa, sb, 1] : [sb, sa, -1];
    const field = this.source.field(this.room, low.kind, high.kind, (high.turn - low.turn + 360) % 360);
    const quarter = low.turn % 90 === 0;
    const angle = (low.turn * Math.PI) / 180;
    const c = quarter ? Math.round(Math.cos(angle)) : Math.cos(angle);
    const s = quarter ? Math.round(Math.sin(angle)) : Math.sin(angle);
    const { floats, ints } = this.room;
    const root = (k: number) => {
      const at = this.stanceAt(k) >> 3;
      return Math.sqrt((floats[at + 2]! - floats[at]!) * (floats[at + 3]! - floats[at + 1]!));
    };
    const pair = ints[PAIRS >> 2]! + (a * this.stances.length + b) * PAIR;
    floats.set([sign * c, sign * s, Math.min(root(a), root(b))], pair >> 3);
    ints[(pair + FIELD) >> 2] = field;
    return field;
  }

  settleAll(): void {
    for (let i = 0; i < this.n; i++) this.settle(i);
  }

  private weights(): Float64Array {
    const at = this.room.ints[WEIGHTS >> 2]! >> 3;
    return this.room.floats.subarray(at, at + this.n * this.n);
  }
  private losses(): Float64Array {
    const at = this.room.ints[LOSSES >> 2]! >> 3;
    return this.room.floats.subarray(at, at + this.n * this.n);
  }

  /** Whether item i overlaps any other. */
  isClashing(i: number): boolean {
    return this.room.ints[(this.room.ints[CLASHES >> 2]! >> 2) + i]! > 0;
  }

  /** Loss of the whole table without the weights, each pair once; exactly 0 when nothing overlaps. */
  total(): number {
    const { n } = this;
    const loss = this.losses();
    let sum = 0;
    for (let i = 0; i < n; i++) {
      if (!this.isClashing(i)) continue;
      for (let k = i * n + i + 1; k < (i + 1) * n; k++) sum += loss[k]!;
    }
    return sum;
  }

  /** All pairs weigh the same again. */
  forgetWeights(): void {
    this.weights().fill(1);
    this.heavy.length = 0;
  }

  /** Pairs that overlap weigh more, the worst of them most; the others slowly less. */
  reweigh(): void {
    const { n, heavy } = this;
    const loss = this.losses();
    const weight = this.weights();
    const setWeight = (k: number, one: number) => {
      weight[k] = one;
      weight[(k % n) * n + Math.floor(k / n)] = one;
    };
    let kept = 0;
    for (const k of heavy) {
      if (loss[k] === 0) setWeight(k, Math.max(1, weight[k]! * 0.95));
      if (weight[k]! > 1) heavy[kept++] = k;
    }
    heavy.length = kept;
    let worst = 0;
    for (let i = 0; i < n; i++)
      if (this.isClashing(i))
        for (let k = i * n + i + 1; k < (i + 1) * n; k++) if (loss[k]! > worst) worst = loss[k]!;
    for (let i = 0; i < n; i++) {
      if (!this.isClashing(i)) continue;
      for (let k = i * n + i + 1; k < (i + 1) * n; k++) {
        const one = loss[k]!;
        if (one === 0) continue;
        if (weight[k] === 1) heavy.push(k);
        setWeight(k, weight[k]! * (1.1 + (0.4 * one) / worst));
      }
    }
  }
}
