/**
 * The search for less cloth: from the quick lay on, the cloth is shortened step by step and the
 * overlaps that come of it are taken out again. It can be run in slices, so that whoever runs it
 * can listen in between; what it holds and yields is plain data.
 */
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { answerFrom, isBetter } from "./answer.ts";
import { checkLay } from "./check.ts";
import { Fields, obstaclesOf, type Stance, stancesOf } from "./fields.ts";
import { Mover } from "./move.ts";
import { wholeTurn } from "./outline.ts";
import { firstLay } from "./quick.ts";
import { seeded } from "./random.ts";
import { refusalOf } from "./refuse.ts";
import { Room } from "./room.ts";
import { restore, type Saved, save, separate } from "./separate.ts";
import { shapesOf } from "./shape.ts";
import { Table } from "./table.ts";

export interface SearchOptions {
  /** Whole number; the same seed with `rounds` gives the same lay on every machine. */
  readonly seed: number;
  /** How long the search is meant to go on, in milliseconds; it plans its last fifth as fine work. */
  readonly milliseconds?: number;
  /** Instead of a time: how many rounds of moves. */
  readonly rounds?: number;
  /** A good lay of the same question to start from. */
  readonly start?: Lay;
}

/** What one call of `run` may spend. */
export interface Slice {
  readonly milliseconds?: number;
  readonly rounds?: number;
}

/** Share of the plan spent on shortening in larger steps; the rest goes into small ones. */
const EXPLORING = 0.8;

export class Search {
  /** Why there is nothing to search, or null. */
  readonly refusal: string | null;
  private lay: Lay | null = null;
  private spentMs = 0;
  private spentRounds = 0;
  private readonly steps: Generator<void, void> | null = null;
  private sliceStart = 0;
  private fresh: Lay[] = [];
  private table!: Table;
  private room!: Room;
  private mover!: Mover;
  private stances!: Stance[];
  private readonly random: () => number;
  private copies: { piece: number; copy: number }[] = [];

  constructor(
    private readonly question: LayQuestion,
    private readonly options: SearchOptions,
  ) {
    this.random = seeded(options.seed);
    this.sliceStart = performance.now();
    const refusal = refusalOf(question);
    const first = refusal ? { refusal } : (options.start ?? firstLay(question, shapesOf(question)));
    if ("refusal" in first) {
      this.refusal = first.refusal;
      return;
    }
    this.refusal = null;
    this.offer(first);
    this.steps = this.search(first);
    this.spentMs = performance.now() - this.sliceStart;
  }

  /** The best lay so far; null only with a refusal. */
  get best(): Lay | null {
    return this.lay;
  }

  /** How much of the plan is spent, 0 to 1 and above. */
  get progress(): number {
    if (this.options.rounds !== undefined) return this.spentRounds / this.options.rounds;
    return this.elapsed() / (this.options.milliseconds ?? 10_000);
  }

  /**
   * Searches on for a slice; tells each better lay, all of them checked. True when it has come to
   * its end: no lay can be better, or nothing is left to try.
   */
  run(slice: Slice, onBetter: (lay: Lay) => void = () => {}): boolean {
    if (!this.steps) return true;
    this.sliceStart = performance.now();
    let done = false;
    for (let rounds = 0; !done; rounds++) {
      for (const lay of this.fresh.splice(0)) onBetter(lay);
      if (slice.rounds !== undefined && rounds >= slice.rounds) break;
      if (slice.milliseconds !== undefined && performance.now() - this.sliceStart >= slice.milliseconds)
        break;
      done = this.steps.next().done === true;
      this.spentRounds++;
    }
    for (const lay of this.fresh.splice(0)) onBetter(lay);
    this.spentMs += performance.now() - this.sliceStart;
    this.sliceStart = Number.NaN;
    return done;
  }

  private elapsed(): number {
    return this.spentMs + (Number.isNaN(this.sliceStart) ? 0 : performance.now() - this.sliceStart);
  }

  /** Takes the lay as the best when it is better and the independent checker finds nothing. */
  private offer(lay: Lay): boolean {
    if (this.lay && !isBetter(this.question, lay, this.lay)) return false;
    if (checkLay(this.question, lay, 2e-6).length > 0) return false;
    this.lay = lay;
    this.fresh.push(lay);
    return true;
  }

  private setUp(first: Lay): void {
    const { question } = this;
    const shapes = shapesOf({ ...question, gap: 0 });
    const obstacles = obstaclesOf(question.cloths);
    const widest = Math.max(...question.cloths.map((c) => c.width));
    this.stances = stancesOf(question, shapes, obstacles);
    const kinds: number[][] = [...question.pieces, ...obstacles].map(() => []);
    this.stances.forEach((stance, s) => {
      kinds[stance.kind]!.push(s);
    });
    const pinned = new Set((question.pinned ?? []).map((p) => `${p.piece} ${p.copy}`));
    this.copies = question.pieces.flatMap(({ quantity }, piece) =>
      Array.from({ length: quantity }, (_, copy) => ({ piece, copy })),
    );
    const items = this.copies.map(({ piece, copy }) => ({
      kind: piece,
      fixed: pinned.has(`${piece} ${copy}`),
    }));
    obstacles.forEach((_, i) => {
      items.push({ kind: question.pieces.length + i, fixed: true });
    });
    const fields = new Fields(question, obstacles, question.gap);
    this.table = new Table(items, this.stances, fields, question.gap, 2e-7 * widest);
    this.room = new Room(this.stances, question.cloths, question.repeat);
    this.mover = new Mover(this.table, this.room, kinds, this.random, widest);
    const places = new Map(first.placements.map((p) => [`${p.piece} ${p.copy}`, p]));
    this.copies.forEach(({ piece, copy }, i) => {
      const place = places.get(`${piece} ${copy}`);
      if (!place) return;
      const stance = kinds[piece]!.find((s) => this.stances[s]!.turn === wholeTurn(place.turn))!;
      this.table.put(i, stance, place.cloth, place.x, place.y);
      const { match } = this.stances[stance]!;
      if (match !== null) this.room.phase = place.x + match;
    });
    obstacles.forEach(({ cloth }, i) => {
      const stance = kinds[question.pieces.length + i]![0]!;
      this.table.put(this.copies.length + i, stance, cloth, 0, 0);
    });
  }

