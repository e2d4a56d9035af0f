/**
 * What is brought up to date after the paint: the parts beside the grid, one at a time, each in a task of
 * its own. A newer change of the book begins again with the paint, and a key is heard between two parts.
 */

/** A hidden page paints nothing: its parts follow after this time, in milliseconds. */
const UNPAINTED = 250;
/** A part that does not say that it is up to date holds up the others for this time, in milliseconds. */
const OVERDUE = 1_000;

/** While one change follows the other, as when a figure slides, parts wait at most this long for a frame with time left, in milliseconds. */
const PATIENCE = 200;

/** What the order of the work needs of a browser. */
export interface Clock {
  /** Milliseconds since any moment. */
  readonly now: () => number;
  /** Calls back once the next frame is painted and has time left, or after so many milliseconds without such a frame; returns what cancels it. */
  readonly painted: (then: () => void, patience: number) => () => void;
  /** Calls back after so many milliseconds; returns what cancels it. */
  readonly later: (then: () => void, milliseconds: number) => () => void;
}

export class AfterPaint {
  readonly #clock: Clock;
  /** What each part does in its turn, in the order of asking. */
  readonly #turns = new Map<object, () => void>();
  /** The part whose turn it is. */
  #part: object | null = null;
  /** When the first of those was asked that have had no turn since. */
  #since: number | null = null;
  #cancel = (): void => {};

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  /** Asks for a turn after the next paint. A part that asks again takes back what it asked before. */
  ask(part: object, turn: () => void): void {
    this.#turns.set(part, turn);
    this.#part = null;
    this.#cancel();
    const now = this.#clock.now();
    this.#since ??= now;
    this.#cancel = this.#clock.painted(() => this.#next(), Math.max(0, this.#since + PATIENCE - now));
  }

  /** A part is up to date, or is gone: the next one may follow. */
  done(part: object): void {
    this.#turns.delete(part);
    if (this.#part !== part) return;
    this.#part = null;
    this.#cancel();
    if (this.#turns.size > 0) this.#cancel = this.#clock.later(() => this.#next(), 0);
  }

  #next(): void {
    const [first] = this.#turns;
    this.#since = null;
    if (!first) return;
    const [part, turn] = first;
    this.#turns.delete(part);
    this.#part = part;
    this.#cancel = this.#clock.later(() => this.done(part), OVERDUE);
    turn();
  }
}

/** The browser's own clock. */
export const browserClock: Clock = {
  now: () => performance.now(),
  painted: (then, patience) => {
    let isOver = false;
    let idle = 0;
    const { port1, port2 } = new MessageChannel();
    const once = () => {
      end();
      then();
    };
    // A browser that has no such callback goes on after the paint.
    port1.onmessage = () => {
      clearTimeout(unpainted);
      if (patience > 0 && "requestIdleCallback" in window)
        idle = requestIdleCallback(once, { timeout: patience });
      else once();
    };
    // The frame is painted after this call, and the message is heard after the paint.
    const frame = requestAnimationFrame(() => port2.postMessage(null));
    const unpainted = setTimeout(once, UNPAINTED);
    const end = () => {
      if (isOver) return;
      isOver = true;
      cancelAnimationFrame(frame);
      clearTimeout(unpainted);
      if (idle) cancelIdleCallback(idle);
      port1.close();
    };
    return end;
  },
  later: (then, milliseconds) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
};
