import fc from "fast-check";
import { expect, test } from "vitest";
import { SEAM_GIRTH } from "../../../functions/body/SEAM_GIRTH.ts";
import { isRefused, run } from "../../../functions/work.ts";

const seam = (...args: number[]) => run(SEAM_GIRTH, args, { unit: "cm" }) as number;

/** A place on the standing cone: a level down the slope and a share of the way round. */
function standing(waist: number, hip: number, hip_drop: number, level: number, share: number) {
  const slope = (hip - waist) / (2 * Math.PI) / hip_drop;
  const radius = waist / (2 * Math.PI) + slope * level;
  const turn = 2 * Math.PI * share;
  return [radius * Math.cos(turn), radius * Math.sin(turn), level * Math.sqrt(1 - slope * slope)] as const;
}

/** Length of a line over the standing cone, its level told by its share of the girth. */
function over(waist: number, hip: number, hip_drop: number, from: number, level: (share: number) => number) {
  let [sum, last] = [0, standing(waist, hip, hip_drop, level(from), from)];
  const steps = 4000;
  for (let i = 1; i <= steps; i += 1) {
    const share = from + ((0.5 - from) * i) / steps;
    const next = standing(waist, hip, hip_drop, level(share), share);
    sum += Math.hypot(next[0] - last[0], next[1] - last[1], next[2] - last[2]);
    last = next;
  }
  return sum;
}

test("a tape laid over the standing cone along the seam measures the same", () => {
  // The straight line of the flat, told in polar form and put back onto the body in three dimensions.
  for (const [waist, hip, drop, front, back, start] of [
    [76, 108, 20, 7, 0, 0.5],
    [70, 96, 21, 9, 2, 0.3],
    [90, 104, 18, 4, -1, 0.6],
    [100, 84, 20, 10, 0, 0.4],
  ] as const) {
    // biome-ignore format: a table
    const angle = (hip - waist) / drop;
    const [apex, a] = [waist / angle, start / 2];
    const [r, s, span] = [apex + back, apex + front, angle * (0.5 - a)];
    const level = (share: number) => {
      const turn = angle * (share - a);
      return (r * s * Math.sin(span)) / (r * Math.sin(turn) + s * Math.sin(span - turn)) - apex;
    };
    const levelPart = (waist + angle * back) * a;
    expect(seam(waist, hip, drop, front, back, start)).toBeCloseTo(
      2 * (levelPart + over(waist, hip, drop, a, level)),
      4,
    );
  }
});

test("no bent way over the body is shorter than the straight one", () => {
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
        expect(over(76, 108, 20, 0.25, level)).toBeGreaterThan(straight - 1e-6);
      },
    ),
    { seed: 8, numRuns: 40 },
  );
});

test("a cone stood on its head has the same seam", () => {
  // Waist and hip change places, levels are counted from below.
  const [waist, hip, drop, front, back] = [76, 108, 20, 7, 3];
  expect(seam(hip, waist, drop, drop - front, drop - back, 0.35)).toBeCloseTo(
    seam(waist, hip, drop, front, back, 0.35),
    10,
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
    "hip_drop must be more than 4.77465 to get from a waist of 30 to a hip of 60, not 4",
  );
  expect(refused(30, 42, 8, 3, 0, 1.5)).toBe("start must be at most 1, not 1.5");
});
