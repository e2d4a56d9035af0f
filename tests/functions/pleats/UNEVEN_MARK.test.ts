import fc from "fast-check";
import { expect, test } from "vitest";
import { pieceBounds } from "../../../functions/pieces/piece.ts";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { PLEATED_PANEL } from "../../../functions/pleats/PLEATED_PANEL.ts";
import { UNEVEN_ALLOWANCE } from "../../../functions/pleats/UNEVEN_ALLOWANCE.ts";
import { UNEVEN_MARK } from "../../../functions/pleats/UNEVEN_MARK.ts";
import type { Argument } from "../../../functions/run.ts";
import { calls } from "../calls.ts";

const { answer, refusal } = calls(UNEVEN_MARK, "in");

/** All marks in order, the empty text past the last left out. */
const marks = (...args: Argument[]): number[] => {
  const found: number[] = [];
  for (let number = 1; ; number += 1) {
    const mark = answer(number, ...args);
    if (mark === "") return found;
    found.push(mark as number);
  }
};

test("pleats that are all as deep are marked as even pleats are", () => {
  for (const style of ["knife", "box", "inverted"]) {
    for (const which of ["all", "fold", "placement"]) {
      const found = marks(24, [1, 1, 1, 1], null, style, which);
      expect(found.length).toBeGreaterThan(3);
      found.forEach((mark, i) => {
        expect(mark).toBeCloseTo(calls(PLEAT_MARK, "in").figure(i + 1, 24, 4, 1, style, which), 10);
      });
      expect(answer(found.length + 1, 24, [1, 1, 1, 1], null, style, which)).toBe("");
    }
  }
});

test("the marks are where a panel folded like paper has its folds and placement lines, whatever the depths", () => {
  const pleats = fc.array(
    fc.record({ gap: fc.double({ min: 9, max: 20, noNaN: true }), depth: fc.double({ min: 0.5, max: 4, noNaN: true }) }),
    { minLength: 1, maxLength: 6 },
  );
  fc.assert(
    fc.property(pleats, fc.constantFrom("knife", "box", "inverted"), (list, style) => {
      const depths = list.map(({ depth }) => depth);
      let at = 0;
      const places = list.map(({ gap }) => (at += gap));
      const finished = at + 10;
      const panel = calls(PLEATED_PANEL, "in").piece(
        finished, finished, 10, places, depths, null, style, "end", "left",
      );
      const { left, right } = pieceBounds(panel);
      const flat = right - left;
      expect(flat).toBeCloseTo(finished + calls(UNEVEN_ALLOWANCE, "in").figure(depths, style), 8);
      // Two turns of an inverted pleat meet on one placement line.
      const folded = panel.marks
        .filter((mark) => ["fold", "placement"].includes(String(mark.role)))
        .map(({ line }) => line[0]!.from[0] - left)
        .toSorted((a, b) => a - b)
        .filter((x, i, all) => i === 0 || x - all[i - 1]! > 1e-6);
      const found = marks(finished, depths, places, style);
      expect(found).toHaveLength(folded.length);
      found.forEach((mark, i) => {
        expect(mark).toBeCloseTo(folded[i]!, 7);
      });
    }),
    { seed: 31, numRuns: 60 },
  );
}); // biome-ignore format: one call

test("places and depths that do not belong together are refused", () => {
  expect(refusal(1, 24, [1, 2], [4])).toBe("places must have as many values as depths, not 1 against 2");
  expect(refusal(1, 24, [1, 2], [8, 4])).toBe(
    "places must grow from pleat to pleat: number 2 is not beyond number 1",
  );
  expect(refusal(1, 24, [1, 2], [8, 25])).toBe("places, number 2, must be at most 24 in, not 25 in");
  expect(refusal(1, 24, [1, 7], null, "box")).toBe(
    "depths, number 2, must be at most 6 in for its box to lie clear of the end, not 7 in",
  );
  expect(refusal(1, 24, [3, 5], [10, 16], "box")).toBe(
    "depths, number 2, must be at most 3 in for its box to lie clear of the box before it, not 5 in",
  );
});
