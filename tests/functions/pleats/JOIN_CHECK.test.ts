import fc from "fast-check";
import { expect, test } from "vitest";
import { JOIN_CHECK } from "../../../functions/pleats/JOIN_CHECK.ts";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { calls } from "../calls.ts";

const { answer, refusal, step } = calls(JOIN_CHECK, "cm");

/** Is this place between two chalk marks that fold the cloth out of sight? */
function outOfSight(join: number, finished: number, count: number, depth: number, style: string): boolean {
  const mark = calls(PLEAT_MARK, "cm");
  const each = { knife: 2, box: 4, inverted: 3 }[style]!;
  let passed = 0;
  for (let number = 1; number <= count * each; number += 1) {
    if (mark.figure(number, finished, count, depth, style) < join) passed += 1;
  }
  // Knife: past its fold. Box: past a placement line, not yet past the fold. Inverted: past one fold of two.
  const at = passed % each;
  return style === "box" ? at === 1 || at === 3 : at > 0;
}

const cases = fc.record({
  finished: fc.double({ min: 20, max: 200, noNaN: true }),
  count: fc.integer({ min: 1, max: 15 }),
  depth: fc.double({ min: 0.5, max: 8, noNaN: true }),
  style: fc.constantFrom("knife", "box", "inverted"),
  share: fc.double({ min: 0.001, max: 0.999, noNaN: true }),
});

test("a join is well placed just where the chalk marks say that the cloth is folded away", () => {
  const found = new Set<boolean>();
  fc.assert(
    fc.property(cases, ({ finished, count, depth, style, share }) => {
      const flat = finished + (style === "knife" ? 2 : 4) * depth * count;
      const hidden = outOfSight(share * flat, finished, count, depth, style);
      found.add(hidden);
      const verdict = String(answer(share * flat, finished, count, depth, style));
      expect(verdict === "ok").toBe(hidden);
      if (!hidden) expect(verdict).toMatch(/^check: the join .* cm from the beginning shows/);
    }),
    { seed: 62, numRuns: 300 },
  );
  expect(found.size).toBe(2);
});

test("cut as much narrower as it says, the panel has its join at an inner fold", () => {
  fc.assert(
    fc.property(cases, ({ finished, count, depth, style, share }) => {
      const flat = finished + (style === "knife" ? 2 : 4) * depth * count;
      const args = [finished, count, depth, style] as const;
      const inner = step("inner_fold", share * flat, ...args);
      fc.pre(inner > 0);
      const moved = share * flat - step("to_move", share * flat, ...args);
      expect(moved).toBeCloseTo(inner, 9);
      expect(answer(moved, ...args)).toBe("ok");
      expect(step("to_move", moved, ...args)).toBeCloseTo(0, 9);
    }),
    { seed: 63 },
  );
});

test("at a fold that shows, a join shows too; where two folds meet over it, it does not", () => {
  // Six knife pleats an inch deep on 24: first fold at 2, inner fold at 3, placement line at 4.
  expect(answer(2, 24, 6, 1)).toMatch(/^check/);
  expect(answer(3, 24, 6, 1)).toBe("ok");
  // One inverted pleat on 20, 4 deep: folds at 10 and 26, the placement line between them at 18.
  expect(answer(18, 20, 1, 4, "inverted")).toBe("ok");
  expect(answer(10, 20, 1, 4, "inverted")).toMatch(/^check/);
  expect(answer(26, 20, 1, 4, "inverted")).toMatch(/4 cm sooner, at 22 cm/);
});

test("a join past the end of the cloth is refused", () => {
  expect(refusal(40, 24, 6, 1)).toBe("join must lie on the flat width of 36 cm, not 40 cm");
  expect(refusal(-1, 24, 6, 1)).toBe("join must be at least 0, not -1 cm");
});

test("the width of the box moves the hidden layers", () => {
  // Boxes of 2 in and spaces of 2 in, folds of 2 in: the first box's layers lie from 1 to 5 and 7 to 11.
  const inches = calls(JOIN_CHECK, "in");
  for (const [join, verdict] of [[1.2, "ok"], [4.8, "ok"], [5.2, "check:"], [6.8, "check:"], [7.2, "ok"]] as const)
    expect(String(inches.answer(join, 12, 3, 2, "box", 2)).slice(0, verdict.length)).toBe(verdict);
}); // biome-ignore format: pairs
