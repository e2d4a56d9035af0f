import fc from "fast-check";
import { expect, test } from "vitest";
import { SEAM_GIRTH } from "../../../functions/body/SEAM_GIRTH.ts";
import { isRefused, run } from "../../../functions/run.ts";
import { type Dipping, dippingSeam, taped } from "../dip.ts";

const seam = (...args: number[]) => run(SEAM_GIRTH, args, { unit: "cm" }) as number;

const lengths = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bodies = fc.record({
  waist: lengths(55, 130),
  more: lengths(0, 60),
  drop: lengths(15, 30),
  front: lengths(0, 14),
  back: lengths(-2, 4),
  start: lengths(0, 0.95),
});
const seamOf = ({ waist, more, drop, front, back, start }: Dipping) =>
  seam(waist, waist + more, drop, front, back, start);

test("a tape laid over the standing cone along the seam measures the same", () => {
  let shallow = 0;
  const measures = (b: Dipping) => {
    const { straight, level } = dippingSeam(b);
    if (straight[0] > b.start / 2 || straight[1] < 0.5) shallow += 1;
    const [from, to] = straight;
    const parts = [taped(b, 0, from, level), taped(b, from, to, level), taped(b, to, 0.5, level)];
    const tape = 2 * (parts[0]! + parts[1]! + parts[2]!);
    expect(Math.abs(seamOf(b) / tape - 1)).toBeLessThan(1e-6);
  };
  for (const [waist, hip, drop, front, back, start] of [
    [76, 108, 20, 7, 0, 0.5],
    [70, 96, 21, 9, 2, 0.3],
    [90, 104, 18, 4, -1, 0.6],
    [100, 84, 20, 10, 0, 0.4],
    [76, 108, 20, 3, 0, 0.5],
    [76, 108, 20, 0, 2, 0.2],
    [108, 76, 20, 2, 0, 0.1],
    [108, 76, 20, 0, 1, 0.3],
  ] as const)
    measures({ waist, more: hip - waist, drop, front, back, start });
  fc.assert(fc.property(bodies, lengths(1, 60), (b, more) => measures({ ...b, more })), { seed: 7, numRuns: 40 });
  fc.assert(
    fc.property(bodies, lengths(-10, -1), (b, more) => measures({ ...b, more })),
    { seed: 8, numRuns: 20 },
  );
  expect(shallow).toBeGreaterThan(20);
}); // biome-ignore format: a table

test("a deeper dip never gives a shorter seam, and no dip is the level girth, on a body that widens to the hip", () => {
  fc.assert(
    fc.property(bodies, lengths(0, 3), lengths(0, 3), (b, dip, more) => {
      const of = (front: number) => seamOf({ ...b, back: 0, front });
      expect(of(0)).toBeCloseTo(b.waist, 9);
      expect(of(dip)).toBeGreaterThanOrEqual(b.waist - 1e-9);
      expect(of(dip + more)).toBeGreaterThanOrEqual(of(dip) - 1e-9);
    }),
    { seed: 11, numRuns: 300 },
  );
});

test("the seam is never shorter than the body is round at the smaller of its two levels", () => {
  fc.assert(
    fc.property(bodies, lengths(-10, 60), (b, more) => {
      const girth = (level: number) => b.waist + (more / b.drop) * level;
      const least = Math.min(girth(b.front), girth(b.back));
      expect(seamOf({ ...b, more })).toBeGreaterThanOrEqual(least - 1e-9);
    }),
    { seed: 12, numRuns: 300 },
  );
});

test("a seam that rises in front as much as another dips is as long, when each has the whole half to slope in", () => {
  fc.assert(
    fc.property(bodies, (b) => {
      const up = seamOf({ ...b, start: 0, front: Math.max(b.back, 0), back: b.front });
      const down = seamOf({ ...b, start: 0, back: Math.max(b.back, 0) });
      expect(up).toBeCloseTo(down, 9);
    }),
    { seed: 13, numRuns: 100 },
  );
});

test("no bent way over the body is shorter than the straight one", () => {
  const body = { waist: 76, more: 32, drop: 20, front: 7, back: 0, start: 0.5 };
  const straight = seam(76, 108, 20, 7) / 2 - 76 / 4;
  fc.assert(
    fc.property(
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.integer({ min: 1, max: 4 }),
      (bend, waves) => {
        const level = (share: number) => {
          const way = (share - 0.25) / 0.25;
          return 7 * way + bend * Math.sin(Math.PI * waves * way);
        };
        expect(taped(body, 0.25, 0.5, level, 4000)).toBeGreaterThan(straight - 1e-6);
      },
    ),
    { seed: 8, numRuns: 40 },
  );
});

test("a cone stood on its head has the same seam", () => {
  // Waist and hip change places, levels are counted from below.
  fc.assert(
    fc.property(bodies, (b) => {
      const upside = {
        ...b,
        waist: b.waist + b.more,
        more: -b.more,
        front: b.drop - b.front,
        back: b.drop - b.back,
      };
      expect(seamOf(upside)).toBeCloseTo(seamOf(b), 8);
    }),
    { seed: 14, numRuns: 100 },
  );
});

test("as the hip comes down to the waist the seam comes to the straight body's", () => {
  // Sides of right triangles: √(17.5² + 6²) = 18.5.
  for (const hip of [70 + 1e-4, 70 + 1e-8, 70 + 1e-13, 70, 70 - 1e-8])
    expect(seam(70, hip, 20, 6)).toBeCloseTo(72, 4);
  expect(seam(70, 70, 20, 6)).toBe(72);
});

test("a seam level all round is the girth there", () => {
  expect(seam(76, 108, 20, 5, 5, 1)).toBeCloseTo(84, 12);
});

test("the dipped seam is longer than the waist, the commonest thing forgotten", () => {
  expect(seam(76, 108, 20, 7) - 76).toBeCloseTo(4.788162, 6);
});

test("blanks, words and a hip too near are refused in words", () => {
  const refused = (...args: (number | string | null)[]) => {
    const answer = run(SEAM_GIRTH, args, { unit: "in" });
    return isRefused(answer) ? answer.refusal : answer;
  };
  expect(refused(30, null, 8, 3)).toBe("hip is empty: a length is needed there");
  expect(refused(30, 42, "low", 3)).toBe('hip_drop must be a length, not "low"');
  expect(refused(30, 60, 4, 3)).toBe(
    "hip_drop must be more than 4 3/4 in to get from a waist of 30 in to a hip of 60 in, not 4 in",
  );
  expect(refused(30, 42, 8, 3, 0, 1.5)).toBe("start must be at most 1, not 1.5");
  expect(refused(30, 42, 8, 3, 0, 1)).toBe("start must be less than 1 for the seam to dip at all, not 1");
});
