/** A seeded stream of numbers: same seed, same stream. */
import { RANDOM_STATE } from "./layout.ts";
import { n, product, setN, share } from "./memory.ts";

/** A number from 0 up to 1 (the generator "mulberry32", public domain). */
export function random(): f64 {
  const state = (n(RANDOM_STATE) + 0x6d2b79f5) | 0;
  setN(RANDOM_STATE, state);
  let t = product(state ^ (state >>> 15), state | 1);
  t = t ^ ((t + product(t ^ (t >>> 7), t | 61)) | 0);
  return share(t ^ (t >>> 14));
}
