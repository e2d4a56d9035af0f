import fc from "fast-check";
import { expect, it } from "vitest";
import { Columns } from "../../../src/lay/columns.ts";
import { seeded } from "../../../src/lay/random.ts";
import { type Slices, slice } from "../../../src/lay/slices.ts";
import { blob } from "./blobs.ts";

const EPS = 1e-9;

interface Taken {
  readonly column: number;
  readonly lo: number;
  readonly hi: number;
}

const stretchesOf = (own: Slices, column: number, y: number): Taken[] =>
  Array.from({ length: own.count }, (_, k) => k).flatMap((k) =>
    Array.from({ length: own.start[k + 1]! - own.start[k]! }, (_, i) => ({
      column: column + k,
      lo: own.lo[own.start[k]! + i]! + y,
      hi: own.hi[own.start[k]! + i]! + y,
    })),
  );

/** The lowest free place in one column, by trying all heights at which the outline would stand on something. */
function plainLowest(own: Slices, taken: readonly Taken[], column: number, from: number, to: number) {
  const at = stretchesOf(own, column, 0);
  const meets = (a: Taken, b: Taken) => a.column === b.column;
  const heights = at.flatMap((a) => taken.filter((b) => meets(a, b)).map((b) => b.hi - a.lo));
  const isFree = (y: number) =>
    at.every((a) => taken.every((b) => !meets(a, b) || b.hi <= a.lo + y + EPS || b.lo >= a.hi + y - EPS));
  return [from, ...heights]
    .filter((y) => y >= from && y <= to + EPS)
    .sort((a, b) => a - b)
    .find(isFree);
}

it("finds the soonest free place that trying every column and height finds, on a repeat too (seed 20264)", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 2 ** 31 }),
      fc.integer({ min: 1, max: 6 }),
      fc.constantFrom(1, 1, 4),
      (seed, count, cycle) => {
        const random = seeded(seed);
        const [width, h] = [30, 1];
        const columns = new Columns();
        columns.clear(0, width);
        const taken: Taken[] = [];
        for (let i = 0; i <= count; i++) {
          const outline = blob(random, 3 + Math.floor(9 * random()), 4 + 8 * random(), 3 + 9 * random());
          const xs = outline.map(([x]) => x);
          const ys = outline.map(([, y]) => y);
          const origin = Math.min(...xs);
          const own = slice(outline, origin, h, Math.ceil((Math.max(...xs) - origin) / h));
          const [from, to] = [0 - Math.min(...ys), width - Math.max(...ys)];
          if (to < from) continue;
          const phase = Math.floor(cycle * random());
          const least = Math.floor(4 * random());
          let column = least;
          let y: number | undefined;
          for (; ; column++) {
            if (cycle > 1 && (column - phase) % cycle !== 0) continue;
            y = plainLowest(own, taken, column, from, to);
            if (y !== undefined) break;
          }
          const found = columns.soonest(own, least, 1000, { cycle, phase }, from, to, EPS);
          expect(found).toBe(column);
          expect(columns.height).toBeCloseTo(Math.min(y!, to), 8);
          // Up to the column before it there is none.
          columns.soonest(own, least, column - 1, { cycle, phase }, from, to, EPS);
          expect(columns.height).toBeNaN();
          columns.add(own, column, y!);
          taken.push(...stretchesOf(own, column, y!));
        }
      },
    ),
    { seed: 20_264, numRuns: 150 },
  );
});
