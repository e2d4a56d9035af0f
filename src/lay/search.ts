/**
 * The search for less cloth: from the quick lay on, the cloth is shortened step by step and the
 * overlaps that come of it are taken out again. It can be run in slices, so that whoever runs it
 * can listen in between; what it holds and yields is plain data.
 */
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { isBetter } from "./answer.ts";
import { checkLay } from "./check.ts";
import { improve } from "./improve.ts";
import { newRoom } from "./inner/simd-room.ts";
import { firstLay } from "./quick.ts";
import { refusalOf } from "./refuse.ts";
import { Scene } from "./scene.ts";

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

/** Of more copies only the quick lay is made: the search keeps a figure for every pair of them. */
export const MOST_SEARCHED = 1500;

export class Search {
  /** Why there is nothing to search, or null. */
  readonly refusal: string | null;
  private lay: Lay | null = null;
  private spentMs = 0;
  private spentRounds = 0;
  private readonly steps: Generator<void, void> | null = null;
  private sliceStart = 0;
  private fresh: Lay[] = [];
  constructor(
    private readonly question: LayQuestion,
    private readonly options: SearchOptions,
    private readonly makeRoom = newRoom,
  ) {
    this.sliceStart = performance.now();
    const refusal = refusalOf(question);
    // A start that is no good lay of this question is passed over.
    const start = !refusal && options.start && this.offer(options.start) ? options.start : null;
    const first = refusal ? { refusal } : (start ?? firstLay(question));
    if ("refusal" in first) {
      this.refusal = first.refusal;
      return;
    }
    this.refusal = null;
    if (!start) this.offer(first);
    const copies = question.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    if (copies <= MOST_SEARCHED) this.steps = this.search(first);
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
    // Pins are taken as they are, and they may touch a little hard.
    const tolerance = (this.question.pinned ?? []).length > 0 ? 1e-4 : 2e-6;
    if (checkLay(this.question, lay, tolerance).length > 0) return false;
    this.lay = lay;
    this.fresh.push(lay);
    return true;
  }

  /** The table is set up in the first slice, not when the search is made. */
  private *search(first: Lay): Generator<void, void> {
    const scene = new Scene(this.question, this.options.seed, first, this.makeRoom);
    yield* improve(scene, {
      progress: () => this.progress,
      best: () => this.lay!,
      offer: (lay) => this.offer(lay),
    });
  }
}
