import fc from "fast-check";
import { expect, test } from "vitest";
import { GIRTH_OVER } from "../../../functions/body/GIRTH_OVER.ts";
import { PAD_GIRTH } from "../../../functions/body/PAD_GIRTH.ts";
import { run } from "../../../functions/run.ts";

const over = (...args: number[]) => run(PAD_GIRTH, args, { unit: "cm" }) as number;

/** Length of the convex hull of points, by the monotone chain. */
function hull(points: [number, number][]): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: [number, number][]) => {
    const chain: [number, number][] = [];
    for (const point of list) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2)!, chain.at(-1)!];
        if ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(point);
    }
    return chain.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - chain[i]![0], y - chain[i]![1]), 0);
  };
  return half(sorted) + half(sorted.reverse());
}

test("a tape pulled taut round body and pads is as long", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 60, max: 130, noNaN: true }),
      fc.double({ min: 0, max: 15, noNaN: true }),
      fc.double({ min: 0.02, max: 1, noNaN: true }),
      fc.integer({ min: 1, max: 3 }),
      (girth, thickness, share, pads) => {
        const [r, s] = [girth / (2 * Math.PI), girth / (2 * Math.PI) + thickness];
        const ring = (radius: number, from: number, to: number, count: number) =>
          Array.from({ length: count + 1 }, (_, i): [number, number] => {
            const angle = from + ((to - from) * i) / count;
            return [radius * Math.cos(angle), radius * Math.sin(angle)];
          });
        const turn = (2 * Math.PI) / pads;
        const points = ring(r, 0, 2 * Math.PI, 6000);
        for (let i = 0; i < pads; i += 1) points.push(...ring(s, i * turn, i * turn + turn * share, 3000));
        expect(over(girth, thickness, share, pads)).toBeCloseTo(hull(points), 2);
      },
    ),
    { seed: 15, numRuns: 25 },
  );
});

test("it lies between the body and a pad all round, which a full share is", () => {
  const all = run(GIRTH_OVER, [90, 6], { unit: "cm" }) as number;
  expect(over(90, 6, 1)).toBeCloseTo(all, 12);
  expect(over(90, 6, 0.4)).toBeGreaterThan(90);
  expect(over(90, 6, 0.4)).toBeLessThan(all);
  expect(over(90, 0, 0.4)).toBeCloseTo(90, 12);
});
