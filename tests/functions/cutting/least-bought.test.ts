import fc from "fast-check";
import { expect, test } from "vitest";
import { leastBought } from "../../../functions/cutting/least-bought.ts";
import { shareOfCloth } from "../../../functions/cutting/least-length.ts";
import type { Lay, LayPiece, LayQuestion } from "../../../functions/lay.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const rectangle = ([width, length]: readonly [number, number], i: number): LayPiece => ({
  name: `piece ${i + 1}`,
  outline: [[0, 0], [length, 0], [length, width], [0, width]], // biome-ignore format: corners
  quantity: 1,
  turns: [0],
});
const BOUGHT = { name: "to buy", width: 30, length: null };
const size = fc.tuple(fc.integer({ min: 4, max: 28 }), fc.integer({ min: 4, max: 40 }));

/** The least over all ways to share out, each laid quickly. */
function bruteForce({ pieces, ...rest }: LayQuestion): number {
  let least = Number.POSITIVE_INFINITY;
  for (let way = 0; way < 2 ** pieces.length; way++) {
    const [kept, bought] = [0, 1].map((bit) => pieces.filter((_, i) => ((way >> i) & 1) === bit));
    if (shareOfCloth({ ...rest, pieces: kept! }) > 1 + 1e-9) continue;
    if (kept!.length > 0 && (quickLay({ ...rest, pieces: kept! }) as Lay).missing.length > 0) continue;
    const lay = bought!.length > 0 ? (quickLay({ ...rest, pieces: bought!, cloths: [BOUGHT] }) as Lay) : null;
    least = Math.min(least, lay?.lengths[0] ?? 0);
  }
  return least;
}

test("of a few pieces no way to share them out takes less, and it is never more than buying for everything", () => {
  let somewhere = 0;
  fc.assert(
    fc.property(
      fc.array(size, { minLength: 1, maxLength: 3 }),
      fc.array(size, { minLength: 1, maxLength: 2 }),
      (sizes, stock) => {
        const cloths = stock.map(([width, length], i) => ({ name: `cloth ${i}`, width, length }));
        const question = { pieces: sizes.map(rectangle), cloths, gap: 0, repeat: 0 };
        const found = leastBought(question, BOUGHT, quickLay);
        if ("refusal" in found) throw new Error(found.refusal);
        const all = (quickLay({ ...question, cloths: [BOUGHT] }) as Lay).lengths[0]!;
        expect(found.length).toBeLessThanOrEqual(all * (1 + 1e-9));
        expect(found.length).toBeCloseTo(bruteForce(question), 6);
        expect(found.lay.placements).toHaveLength(sizes.length);
        if (found.isProved() && found.length > 0) somewhere += 1;
      },
    ),
    { seed: 20261127, numRuns: 25 },
  );
  expect(somewhere, "ways that are proved least").toBeGreaterThan(3);
});

test("of many copies the ways near the best are tried, and every copy is laid once", () => {
  const pieces = [rectangle([28, 40], 0), rectangle([10, 12], 1), rectangle([14, 25], 2)].map((piece, i) => ({
    ...piece,
    quantity: [2, 5, 3][i]!,
  }));
  const question = { pieces, cloths: [{ name: "remnant", width: 29, length: 65 }], gap: 0, repeat: 0 };
  const asked = { calls: 0 };
  const found = leastBought(question, BOUGHT, (one) => {
    asked.calls += 1;
    return quickLay(one);
  });
  if ("refusal" in found) throw new Error(found.refusal);
  expect(asked.calls).toBeLessThan(200);
  const copies = found.lay.placements.map(({ piece }) => piece);
  expect([0, 1, 2].map((piece) => copies.filter((one) => one === piece).length)).toEqual([2, 5, 3]);
  const all = (quickLay({ ...question, cloths: [BOUGHT] }) as Lay).lengths[0]!;
  expect(found.length).toBeLessThan(all - 40);
});

test("the stock takes the piece that is the longer to buy, although another covers more of it", () => {
  // The wide piece of 20 in covers 560 square inches, the narrow one of 40 in only 400; they don't lie together.
  const pieces = [rectangle([28, 20], 0), rectangle([10, 40], 1)];
  const question = { pieces, cloths: [{ name: "remnant", width: 28, length: 40 }], gap: 0, repeat: 0 };
  expect((quickLay(question) as Lay).missing).toEqual([[1, 1]]);
  expect(leastBought(question, BOUGHT, quickLay)).toMatchObject({ length: 20 });
});