  private *search(first: Lay): Generator<void, void> {
    this.setUp(first);
    const { table } = this;
    this.fit(first);
    table.settleAll();
    let good = save(table);
    let step = 0.04;
    const pool: Saved[] = [];
    while (this.progress < EXPLORING) {
      const length = this.lay!.lengths[0]!;
      this.shorten(0, length * (1 - step));
      table.settleAll();
      const ok = yield* separate(table, this.mover, this.random, 60, 3);
      if (ok && this.record()) {
        good = save(table);
        pool.length = 0;
        continue;
      }
      if (step > 0.002) {
        step /= 2;
        restore(table, good);
        continue;
      }
      pool.push(save(table));
      pool.sort((a, b) => a.total - b.total);
      pool.length = Math.min(pool.length, 10);
      const pick = pool[Math.min(pool.length - 1, Math.floor(this.random() ** 2 * pool.length))]!;
      restore(table, pick);
      this.disrupt();
    }
    for (let fine = 0.001; ; fine = Math.max(fine * 0.7, 1e-5)) {
      restore(table, good);
      const length = this.lay!.lengths[0]!;
      this.shorten(0, length * (1 - fine));
      table.settleAll();
      const ok = yield* separate(table, this.mover, this.random, 50, 1);
      if (ok && this.record()) {
        good = save(table);
        fine = Math.min(0.001, fine * 2);
      }
      if (fine <= 1e-5) fine = 0.001;
    }
  }

  /** Allows each cloth the length that the lay uses, and no more. */
  private fit(lay: Lay): void {
    lay.lengths.forEach((length, cloth) => {
      this.room.limits[cloth] = length;
    });
  }

  /** Allows a cloth less length; what lies past a random cut moves with the end. */
  private shorten(cloth: number, length: number): void {
    const { table, room } = this;
    const by = room.limits[cloth]! - length;
    room.limits[cloth] = length;
    const cut = this.random() * length;
    for (let i = 0; i < this.copies.length; i++) {
      if (table.cloth[i] !== cloth || table.items[i]!.fixed) continue;
      const s = table.stance[i]!;
      const { left, right } = this.stances[s]!;
      const x = table.x[i]!;
      const moved = x + (left + right) / 2 > cut ? x - by : x;
      if (!room.range(s, cloth)) continue;
      table.put(i, s, cloth, room.snap(s, moved), room.clampY(table.y[i]!));
    }
  }

  /** Swaps two large items, so that the search leaves the valley it is in. */
  private disrupt(): void {
    const { table, room, random } = this;
    const sizes = table.stances.map((s) => (s.right - s.left) * (s.high - s.low));
    const movable = this.copies
      .map((_, i) => i)
      .filter((i) => !table.items[i]!.fixed && table.cloth[i]! >= 0);
    if (movable.length < 2) return;
    movable.sort((a, b) => sizes[table.stance[b]!]! - sizes[table.stance[a]!]!);
    const large = movable.slice(0, Math.max(2, Math.ceil(movable.length * 0.5)));
    const a = large[(random() * large.length) | 0]!;
    const others = large.filter((b) => table.items[b]!.kind !== table.items[a]!.kind);
    const b = (others.length > 0 ? others : large)[(random() * (others.length || large.length)) | 0]!;
    const at = (i: number) => {
      const s = table.stances[table.stance[i]!]!;
      return [
        table.x[i]! + (s.left + s.right) / 2,
        table.y[i]! + (s.low + s.high) / 2,
        table.cloth[i]!,
      ] as const;
    };
    const [pa, pb] = [at(a), at(b)];
    for (const [i, [cx, cy, cloth]] of [
      [a, pb],
      [b, pa],
    ] as const) {
      const stance = table.stance[i]!;
      const s = table.stances[stance]!;
      if (!room.range(stance, cloth)) continue;
      const x = room.snap(stance, cx - (s.left + s.right) / 2);
      table.put(i, stance, cloth, x, room.clampY(cy - (s.low + s.high) / 2));
    }
    table.settleAll();
  }

  /** Offers what lies on the table; when it is the new best, the limits follow it. */
  private record(): boolean {
    const { table } = this;
    const placements: Placement[] = [];
    this.copies.forEach(({ piece, copy }, i) => {
      const cloth = table.cloth[i]!;
      if (cloth < 0) return;
      const { turn } = table.stances[table.stance[i]!]!;
      placements.push({ piece, copy, cloth, turn, x: table.x[i]!, y: table.y[i]! });
    });
    const lay = answerFrom(this.question, placements);
    if (!this.offer(lay)) return false;
    this.fit(lay);
    return true;
  }
}
