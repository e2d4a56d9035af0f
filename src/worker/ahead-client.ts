/**
 * Has settings of a what-if question worked ahead by helpers, workers of the worker that answers. It reads the
 * settings in their order. Where all of them will be read, the helpers begin at the end and meet it; where it stops
 * at the first that does, each helper is given a few of them at a time, a little way ahead. Whatever is not there
 * when it is wanted, the answering worker works itself, so that a slow or dead helper costs time and nothing else.
 */
import type { Ahead, AheadTask, StepTaken } from "../engine/ahead.ts";
import type { LaidLay } from "../engine/laid.ts";
import type { AheadNews, AheadOrder } from "./ahead.ts";
import { startWorker } from "./speaking.ts";

/** As much of a Worker as is used. */
export interface AheadWorker {
  postMessage(order: AheadOrder): void;
  terminate(): void;
  onmessage: ((event: { data: AheadNews }) => void) | null;
  onerror: ((event: { preventDefault?: () => void }) => void) | null;
}

const makeWorker = (): AheadWorker =>
  startWorker(new URL("./ahead-worker.ts", import.meta.url)) as unknown as AheadWorker;

/** Helpers for a machine of so many cores: one core is for the answering worker, which the page hardly needs meanwhile. */
export const helpersFor = (cores: number | undefined): number => Math.min(3, Math.max(0, (cores ?? 1) - 1));

/** Settings read before it is known whether help is worth its while. */
const FIRST = 3;
/** Less work than this, in milliseconds, is done sooner than a helper begins. */
const WORTH_MS = 150;
/** What a helper is given at a time is about so much work, in milliseconds. */
const SHARE_MS = 30;
const MOST_SHARED = 64;
/** So many shares wait at a helper, so that it goes on while its news travel. */
const SHARES_AHEAD = 2;

interface Worker {
  readonly worker: AheadWorker;
  /** All lays of its task. */
  laid: LaidLay[];
  waiting: number;
  begun: boolean;
}

export class Helpers {
  #workers: Worker[] | null = null;
  #tasks = 0;
  /** The task that is helped with now. */
  #current: Helped | null = null;

  constructor(
    private readonly count = helpersFor(globalThis.navigator?.hardwareConcurrency),
    private readonly make: () => AheadWorker = makeWorker,
    private readonly clock: () => number = () => performance.now(),
  ) {}

  /** Begins to help with a task; help with an older one ends. */
  readonly begin = (task: AheadTask): Ahead | null => {
    if (this.count === 0) return null;
    this.#tasks += 1;
    const helped = new Helped(
      this.#tasks,
      task,
      this.clock,
      () => this.#ready(),
      () => this.#end(helped),
    );
    this.#current = helped;
    return helped;
  };

  #end(helped: Helped): void {
    if (this.#current !== helped) return;
    this.#current = null;
    for (const { worker, begun } of this.#workers ?? []) if (begun) worker.postMessage(null);
  }

  /** The helpers that there are, idle. */
  #ready(): readonly Worker[] {
    this.#workers ??= Array.from({ length: this.count }, () => this.#one()).filter((one) => one !== null);
    for (const one of this.#workers) {
      one.laid = [];
      one.waiting = 0;
      one.begun = false;
    }
    return this.#workers;
  }

  #one(): Worker | null {
    try {
      const one: Worker = { worker: this.make(), laid: [], waiting: 0, begun: false };
      one.worker.onmessage = ({ data }) => this.#current?.hear(one, data);
      one.worker.onerror = (event) => {
        event.preventDefault?.();
        this.#dismiss(one);
      };
      return one;
    } catch {
      return null;
    }
  }

  #dismiss(one: Worker): void {
    one.worker.terminate();
    const at = this.#workers?.indexOf(one) ?? -1;
    if (at >= 0) this.#workers!.splice(at, 1);
  }
}

/** Settings for a helper, from one up to before another. */
interface Share {
  readonly from: number;
  readonly to: number;
}

