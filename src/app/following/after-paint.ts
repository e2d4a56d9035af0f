/**
 * What is brought up to date after the paint: the parts beside the grid, one at a time, each in a task of
 * its own. A newer change of the book begins again with the paint, and a key is heard between two parts.
 */

/** A hidden page paints nothing: its parts follow after this time, in milliseconds. */
const UNPAINTED = 250;
/** A part that does not say that it is up to date holds up the others for this time, in milliseconds. */
const OVERDUE = 1_000;

/** What the order of the work needs of a browser. */
export interface Clock {
  /** Calls back once the next frame is painted; returns what cancels it. */
  readonly painted: (then: () => void) => () => void;
  /** Calls back after so many milliseconds; returns what cancels it. */
  readonly later: (then: () => void, milliseconds: number) => () => void;
}

export class AfterPaint {
  readonly #clock: Clock;
  /** What each part does in its turn, in the order of asking. */
  readonly #turns = new Map<object, () => void>();
  /** The part whose turn it is. */
  #part: object | null = null;
  #cancel = (): void => {};

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  /** Asks for a turn after the next paint. A part that asks again takes back what it asked before. */
  ask(part: object, turn: () => void): void {
    this.#turns.set(part, turn);
    this.#part = null;
    this.#cancel();
    this.#cancel = this.#clock.painted(() => this.#next());
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
  painted: (then) => {
    let isOver = false;
    const { port1, port2 } = new MessageChannel();
    const once = () => {
      end();
      then();
    };
    port1.onmessage = once;
    // The frame is painted after this call, and the message is heard after the paint.
    const frame = requestAnimationFrame(() => port2.postMessage(null));
    const unpainted = setTimeout(once, UNPAINTED);
    const end = () => {
      if (isOver) return;
      isOver = true;
      cancelAnimationFrame(frame);
      clearTimeout(unpainted);
      port1.close();
    };
    return end;
  },
  later: (then, milliseconds) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
};
