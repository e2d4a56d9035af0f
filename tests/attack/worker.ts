/** Tries the cases of one generator in a thread of its own, until it is told to stop or is ended. */
import { parentPort, workerData } from "node:worker_threads";
import { generators } from "./catalogue.ts";
import { inShort, seedOf } from "./generator.ts";
import { Random } from "./random.ts";

export interface Orders {
  readonly generator: number;
  readonly seed: number;
  /** The number of the first case, and how many are tried at most. */
  readonly first: number;
  readonly most: number;
  /** [the number of the case that is being tried, whether to stop, how many were tried]. */
  readonly shared: SharedArrayBuffer;
}

export interface Finding {
  readonly number: number;
  readonly says: string;
  readonly case: string;
}

const { generator: index, seed, first, most, shared }: Orders = workerData;
const generator = generators[index]!;
const state = new Int32Array(shared);

for (let number = first; number < first + most && Atomics.load(state, 1) === 0; number += 1) {
  Atomics.store(state, 0, number);
  const one = generator.make(new Random(seedOf(seed, index, number)));
  const tell = (says: string) =>
    parentPort!.postMessage({ number, says, case: inShort(one) } satisfies Finding);
  try {
    const wrong = await generator.attempt(one);
    if (wrong !== null) tell(wrong);
  } catch (reason) {
    tell(
      `threw ${reason instanceof Error ? (reason.stack ?? reason.message).split("\n").slice(0, 4).join(" | ") : reason}`,
    );
  }
  Atomics.add(state, 2, 1);
}