/** One task that is helped with. */
class Helped implements Ahead {
  #workers: readonly Worker[] | null = null;
  #settings: readonly (readonly number[])[] = [];
  /** Where in the list of all settings expected so far these begin: a late answer to an earlier list does not belong to this one. */
  #base = 0;
  /** The setting that is read next. */
  #next = 0;
  #areAllRead = false;
  /** Where all are read: settings from this one on are given out. */
  #end = 0;
  /** Otherwise: settings before this one are given out, or were passed over for the answering worker itself. */
  #given = 0;
  /** How many settings the answering worker is then left before each share. */
  #own = 0;
  #share = 1;
  #began = 0;
  readonly #there = new Map<number, StepTaken>();
  readonly #awaited = new Set<number>();

  constructor(
    private readonly id: number,
    private readonly task: AheadTask,
    private readonly clock: () => number,
    /** The helpers, idle. */
    private readonly ready: () => readonly Worker[],
    readonly end: () => void,
  ) {}

  expect(settings: readonly (readonly number[])[], areAllRead: boolean): void {
    this.#base += this.#settings.length;
    this.#settings = settings;
    this.#areAllRead = areAllRead;
    this.#end = settings.length;
    this.#next = 0;
    this.#given = 0;
    this.#there.clear();
    this.#awaited.clear();
  }

  take(figures: readonly number[]): StepTaken | null {
    const at = this.#next;
    if (this.#settings[at] !== figures) return null;
    this.#next += 1;
    // The first setting takes longer than the others: the engine is new.
    if (at === 1) this.#began = this.clock();
    if (at === FIRST) this.#judge();
    const there = this.#there.get(at) ?? null;
    this.#there.delete(at);
    if (this.#workers) {
      // Whoever is late was given too near a setting; whoever is in time may be given nearer ones.
      if (there) this.#own = Math.max(0, this.#own - 0.25);
      else if (this.#awaited.has(at)) this.#own = Math.min(4 * this.#share, this.#own + 0.5);
      this.#give();
    }
    return there;
  }

  /** Looks at the time that the first settings took, and asks for help when the others will take long. */
  #judge(): void {
    const each = (this.clock() - this.#began) / (FIRST - 1);
    const left = this.#settings.length - FIRST;
    if (this.#workers || each * left < WORTH_MS) return;
    this.#share = Math.max(1, Math.min(MOST_SHARED, Math.round(SHARE_MS / each)));
    this.#own = this.#share;
    this.#workers = this.ready();
  }

  #give(): void {
    for (const one of this.#workers!) {
      while (one.waiting < SHARES_AHEAD) {
        const { from, to } = this.#areAllRead ? this.#fromTheEnd() : this.#aLittleAhead();
        const settings = this.#settings.slice(from, to);
        if (settings.length === 0) break;
        if (!one.begun) one.worker.postMessage({ id: this.id, task: this.task });
        one.begun = true;
        one.worker.postMessage({ id: this.id, from: this.#base + from, settings });
        one.waiting += 1;
        settings.forEach((_, i) => {
          this.#awaited.add(from + i);
        });
      }
    }
  }

  /** The next share where all settings are read: the nearer the two ends, the smaller. */
  #fromTheEnd(): Share {
    const room = this.#end - this.#next;
    const size = Math.min(this.#share, Math.floor(room / (2 * (this.#workers!.length + 1))));
    const to = this.#end;
    this.#end -= Math.max(0, size);
    return { from: this.#end, to };
  }

  #aLittleAhead(): Share {
    const from = Math.max(this.#given, this.#next) + Math.round(this.#own);
    this.#given = Math.min(from + this.#share, this.#settings.length);
    return { from, to: from + this.#share };
  }

  hear(one: Worker, { id, from, worked }: AheadNews): void {
    if (id !== this.id) return;
    one.waiting -= 1;
    if (!worked) return;
    one.laid.push(...worked.laid);
    const first = from - this.#base;
    worked.steps.forEach(({ lays, ...step }, i) => {
      if (first + i >= this.#next)
        this.#there.set(first + i, { ...step, laid: lays.map((at) => one.laid[at]!) });
    });
  }
}
