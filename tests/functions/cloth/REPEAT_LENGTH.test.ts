import fc from "fast-check";
import { expect, test } from "vitest";
import { REPEAT_LENGTH } from "../../../functions/cloth/REPEAT_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const total = (...args: (number | boolean)[]) => run(REPEAT_LENGTH, args, { unit: "in" }) as number;

test("four lengths of one repeat are four yards, with nothing extra", () => {
  // Hands, Church Needlework, 1907, How to make up a frontal (printed): repeat 1 yd, 4 yd, joined 100 in wide.
  expect(total(36, 36, 4)).toBe(144);
});

/** Least cloth by trying every order of the two kinds: length i may begin only at its own place in the repeat. */
function tried(length: number, repeat: number, count: number): number {
  const ones = Math.ceil(count / 2);
  let best = Infinity;
  for (let order = 0; order < 1 << count; order += 1) {
    const kinds = Array.from({ length: count }, (_, i) => (order >> i) & 1);
    if (![ones, count - ones].includes(kinds.filter((kind) => kind === 1).length)) continue;
    // Places in half repeats; the cloth may be bought from any place of the pattern.
    let at = kinds[0]!;
    const start = at;
    for (let i = 0; i < count; i += 1) {
      at += Math.ceil((2 * length) / repeat - 1e-9);
      const next = i + 1 < count ? kinds[i + 1]! : null;
      if (next !== null && (at - next) % 2 !== 0) at += 1;
    }
    // A last length is bought to the next of its own or of the other kind.
    best = Math.min(best, ((at - start) * repeat) / 2);
  }
  return best;
}

test("with a half drop it takes no more than half a repeat above the best order of cutting, and never less", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 100, noNaN: true }),
      fc.double({ min: 4, max: 40, noNaN: true }),
      fc.integer({ min: 1, max: 7 }),
      (length, repeat, count) => {
        const answer = total(length, repeat, count, true);
        const best = tried(length, repeat, count);
        expect(answer).toBeGreaterThanOrEqual(best - 1e-6);
        expect(answer).toBeLessThanOrEqual(best + repeat / 2 + 1e-6);
      },
    ),
    { seed: 6, numRuns: 200 },
  );
});

test("without a half drop each length is whole repeats and less than one is wasted on each", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 100, noNaN: true }),
      fc.double({ min: 4, max: 40, noNaN: true }),
      fc.integer({ min: 1, max: 20 }),
      (length, repeat, count) => {
        const answer = total(length, repeat, count);
        const repeats = answer / repeat / count;
        expect(repeats).toBeCloseTo(Math.round(repeats), 9);
        expect(answer).toBeGreaterThanOrEqual(count * length - 1e-6);
        expect(answer).toBeLessThan(count * (length + repeat));
      },
    ),
    { seed: 7 },
  );
});
