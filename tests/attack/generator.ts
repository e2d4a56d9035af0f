/** What a generator of attacks is. Each file in generators/ exports one as `generator` and is found by itself. */
import type { Random } from "./random.ts";

export interface Generator<Case = unknown> {
  readonly name: string;
  /** What is tried, and what must hold, in one sentence. */
  readonly about: string;
  /** A case, the same for the same figures. Plain data, so that a finding can be printed. */
  readonly make: (random: Random) => Case;
  /** Tries a case; returns what is wrong in a sentence, or null. A throw is a finding too. */
  readonly attempt: (one: Case) => string | null | Promise<string | null>;
  /** The longest that a case may take, in milliseconds of a machine that does nothing else; 5,000 when left out. */
  readonly longest?: number;
}

/** Declares a generator; the case's type stays its own. */
export const define = <Case>(generator: Generator<Case>): Generator => generator as unknown as Generator;

/** The seed of a case: the seeds of neighbours and of other generators have nothing in common. */
export function seedOf(seed: number, generator: number, number: number): number {
  let mixed = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b);
  mixed = Math.imul(mixed ^ (generator + 1), 0xc2b2ae35);
  mixed = Math.imul((mixed ^ (mixed >>> 13)) + number, 0x27d4eb2f);
  return (mixed ^ (mixed >>> 15)) >>> 0;
}

/** A case as it is printed. */
export const inShort = (value: unknown): string => {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 600 ? `${text.slice(0, 600)}… (${text.length} characters)` : text;
};
