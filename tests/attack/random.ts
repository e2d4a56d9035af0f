/** A small generator of random figures: the same seed gives the same figures everywhere. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
    // Seeds beside one another begin alike; after a few steps nothing of that is left.
    for (let i = 0; i < 4; i += 1) this.next();
  }

  /** From 0 up to, but not, 1. The generator is mulberry32, in the public domain. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, but not, `end`. */
  below(end: number): number {
    return Math.floor(this.next() * end);
  }

  /** A whole number between two, both included. */
  between(from: number, to: number): number {
    return from + this.below(to - from + 1);
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }

  /** `count` of something, made one after the other. */
  many<T>(count: number, make: (i: number) => T): T[] {
    return Array.from({ length: count }, (_, i) => make(i));
  }
}
